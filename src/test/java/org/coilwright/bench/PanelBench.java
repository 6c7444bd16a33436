package org.coilwright.bench;

import java.util.concurrent.TimeUnit;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Netlist;
import org.coilwright.rule.Report;
import org.coilwright.rule.Runner;
import org.coilwright.rules.AllRules;
import org.coilwright.solve.Panel;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Panels of relays: divide by their number to see whether the cost of one stays what it is. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3)
@Measurement(iterations = 5)
@Fork(value = 1, jvmArgs = "-Xmx2g")
public class PanelBench {
  private final Tables tables = Tables.load();
  private final Runner runner = AllRules.runner(tables);
  private Netlist netlist = Panel.of(1);

  /** How many. */
  @Param({"100", "1000", "10000"})
  public int relays;

  /** Wires the panel. */
  @Setup
  public void wire() {
    netlist = Panel.of(relays);
  }

  /** The graph, and every state of every relay. */
  @Benchmark
  public Study solve() {
    return Study.of(Circuit.of(netlist), tables);
  }

  /** The same, and every rule. */
  @Benchmark
  public Report check() {
    return runner.run(Study.of(Circuit.of(netlist), tables));
  }
}
