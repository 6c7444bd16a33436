package org.coilwright.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.coilwright.behaviour.Settings;
import org.coilwright.behaviour.Sweep;
import org.coilwright.behaviour.Tally;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Twenty confirm times by twenty thresholds over thirty days, on all processors. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 1)
@Measurement(iterations = 3)
public class SweepBench {
  private final Months month = new Months(30);

  /** All 400 settings. */
  @Benchmark
  public List<Tally> twentyByTwenty() {
    List<Settings> all = new ArrayList<>();
    for (int confirm = 0; confirm < 20; confirm++) {
      for (int threshold = 1; threshold <= 20; threshold++) {
        all.add(Months.settings().withStart(300 * threshold, 10 * confirm));
      }
    }
    return Sweep.run(month, Months.plant(), all);
  }
}
