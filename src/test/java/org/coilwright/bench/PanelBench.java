package org.coilwright.bench;

import java.util.concurrent.TimeUnit;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.rule.Report;
import org.coilwright.rule.Runner;
import org.coilwright.rules.AllRules;
import org.coilwright.solve.Board;
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

/**
 * Boards of heating circuits: divide by their number to see whether the cost of one stays what it
 * is. Ten thousand take more than the heap of a launcher.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3)
@Measurement(iterations = 5)
@Fork(value = 1, jvmArgs = "-Xmx6g")
public class PanelBench {
  private final Tables tables = Tables.load();
  private final Runner runner = AllRules.runner(tables);
  private byte[] file = new Board(1, 1, 1, false).bytes();
  private Netlist netlist = new Board(1, 1, 1, false).netlist();

  /** How many. */
  @Param({"10", "100", "1000", "10000"})
  public int circuits;

  /** How many of them lie behind one residual-current device. */
  @Param({"1", "2", "5", "10"})
  public int behindOne;

  /** 1 for elements that a relay switches, 3 for those that a contactor does. */
  @Param({"1", "3"})
  public int lines;

  /** Writes and reads the board. */
  @Setup
  public void wire() {
    Board board = new Board(circuits, behindOne, lines, false);
    file = board.bytes();
    netlist = board.netlist();
  }

  /** From bytes to records. */
  @Benchmark
  public Reading read() {
    return NetlistReader.read("board.yaml", file);
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
