package org.coilwright.solve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.ejml.data.DMatrixRMaj;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.interfaces.linsol.LinearSolverSparse;
import org.ejml.sparse.FillReducing;
import org.ejml.sparse.csc.factory.LinearSolverFactory_DSCC;

/** A large system, nearly all of it empty. */
final class SparseEquations extends Equations {
  private final int unknowns;
  private final boolean direct;
  private final List<Map<Integer, double[]>> columns = new ArrayList<>();
  private final double[] right;

  SparseEquations(int unknowns, boolean direct) {
    this.unknowns = unknowns;
    this.direct = direct;
    this.right = new double[2 * unknowns];
    for (int i = 0; i < unknowns; i++) {
      columns.add(new HashMap<>());
    }
  }

  @Override
  void add(int i, int j, double re, double im) {
    double[] entry = columns.get(j).computeIfAbsent(i, r -> new double[2]);
    entry[0] += re;
    entry[1] += im;
  }

  @Override
  void addRight(int i, double re, double im) {
    right[2 * i] += re;
    right[2 * i + 1] += im;
  }

  @Override
  double[] solve() {
    int[] order = EliminationOrder.leastDegree(columns);
    int[] place = new int[unknowns];
    for (int k = 0; k < unknowns; k++) {
      place[order[k]] = k;
    }
    DMatrixSparseCSC matrix = matrix(order, place);
    LinearSolverSparse<DMatrixSparseCSC, DMatrixRMaj> lu =
        LinearSolverFactory_DSCC.lu(FillReducing.NONE);
    if (!lu.setA(matrix)) {
      throw singular();
    }
    int each = direct ? 1 : 2;
    DMatrixRMaj b = new DMatrixRMaj(each * unknowns, 1);
    DMatrixRMaj x = new DMatrixRMaj(each * unknowns, 1);
    for (int k = 0; k < unknowns; k++) {
      for (int part = 0; part < each; part++) {
        b.data[each * k + part] = right[2 * order[k] + part];
      }
    }
    lu.solve(b, x);
    double[] pairs = new double[2 * unknowns];
    for (int k = 0; k < unknowns; k++) {
      for (int part = 0; part < each; part++) {
        pairs[2 * order[k] + part] = x.data[each * k + part];
      }
    }
    return pairs;
  }

  private DMatrixSparseCSC matrix(int[] order, int[] place) {
    int each = direct ? 1 : 2;
    int entries = columns.stream().mapToInt(Map::size).sum() * each * each;
    DMatrixSparseCSC matrix = new DMatrixSparseCSC(each * unknowns, each * unknowns, entries);
    int filled = 0;
    for (int k = 0; k < unknowns; k++) {
      TreeMap<Integer, double[]> sorted = new TreeMap<>();
      columns.get(order[k]).forEach((row, value) -> sorted.put(place[row], value));
      for (int part = 0; part < each; part++) {
        matrix.col_idx[each * k + part] = filled;
        for (Map.Entry<Integer, double[]> entry : sorted.entrySet()) {
          double re = entry.getValue()[0];
          double im = entry.getValue()[1];
          for (int row = 0; row < each; row++) {
            matrix.nz_rows[filled] = each * entry.getKey() + row;
            matrix.nz_values[filled++] = row == part ? re : row > part ? im : -im;
          }
        }
      }
    }
    matrix.col_idx[each * unknowns] = filled;
    matrix.nz_length = filled;
    matrix.indicesSorted = true;
    return matrix;
  }
}
