package parfield.architecture.violations.plot;

import parfield.architecture.violations.cli.Command;

/** Imports the command line. */
final class NeedsCli {
  Command command;
}
