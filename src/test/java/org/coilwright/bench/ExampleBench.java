package org.coilwright.bench;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.LoadElement;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.rule.Report;
import org.coilwright.rule.Runner;
import org.coilwright.rules.AllRules;
import org.coilwright.solve.FaultClass;
import org.coilwright.solve.Faults;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.reader.UnicodeReader;

/** The example of the guest house, warm: tables read and code compiled. */
@org.openjdk.jmh.annotations.State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class ExampleBench {
  private static final Path FILE = Path.of("wiring-examples/guest-house-cylinder.yaml");

  private final byte[] bytes = written();
  private final Tables tables = Tables.load();
  private final Runner runner = AllRules.runner(tables);
  private final Circuit circuit = Circuit.of(read());
  private final Study study = Study.of(circuit, tables);

  private static byte[] written() {
    try {
      return Files.readAllBytes(FILE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What the library alone takes to compose the same bytes: the measure for {@link #check}. */
  @Benchmark
  public Node yamlAlone() {
    return new Yaml(new LoaderOptions())
        .compose(new UnicodeReader(new ByteArrayInputStream(bytes)));
  }

  /** Bytes to netlist. */
  @Benchmark
  public Netlist read() {
    Reading reading = NetlistReader.read(FILE.toString(), bytes);
    if (reading instanceof Reading.Read read) {
      return read.netlist();
    }
    throw new IllegalStateException("cannot be read: " + FILE);
  }

  /** Bytes to report. */
  @Benchmark
  public Report check() {
    return runner.run(Study.of(Circuit.of(read()), tables));
  }

  /** Every reachable state, and each coil and load in it. */
  @Benchmark
  public void states(Blackhole hole) {
    Study fresh = Study.of(circuit, tables);
    for (State state : fresh.states()) {
      for (Coil coil : circuit.branches(Coil.class)) {
        hole.consume(fresh.coil(coil.part(), state));
      }
      for (LoadElement element : circuit.branches(LoadElement.class)) {
        hole.consume(fresh.load(element.part(), state));
      }
    }
  }

  /** One thing broken at a time, everything that can break. */
  @Benchmark
  public List<FaultClass> faults() {
    return Faults.of(study).classes();
  }
}
