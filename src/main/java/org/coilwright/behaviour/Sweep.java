package org.coilwright.behaviour;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Many settings on the same rows. The rows are read once; all settings see a block in turn. */
public final class Sweep {
  private static final int BLOCK = 1 << 15;

  private Sweep() {}

  /**
   * Runs all settings from the first row of the feed to its end, on all processors.
   *
   * @return one tally for each of the settings, in their order
   */
  public static List<Tally> run(Feed feed, Plant plant, List<Settings> all) {
    feed.rewind();
    List<Rehearsal> rehearsals =
        all.stream().map(settings -> new Rehearsal(feed, plant, settings, null)).toList();
    int threads =
        Math.max(1, Math.min(rehearsals.size(), Runtime.getRuntime().availableProcessors()));
    ExecutorService workers = Executors.newFixedThreadPool(threads);
    try {
      float[] pv = new float[BLOCK];
      float[] other = new float[BLOCK];
      for (int n = feed.next(pv, other); n > 0; n = feed.next(pv, other)) {
        accept(workers, threads, rehearsals, pv, other, n);
      }
    } finally {
      workers.shutdown();
    }
    return rehearsals.stream().map(Rehearsal::end).toList();
  }

  private static void accept(
      ExecutorService workers,
      int threads,
      List<Rehearsal> rehearsals,
      float[] pv,
      float[] other,
      int n) {
    List<Callable<Boolean>> shares = new ArrayList<>();
    for (int t = 0; t < threads; t++) {
      int first = t;
      shares.add(
          () -> {
            for (int i = first; i < rehearsals.size(); i += threads) {
              rehearsals.get(i).accept(pv, other, n);
            }
            return true;
          });
    }
    try {
      for (Future<Boolean> share : workers.invokeAll(shares)) {
        share.get();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while sweeping", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("a rehearsal failed", e.getCause());
    }
  }
}
