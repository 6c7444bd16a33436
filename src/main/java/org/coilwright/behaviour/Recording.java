package org.coilwright.behaviour;

import java.util.ArrayList;
import java.util.List;

/**
 * A feed that remembers what a rehearsal made of it, coarsely enough to be drawn: at most some
 * thousand moments, however long it is. Give it to {@link Rehearsal#run} as feed and as trace.
 */
public final class Recording implements Feed, Trace {
  /** Twice as many as a picture has room for; beyond, neighbours are joined. */
  private static final int MOST = 2000;

  private final Feed feed;
  private final Bin[] bins = new Bin[MOST];
  private float[] pv = new float[0];
  private float[] other = new float[0];
  private long blockStart;
  private int blockRows;
  private int used;
  private long rowsEach = 1;

  /**
   * A stretch of time, powers as means in watts.
   *
   * @param seconds since the first row, at the middle of the stretch
   * @param grid import positive
   * @param mostExport the highest export in it, W, at least 0
   * @param mostImport the highest import in it, W, at least 0
   * @param level at its end, 0 to 1
   * @param celsius at its end
   */
  public record Moment(
      double seconds,
      double pv,
      double other,
      double load,
      double battery,
      double grid,
      double mostExport,
      double mostImport,
      double level,
      double celsius) {}

  /** Records what {@code feed} hands out. */
  public Recording(Feed feed) {
    this.feed = feed;
  }

  /** What was seen, in order of time. */
  public List<Moment> moments() {
    double seconds = feed.stepMillis() / (double) Clock.MILLIS;
    List<Moment> moments = new ArrayList<>();
    for (int i = 0; i < used; i++) {
      moments.add(bins[i].moment((i * rowsEach + bins[i].rows / 2.0) * seconds));
    }
    return moments;
  }

  /** Length of what was seen, in seconds. */
  public double seconds() {
    return (blockStart + blockRows) * (feed.stepMillis() / (double) Clock.MILLIS);
  }

  @Override
  public int stepMillis() {
    return feed.stepMillis();
  }

  @Override
  public int firstMillisOfDay() {
    return feed.firstMillisOfDay();
  }

  @Override
  public int next(float[] pvOut, float[] otherOut) {
    int n = feed.next(pvOut, otherOut);
    if (n > 0) {
      blockStart += blockRows;
      blockRows = n;
      pv = pvOut;
      other = otherOut;
    }
    return n;
  }

  @Override
  public void rewind() {
    feed.rewind();
    blockStart = 0;
    blockRows = 0;
    used = 0;
    rowsEach = 1;
  }

  @Override
  public void row(
      long step,
      boolean closed,
      double loadWatts,
      double batteryWatts,
      double gridWatts,
      double level,
      double celsius) {
    int bin = (int) (step / rowsEach);
    if (bin == MOST) {
      halve();
      bin = (int) (step / rowsEach);
    }
    if (bin == used) {
      bins[used] = new Bin();
      used++;
    }
    int i = (int) (step - blockStart);
    bins[bin].add(pv[i], other[i], loadWatts, batteryWatts, gridWatts, level, celsius);
  }

  private void halve() {
    for (int i = 0; i < MOST / 2; i++) {
      bins[2 * i].join(bins[2 * i + 1]);
      bins[i] = bins[2 * i];
    }
    used = MOST / 2;
    rowsEach *= 2;
  }

  private static final class Bin {
    private long rows;
    private double pv;
    private double other;
    private double load;
    private double battery;
    private double grid;
    private double mostExport;
    private double mostImport;
    private double level;
    private double celsius;

    void add(
        double pvNow,
        double otherNow,
        double loadNow,
        double batteryNow,
        double gridNow,
        double levelNow,
        double celsiusNow) {
      rows++;
      pv += pvNow;
      other += otherNow;
      load += loadNow;
      battery += batteryNow;
      grid += gridNow;
      mostExport = Math.max(mostExport, -gridNow);
      mostImport = Math.max(mostImport, gridNow);
      level = levelNow;
      celsius = celsiusNow;
    }

    void join(Bin next) {
      rows += next.rows;
      pv += next.pv;
      other += next.other;
      load += next.load;
      battery += next.battery;
      grid += next.grid;
      mostExport = Math.max(mostExport, next.mostExport);
      mostImport = Math.max(mostImport, next.mostImport);
      level = next.level;
      celsius = next.celsius;
    }

    Moment moment(double seconds) {
      return new Moment(
          seconds,
          pv / rows,
          other / rows,
          load / rows,
          battery / rows,
          grid / rows,
          mostExport,
          mostImport,
          level,
          celsius);
    }
  }
}
