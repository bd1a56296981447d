package parfield.fit;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;

/**
 * The update of a normal sample by observations of linear functions of it, without chance: mean and
 * covariance of the new sample are those of Kalman's formula, exactly.
 *
 * <p>The square-root filter in the space of the sample (Bishop, Etherton and Majumdar 2001, Mon.
 * Weather Rev. 129:420; Hunt, Kostelich and Szunyogh 2007, Physica D 230:112, eqs. 20–24; from
 * memory). The symmetric root keeps the mean and moves each member least. Immutable.
 */
final class SquareRootFilter {
  private final double[] innovation;
  private final double[][] gain;
  private final double[][] root;

  private SquareRootFilter(double[] innovation, double[][] gain, double[][] root) {
    this.innovation = innovation;
    this.gain = gain;
    this.root = root;
  }

  /**
   * Prepares an update.
   *
   * @param predicted what each member says of each observation, [member][observation]; two members
   *     or more
   * @param observed the observations
   * @param error covariance of the observations' errors, positive definite
   */
  static SquareRootFilter of(double[][] predicted, double[] observed, double[][] error) {
    int members = predicted.length;
    double[] mean = mean(predicted);
    DMatrixRMaj anomalies = new DMatrixRMaj(observed.length, members);
    double[] innovation = new double[observed.length];
    for (int i = 0; i < observed.length; i++) {
      innovation[i] = observed[i] - mean[i];
      for (int m = 0; m < members; m++) {
        anomalies.set(i, m, predicted[m][i] - mean[i]);
      }
    }
    DMatrixRMaj weighted = new DMatrixRMaj(observed.length, members);
    DMatrixRMaj inverse = new DMatrixRMaj(error);
    if (!CommonOps_DDRM.invert(inverse)) {
      throw new ArithmeticException("the errors of the readings have a singular covariance");
    }
    CommonOps_DDRM.mult(inverse, anomalies, weighted);
    DMatrixRMaj precision = new DMatrixRMaj(members, members);
    CommonOps_DDRM.multTransA(anomalies, weighted, precision);
    for (int m = 0; m < members; m++) {
      precision.add(m, m, members - 1);
    }
    return rooted(precision, weighted, innovation);
  }

  /** From P⁻¹ = (M − 1) I + Sᵀ R⁻¹ S: the gain P Sᵀ R⁻¹ and the root of (M − 1) P. */
  private static SquareRootFilter rooted(
      DMatrixRMaj precision, DMatrixRMaj weighted, double[] innovation) {
    int members = precision.numRows;
    EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(members, true, true);
    if (!eigen.decompose(precision)) {
      throw new ArithmeticException("the update by readings could not be computed");
    }
    double[][] gain = new double[members][innovation.length];
    double[][] root = new double[members][members];
    for (int k = 0; k < members; k++) {
      double value = eigen.getEigenvalue(k).getReal();
      double[] vector = eigen.getEigenVector(k).getData();
      double factor = Math.sqrt((members - 1) / value);
      for (int m = 0; m < members; m++) {
        for (int n = 0; n < members; n++) {
          root[m][n] += factor * vector[m] * vector[n];
        }
      }
      for (int i = 0; i < innovation.length; i++) {
        double along = 0;
        for (int m = 0; m < members; m++) {
          along += vector[m] * weighted.get(i, m);
        }
        for (int m = 0; m < members; m++) {
          gain[m][i] += vector[m] * along / value;
        }
      }
    }
    return new SquareRootFilter(innovation, gain, root);
  }

  /** The members after the update, [member][coordinate]. */
  double[][] update(double[][] members) {
    double[] mean = mean(members);
    double[] moved = moved(mean, innovation, members);
    double[][] updated = new double[members.length][mean.length];
    for (int m = 0; m < updated.length; m++) {
      updated[m] = moved.clone();
      for (int n = 0; n < members.length; n++) {
        double weight = root[m][n];
        for (int i = 0; i < mean.length; i++) {
          updated[m][i] += weight * (members[n][i] - mean[i]);
        }
      }
    }
    return updated;
  }

  /**
   * A point moved by what the observations say against it.
   *
   * @param point such as the most plausible one
   * @param ofPoint observed less predicted of that point
   * @param members before the update
   */
  double[] moved(double[] point, double[] ofPoint, double[][] members) {
    double[] mean = mean(members);
    double[] moved = point.clone();
    for (int m = 0; m < members.length; m++) {
      double shift = 0;
      for (int i = 0; i < ofPoint.length; i++) {
        shift += gain[m][i] * ofPoint[i];
      }
      for (int i = 0; i < moved.length; i++) {
        moved[i] += shift * (members[m][i] - mean[i]);
      }
    }
    return moved;
  }

  static double[] mean(double[][] members) {
    double[] mean = new double[members[0].length];
    for (double[] member : members) {
      for (int i = 0; i < mean.length; i++) {
        mean[i] += member[i] / members.length;
      }
    }
    return mean;
  }
}
