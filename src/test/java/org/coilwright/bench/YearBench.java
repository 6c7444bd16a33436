package org.coilwright.bench;

import java.util.concurrent.TimeUnit;
import org.coilwright.behaviour.Rehearsal;
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

/**
 * A year of seconds (31.5 million rows) beside a loop that only reads and sums the same columns.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class YearBench {
  private final Months year = new Months(365);

  /** Reads and sums, as plainly as can be. */
  @Benchmark
  public double bareLoop() {
    year.rewind();
    float[] pv = new float[4096];
    float[] other = new float[4096];
    double pvSum = 0;
    double otherSum = 0;
    for (int n = year.next(pv, other); n > 0; n = year.next(pv, other)) {
      for (int i = 0; i < n; i++) {
        pvSum += pv[i];
        otherSum += other[i];
      }
    }
    return pvSum + otherSum;
  }

  /** Battery, water, thermostat and every kind of setting. */
  @Benchmark
  public Tally rehearsal() {
    return Rehearsal.run(year, Months.plant(), Months.settings(), null);
  }
}
