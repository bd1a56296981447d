package parfield.architecture.violations.kitchen;

/** Stands in a package that the plan does not know. */
final class Stray {}
