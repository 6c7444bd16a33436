package org.coilwright.behaviour;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * What other confirm times and start thresholds would do in the same situations.
 *
 * @param cells every confirm time with every threshold, thresholds changing fastest
 * @param keepsOut lowest threshold at which battery and grid give next to nothing, on days whose
 *     sun does not come and go; empty if none that was tried does
 * @param asSet shortest confirm time, in whole seconds, without a false start at the threshold as
 *     set; empty if none that was tried is without
 * @param atKeepsOut the same at {@code keepsOut}
 */
public record Improvement(
    List<Double> confirms,
    List<Double> thresholds,
    List<Cell> cells,
    OptionalDouble keepsOut,
    OptionalDouble asSet,
    OptionalDouble atKeepsOut) {
  /**
   * Battery and grid are kept out when they give less than this share of what the load takes. The
   * sun needs but minutes to rise from a threshold to a load a tenth larger, so that one in a
   * hundred would let a much too low threshold through.
   */
  private static final double NEXT_TO_NOTHING = 0.001;

  private static final double[] CONFIRMS = {
    0, 1, 2, 3, 5, 8, 12, 20, 30, 45, 60, 90, 120, 180, 240, 300, 420, 600
  };

  /** Thresholds as shares of the load's power. */
  private static final double FINEST_SHARE = 0.1;

  private static final int MOST_SHARES = 20;

  /**
   * All situations together with one confirm time and one threshold. Energies in Wh.
   *
   * @param unusedWh surplus that was exported although the water could take it
   * @param drawnWh what the load took from battery and grid
   */
  public record Cell(
      double confirm, double threshold, int falseStarts, double unusedWh, double drawnWh) {}

  /** Tries some twenty confirm times with some twenty thresholds. */
  public static Improvement of(Scene scene, List<Situation> situations) {
    double set = scene.settings().exportAboveWatts().orElse(scene.plant().loadWatts());
    double confirmSet = scene.settings().startAfterSeconds();
    List<Double> confirms = sorted(DoubleStream.of(CONFIRMS), confirmSet);
    List<Double> thresholds =
        sorted(
            IntStream.rangeClosed(1, MOST_SHARES)
                .mapToDouble(i -> Math.rint(i * FINEST_SHARE * scene.plant().loadWatts())),
            set);
    Table all = Table.of(scene, situations, confirms, thresholds);
    OptionalDouble keepsOut = all.keepsOut(confirmSet);
    return new Improvement(
        confirms,
        thresholds,
        all.cells(),
        keepsOut,
        shortest(scene, situations, all, set),
        keepsOut.isPresent()
            ? shortest(scene, situations, all, keepsOut.getAsDouble())
            : OptionalDouble.empty());
  }

  /** The cell of two values that were tried. */
  public Cell cell(double confirm, double threshold) {
    return cells.get(confirms.indexOf(confirm) * thresholds.size() + thresholds.indexOf(threshold));
  }

  /** Between the last time with a false start and the first without, second by second. */
  private static OptionalDouble shortest(
      Scene scene, List<Situation> situations, Table coarse, double threshold) {
    List<Cell> column = coarse.cells().stream().filter(c -> c.threshold() == threshold).toList();
    int last = -1;
    for (int i = 0; i < column.size(); i++) {
      last = column.get(i).falseStarts() > 0 ? i : last;
    }
    if (last < 0) {
      return OptionalDouble.of(0);
    }
    if (last == column.size() - 1) {
      return OptionalDouble.empty();
    }
    double good = column.get(last + 1).confirm();
    List<Double> between = new ArrayList<>();
    for (double t = Math.floor(column.get(last).confirm()) + 1; t < good; t++) {
      between.add(t);
    }
    Table fine = Table.of(scene, situations, between, List.of(threshold));
    double shortest = good;
    for (int i = between.size() - 1; i >= 0 && fine.cells().get(i).falseStarts() == 0; i--) {
      shortest = between.get(i);
    }
    return OptionalDouble.of(shortest);
  }

  private static List<Double> sorted(DoubleStream values, double also) {
    TreeSet<Double> sorted = new TreeSet<>(List.of(also));
    values.forEach(sorted::add);
    return List.copyOf(sorted);
  }

  /**
   * What came of every pair.
   *
   * @param worstShares largest share of what the load takes that comes from battery and grid on any
   *     one day with a steady sun; NaN if the load ran on none
   */
  private record Table(List<Cell> cells, List<Double> worstShares) {
    static Table of(
        Scene scene, List<Situation> situations, List<Double> confirms, List<Double> thresholds) {
      List<Settings> settings = new ArrayList<>();
      for (double confirm : confirms) {
        for (double threshold : thresholds) {
          settings.add(scene.settings().withStart(threshold, confirm));
        }
      }
      int n = settings.size();
      int[] falseStarts = new int[n];
      double[] unused = new double[n];
      double[] drawn = new double[n];
      double[] worst = new double[n];
      Arrays.fill(worst, Double.NaN);
      for (Situation situation : situations) {
        List<Tally> tallies =
            settings.isEmpty()
                ? List.of()
                : Sweep.run(situation.feed(), situation.begin(scene.plant()), settings);
        for (int i = 0; i < n; i++) {
          Tally tally = tallies.get(i);
          falseStarts[i] += tally.falseStarts().size();
          unused[i] += tally.unusedSurplusWh();
          drawn[i] += tally.runs().stream().mapToDouble(Run::foreignWh).sum();
          double share = situation.passing() ? Double.NaN : foreignShare(tally);
          if (!(share <= worst[i]) && !Double.isNaN(share)) {
            worst[i] = share;
          }
        }
      }
      List<Cell> cells = new ArrayList<>();
      List<Double> worstShares = new ArrayList<>();
      for (int i = 0; i < n; i++) {
        double confirm = settings.get(i).startAfterSeconds();
        double threshold = settings.get(i).exportAboveWatts().orElseThrow();
        cells.add(new Cell(confirm, threshold, falseStarts[i], unused[i], drawn[i]));
        worstShares.add(worst[i]);
      }
      return new Table(List.copyOf(cells), List.copyOf(worstShares));
    }

    /**
     * What a false start draws is a matter of the confirm time, and what a window draws one of the
     * window. NaN if the load took nothing else.
     */
    private static double foreignShare(Tally tally) {
      double foreign = 0;
      double load = 0;
      for (Run run : tally.runs()) {
        if (!run.falseStart() && !run.byWindow()) {
          foreign += run.foreignWh();
          load += run.wattHours();
        }
      }
      return load > 0 ? foreign / load : Double.NaN;
    }

    /** Only where the load runs at all: what never starts keeps nothing out. */
    OptionalDouble keepsOut(double confirm) {
      OptionalDouble lowest = OptionalDouble.empty();
      for (int i = cells.size() - 1; i >= 0; i--) {
        Cell cell = cells.get(i);
        double share = worstShares.get(i);
        if (cell.confirm() == confirm && !Double.isNaN(share)) {
          if (share > NEXT_TO_NOTHING) {
            return lowest;
          }
          lowest = OptionalDouble.of(cell.threshold());
        }
      }
      return lowest;
    }
  }
}
