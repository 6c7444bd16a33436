package org.coilwright.rules;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.rule.Report;
import org.coilwright.rule.Runner;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/** Runs every rule over a fixture, once however often it is asked for. */
final class Checked {
  private final Tables tables = Tables.load();
  private final Runner runner = AllRules.runner(tables);
  private final Map<Fixture, Report> reports = new ConcurrentHashMap<>();

  /**
   * What all rules say about a fixture, which goes by its bare file name.
   *
   * @throws AssertionError if it cannot be read
   */
  Report report(Fixture fixture) {
    return reports.computeIfAbsent(fixture, this::run);
  }

  private Report run(Fixture fixture) {
    Reading reading =
        NetlistReader.read(fixture.netlist().getFileName().toString(), bytes(fixture));
    if (reading instanceof Reading.Read read) {
      return runner.run(Study.of(Circuit.of(read.netlist()), tables));
    }
    throw new AssertionError(fixture + " cannot be read: " + reading);
  }

  private static byte[] bytes(Fixture fixture) {
    try {
      return Files.readAllBytes(fixture.netlist());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
