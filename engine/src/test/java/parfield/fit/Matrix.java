package parfield.fit;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/** A matrix with its usual arithmetic, for textbook formulas in tests. */
record Matrix(DMatrixRMaj values) {
  static Matrix of(double[][] rows) {
    return new Matrix(new DMatrixRMaj(rows));
  }

  static Matrix zeros(int rows, int columns) {
    return new Matrix(new DMatrixRMaj(rows, columns));
  }

  static Matrix column(double... values) {
    return new Matrix(new DMatrixRMaj(values.length, 1, true, values.clone()));
  }

  static Matrix identity(int size) {
    return new Matrix(CommonOps_DDRM.identity(size));
  }

  double get(int row, int column) {
    return values.get(row, column);
  }

  void set(int row, int column, double value) {
    values.set(row, column, value);
  }

  Matrix times(Matrix other) {
    DMatrixRMaj product = new DMatrixRMaj(values.numRows, other.values.numCols);
    CommonOps_DDRM.mult(values, other.values, product);
    return new Matrix(product);
  }

  Matrix plus(Matrix other) {
    DMatrixRMaj sum = new DMatrixRMaj(values.numRows, values.numCols);
    CommonOps_DDRM.add(values, other.values, sum);
    return new Matrix(sum);
  }

  Matrix minus(Matrix other) {
    DMatrixRMaj difference = new DMatrixRMaj(values.numRows, values.numCols);
    CommonOps_DDRM.subtract(values, other.values, difference);
    return new Matrix(difference);
  }

  Matrix transposed() {
    return new Matrix(CommonOps_DDRM.transpose(values, null));
  }

  Matrix inverse() {
    DMatrixRMaj inverse = values.copy();
    if (!CommonOps_DDRM.invert(inverse)) {
      throw new ArithmeticException("singular");
    }
    return new Matrix(inverse);
  }
}
