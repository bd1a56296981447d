package parfield.photon;

/** A face that reflects diffusely, by waveband. Immutable. */
final class Diffuser {
  /** Reflectance of the brightest waveband. */
  final double most;

  /** Whether all wavebands are reflected alike. */
  final boolean gray;

  /** Reflectance of each waveband over that of the brightest; 1 for a black face. */
  final double[] ratio;

  /**
   * Makes a face.
   *
   * @param reflectance by waveband, 0 to 1; copied
   */
  Diffuser(double[] reflectance) {
    double highest = 0;
    boolean alike = true;
    for (double r : reflectance) {
      alike &= r == reflectance[0];
      highest = Math.max(highest, r);
    }
    most = highest;
    gray = alike;
    ratio = new double[reflectance.length];
    for (int k = 0; k < ratio.length; k++) {
      ratio[k] = highest > 0 ? reflectance[k] / highest : 1;
    }
  }
}
