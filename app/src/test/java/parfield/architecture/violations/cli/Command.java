package parfield.architecture.violations.cli;

/** What nobody may import. */
public final class Command {}
