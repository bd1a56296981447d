package parfield.architecture.violations.tank;

import parfield.architecture.violations.units.NeedsTank;

/** Imports in the order; a circle all the same, because units imports it. */
public final class NeedsUnits {
  NeedsTank units;
}
