package org.coilwright.rules;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import org.coilwright.cli.Style;
import org.coilwright.cli.TextReport;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.rule.Report;
import org.coilwright.rule.Runner;
import org.coilwright.sizing.WarmBox;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/** Runs every rule over a fixture, once however often it is asked for. */
final class Checked {
  private final Tables tables = Tables.load();
  private final Runner runner = AllRules.runner(tables);
  private final Runner controlSide = without(Checked::isBeside);
  private final Runner faults = without(g -> isPowerSide(g) && !g.equals("load"));
  private final Runner powerSide = without(Set.of("behaviour", "fault")::contains);
  private final Map<Fixture, Seen> seen = new ConcurrentHashMap<>();

  /** What the rules say and what a user reads, both from one study: solving is what takes time. */
  private record Seen(Report report, String text) {}

  /** What a short fixture of the control side leaves unsaid about wires, devices and vessels. */
  static boolean isPowerSide(String group) {
    return Set.of("contactor", "conductor", "protection", "load", "enclosure").contains(group);
  }

  /** What a fixture of the control side is not about. */
  private static boolean isBeside(String group) {
    return isPowerSide(group) || group.equals("fault");
  }

  /**
   * What all rules say about a fixture, which goes by its bare file name.
   *
   * @throws AssertionError if it cannot be read
   */
  Report report(Fixture fixture) {
    return seen.computeIfAbsent(fixture, this::see).report();
  }

  private Runner without(Predicate<String> group) {
    return new Runner(
        AllRules.of(tables).stream().filter(r -> !group.test(r.facts().group())).toList(),
        RecordNotChecked.FACTS,
        RecordAcceptedNothing.FACTS);
  }

  /**
   * The text that a fixture expects: all that a user sees, but for a fixture of the control side
   * what the power side and single faults say about it in a line for each finding, so that its
   * point is not buried.
   */
  String text(Fixture fixture) {
    return seen.computeIfAbsent(fixture, this::see).text();
  }

  private Seen see(Fixture fixture) {
    Study study = study(fixture);
    Report whole = runner.run(study);
    return new Seen(whole, text(fixture, study, whole));
  }

  private String text(Fixture fixture, Study study, Report whole) {
    String group = fixture.rule().substring(0, fixture.rule().indexOf('.'));
    if (group.equals("record")) {
      return TextReport.of(whole, Style.PLAIN);
    }
    if (isPowerSide(group)) {
      return TextReport.of(powerSide.run(study), Style.PLAIN);
    }
    if (group.equals("fault")) {
      return TextReport.of(faults.run(study), Style.PLAIN);
    }
    StringBuilder text = new StringBuilder(TextReport.of(controlSide.run(study), Style.PLAIN));
    Set<String> beside = new TreeSet<>();
    whole.findings().stream()
        .filter(f -> isBeside(f.rule().group()))
        .forEach(
            f -> beside.add("%s %s at %s".formatted(f.weight(), f.rule().id(), f.at().get(0))));
    whole.undecided().stream()
        .filter(u -> isBeside(u.rule().group()))
        .forEach(u -> beside.add("open %s, %s".formatted(u.rule().id(), u.missing())));
    beside.forEach(line -> text.append("Beside it: ").append(line).append('\n'));
    return text.toString();
  }

  private Study study(Fixture fixture) {
    Reading reading =
        NetlistReader.read(fixture.netlist().getFileName().toString(), bytes(fixture));
    if (reading instanceof Reading.Read read) {
      return WarmBox.study(read.netlist(), tables);
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
