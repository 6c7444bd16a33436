package org.coilwright.behaviour;

import java.util.function.DoubleUnaryOperator;

/** A feed from arrays or from functions of time, for the tests. */
final class Columns implements Feed {
  private final int stepMillis;
  private final float[] pv;
  private final float[] other;
  private int at;

  private Columns(int stepMillis, float[] pv, float[] other) {
    this.stepMillis = stepMillis;
    this.pv = pv;
    this.other = other;
  }

  static Columns of(int stepMillis, float[] pv, float[] other) {
    return new Columns(stepMillis, pv, other);
  }

  /** Power as functions of the seconds since midnight. */
  static Columns of(
      int stepMillis, double seconds, DoubleUnaryOperator pv, DoubleUnaryOperator other) {
    int rows = (int) Math.round(seconds * 1000 / stepMillis);
    float[] a = new float[rows];
    float[] b = new float[rows];
    for (int i = 0; i < rows; i++) {
      double t = i * stepMillis / 1000.0;
      a[i] = (float) pv.applyAsDouble(t);
      b[i] = (float) other.applyAsDouble(t);
    }
    return of(stepMillis, a, b);
  }

  double pv(int row) {
    return pv[row];
  }

  double other(int row) {
    return other[row];
  }

  int rows() {
    return pv.length;
  }

  @Override
  public int stepMillis() {
    return stepMillis;
  }

  @Override
  public int firstMillisOfDay() {
    return 0;
  }

  @Override
  public int next(float[] pvOut, float[] otherOut) {
    int n = Math.min(pvOut.length, pv.length - at);
    System.arraycopy(pv, at, pvOut, 0, n);
    System.arraycopy(other, at, otherOut, 0, n);
    at += n;
    return n;
  }

  @Override
  public void rewind() {
    at = 0;
  }
}
