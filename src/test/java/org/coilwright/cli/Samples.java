package org.coilwright.cli;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.NetlistText;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome.Satisfied;
import org.coilwright.rule.Outcome.Undecided;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.rule.Place;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Weight;
import org.coilwright.table.Standing;

/** Findings and netlists made by hand, for tests of what is done with them. */
public final class Samples {
  public static final String FILE = "boiler.yaml";
  public static final RuleFacts NOT_CHECKED = facts("record.not-checked", Weight.NOTE, List.of());
  public static final RuleFacts ACCEPTED_NOTHING =
      facts("record.accepted-nothing", Weight.NOTE, List.of());

  private Samples() {}

  public static RuleFacts facts(String id, Weight weight, List<String> silencedBy) {
    return new RuleFacts(
        id,
        weight,
        "title of " + id,
        "what " + id + " looks at",
        "The armature hangs in between and burns its contacts.",
        "remedy",
        "nothing",
        List.of("circuit-theory"),
        silencedBy,
        List.of(),
        false);
  }

  public static Mark mark(int line, int column, int length) {
    return new Mark(FILE, line, column, column + length);
  }

  public static Violated violated(RuleFacts rule, int line, String... at) {
    return new Violated(
        rule,
        rule.weight(),
        List.of(at),
        at[0] + " may not pull in",
        "It gets 9.28 V at worst and needs 9.60 V (80 % of 12 V): short by 0.32 V.",
        List.of(new Place(mark(line, 3, 5), "needs at least 9.60 V")),
        "",
        "Take 1 mm² for W1.",
        Optional.of(new Measure(9.28, "V")),
        Optional.of(new Measure(9.6, "V")),
        new Basis(List.of("Circuit theory, any textbook"), Standing.PUBLISHED));
  }

  public static Satisfied satisfied(RuleFacts rule, Standing standing, String... at) {
    return new Satisfied(
        rule,
        List.of(at),
        mark(1, 1, 1),
        at[0] + " is inside its limit",
        Optional.of(new Measure(1.25, "V")),
        Optional.empty(),
        new Basis(List.of("Circuit theory, any textbook"), standing));
  }

  public static Undecided undecided(RuleFacts rule, int line, String missing, String... at) {
    return new Undecided(
        rule, List.of(at), mark(line, 1, 4), missing, rule.id() + " needs " + missing + ".", "");
  }

  public static Netlist.Accepted accepted(String rule, String at) {
    return new Netlist.Accepted(
        mark(2, 1, 4),
        new Written<>(rule, rule, mark(2, 5, rule.length())),
        new Written<>(at, at, mark(2, 30, at.length())),
        "the line is shorter than written",
        "the designer");
  }

  public static Netlist netlist(Netlist.Accepted... accepted) {
    List<String> lines =
        List.of(
            "coilwright: 1",
            "accepted: [{rule: coil.too-low, at: K1, because: …, by: …}]",
            "  K1:",
            "    coil: {pins: [A1, A2], voltage: 12 V DC, range: 80..110 %}",
            "  W1: {length: 140 m, size: 0.5 mm²}");
    Mark top = mark(1, 1, 1);
    return new Netlist(
        new NetlistText(FILE, lines, "00"),
        new Netlist.About(
            new Written<>("Boiler", "Boiler", top),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty()),
        new Site(
            top,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            new Written<>(Site.Practice.IEC, "iec", top)),
        Map.of("G0", new Part.Mains(head("G0", "mains"), List.of("L", "N", "PE")), "E1", heater()),
        Map.of("W1", run()),
        List.of(),
        Map.of(),
        Optional.empty(),
        List.of(accepted));
  }

  private static Part.Head head(String name, String is) {
    return new Part.Head(
        name,
        is,
        mark(3, 3, 2),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static Part.Heater heater() {
    return new Part.Heater(
        head("E1", "heater"),
        List.of("1", "2", "PE"),
        Optional.empty(),
        Optional.empty(),
        new Written<>(Part.Connection.SINGLE, "single", mark(3, 3, 2)),
        Optional.empty(),
        Optional.empty());
  }

  private static Run run() {
    return new Run(
        "W1",
        mark(5, 3, 2),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
