package parfield.architecture.violations.units;

import parfield.architecture.violations.tank.NeedsUnits;

/** Imports against the order, and closes a circle. */
public final class NeedsTank {
  NeedsUnits tank;
}
