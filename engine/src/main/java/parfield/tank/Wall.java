package parfield.tank;

import java.util.Locale;

/**
 * A pane and its condition.
 *
 * <p>A share of the pane acts as clean glass with air behind it (mirror-like, total reflection past
 * the critical angle); the rest is covered.
 *
 * @param clear share of the pane that acts as clean glass with air behind, 0 to 1
 * @param cover what covers the rest
 * @param diffuse diffuse reflectance of the cover, 0 to 1
 */
public record Wall(double clear, Cover cover, double diffuse) {
  /** What covers the part of a pane that is not clear. */
  public enum Cover {
    /** Film or growth on the water side: no mirror-like reflection at all. */
    IN_WATER,
    /** Paint in contact with the outer face: the water–glass face still reflects a little. */
    BEHIND_GLASS
  }

  public Wall {
    if (!(clear >= 0 && clear <= 1)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "a wall's clear share runs from 0 to 1; got %s", clear));
    }
    if (!(diffuse >= 0 && diffuse <= 1)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a wall's diffuse reflectance runs from 0 to 1; got %s", diffuse));
    }
    java.util.Objects.requireNonNull(cover, "cover");
  }

  /** Clean glass with air behind it. */
  public static Wall clean() {
    return new Wall(1, Cover.IN_WATER, 0);
  }

  /** Clean glass under a thin film of growth. */
  public static Wall film() {
    return new Wall(0.85, Cover.IN_WATER, 0.05);
  }

  /** Glass grown over with coralline algae for the most part. */
  public static Wall coralline() {
    return new Wall(0.3, Cover.IN_WATER, 0.25);
  }

  /** Glass painted on its outer face. */
  public static Wall painted() {
    return new Wall(0, Cover.BEHIND_GLASS, 0.06);
  }

  /** A background sheet or paint with air between it and the glass: total reflection persists. */
  public static Wall coveredWithAirGap() {
    return clean();
  }

  /** A dull opaque wall that reflects almost nothing. */
  public static Wall opaque() {
    return new Wall(0, Cover.IN_WATER, 0.04);
  }

  /** This wall with another clear share. */
  public Wall withClear(double newClear) {
    return new Wall(newClear, cover, diffuse);
  }

  /** Diffuse reflectance of the whole pane: that of the cover times its share. */
  public double diffuseReflectance() {
    return (1 - clear) * diffuse;
  }
}
