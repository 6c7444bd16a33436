package org.coilwright.draft;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Report;
import org.coilwright.rule.Runner;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.WarmBox;
import org.coilwright.table.Tables;

/** Asks the rules about a netlist. */
final class Proof {
  /** Keys that nobody can know before the site and the manuals are seen. */
  private static final List<String> MAY_BE_OPEN =
      List.of(
          "site.",
          "fault-current",
          "loop-impedance",
          "ground-fault loop",
          "earthing",
          "vessel",
          "let-through",
          "switching.");

  /** Groups whose open questions tables or the site settle, and no part that is bought. */
  private static final Set<String> ON_SITE = Set.of("conductor", "protection");

  /** Of these the one that the device which is bought settles. */
  private static final String WARM_DEVICE = "protection.device-too-warm";

  /** What no table says of a wire of the direct circuit in very warm air. */
  private static final String NO_FIGURE = "tabulated size";

  private final Tables tables;
  private final Judges judges;

  Proof(Tables tables, Judges judges) {
    this.tables = tables;
    this.judges = judges;
  }

  /** Every rule. */
  Report of(String netlist) {
    return run(judges.whole(), netlist);
  }

  /** The rules that choose figures: all but those on faults and settings. */
  Report quick(String netlist) {
    return run(judges.quick(), netlist);
  }

  /** The rules that rehearse settings. */
  Report settings(String netlist) {
    return run(judges.settings(), netlist);
  }

  private Report run(Runner runner, String netlist) {
    Reading reading = NetlistReader.read("drafted.yaml", netlist.getBytes(StandardCharsets.UTF_8));
    if (reading instanceof Reading.Read read) {
      return runner.run(WarmBox.study(read.netlist(), tables));
    }
    throw new IllegalStateException(
        "a drafted netlist cannot be read: "
            + ((Reading.Unusable) reading).problems()
            + "\n"
            + netlist);
  }

  /** Findings that must not be in a circuit that is handed out. */
  static List<Outcome.Violated> against(Report report) {
    return report.findings().stream()
        .filter(f -> f.weight() != Weight.NOTE && report.counts(f))
        .toList();
  }

  /** What could not be settled although a draft knows its own parts. */
  static List<Outcome.Undecided> unsettled(Report report) {
    return report.undecided().stream()
        .filter(u -> MAY_BE_OPEN.stream().noneMatch(u.missing()::contains))
        .filter(u -> u.missing().startsWith("ratings") || !u.missing().contains(" of U1"))
        .toList();
  }

  /** The part of it without which nobody may say that a circuit works. */
  static List<Outcome.Undecided> vital(Report report) {
    return unsettled(report).stream()
        .filter(u -> !ON_SITE.contains(u.rule().group()) || u.rule().id().equals(WARM_DEVICE))
        .filter(u -> !u.missing().startsWith(NO_FIGURE))
        .toList();
  }
}
