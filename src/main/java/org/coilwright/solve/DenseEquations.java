package org.coilwright.solve;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/** A small system. */
final class DenseEquations extends Equations {
  private final int size;
  private final boolean direct;
  private final DMatrixRMaj matrix;
  private final DMatrixRMaj right;

  DenseEquations(int unknowns, boolean direct) {
    this.direct = direct;
    this.size = direct ? unknowns : 2 * unknowns;
    this.matrix = new DMatrixRMaj(size, size);
    this.right = new DMatrixRMaj(size, 1);
  }

  @Override
  void add(int i, int j, double re, double im) {
    if (direct) {
      matrix.data[i * size + j] += re;
    } else {
      int corner = 2 * i * size + 2 * j;
      matrix.data[corner] += re;
      matrix.data[corner + 1] -= im;
      matrix.data[corner + size] += im;
      matrix.data[corner + size + 1] += re;
    }
  }

  @Override
  void addRight(int i, double re, double im) {
    if (direct) {
      right.data[i] += re;
    } else {
      right.data[2 * i] += re;
      right.data[2 * i + 1] += im;
    }
  }

  @Override
  double[] solve() {
    LinearSolverDense<DMatrixRMaj> lu = LinearSolverFactory_DDRM.lu(size);
    if (!lu.setA(matrix)) {
      throw singular();
    }
    DMatrixRMaj x = new DMatrixRMaj(size, 1);
    lu.solve(right, x);
    if (!direct) {
      return x.data;
    }
    double[] pairs = new double[2 * size];
    for (int i = 0; i < size; i++) {
      pairs[2 * i] = x.data[i];
    }
    return pairs;
  }
}
