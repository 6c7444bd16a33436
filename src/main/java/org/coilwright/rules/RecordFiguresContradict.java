package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** Two written figures cannot both hold. */
final class RecordFiguresContradict implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("record.figures-contradict", Weight.FIX, "figures that contradict each other")
          .what(
              "Holds pairs of written figures against each other, where both are written: the"
                  + " mains' fault current against voltage over loop impedance; the litres of the"
                  + " vessels against those of the water, and its two temperatures; air in the"
                  + " enclosure against air around it; a coil's resistance, power and voltage, its"
                  + " hold power, hold and pick-up; creepage against clearance; a load's power,"
                  + " current, voltage and power factor, where a motor's power is that of its shaft"
                  + " and lies below by its efficiency; a line against the panel wires that show"
                  + " how near its two ends stand.")
          .why(
              "One of the two is wrong, and all that was computed from it is wrong with it, however"
                  + " well it came out.")
          .remedy("Look both up again, and correct the one that is wrong.")
          .blind(
              "Two figures that are wrong together; figures that lie no further apart than rounding"
                  + " and their tolerances.")
          .sources("circuit-theory", "common-practice", "iec-60664-1");

  private final Cited<Double> apart;
  private final Cited<Double> slack;
  private final Cited<Double> efficiency;

  RecordFiguresContradict(Tables tables) {
    apart = tables.figure("record.apart");
    slack = tables.figure("record.slack");
    efficiency = tables.figure("record.motor-efficiency");
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Netlist netlist = study.circuit().netlist();
    Map<String, List<FigureClash>> clashes = new LinkedHashMap<>();
    FigurePairs pairs = new FigurePairs(apart.value(), efficiency.value());
    clashes.put("site", pairs.site(study, netlist.site()));
    clashes.put(
        "switching", netlist.switching().map(s -> pairs.water(netlist, s)).orElse(List.of()));
    for (Part part : netlist.parts().values()) {
      clashes.put(part.name(), pairs.part(study, part));
    }
    List<Outcome> outcomes = new ArrayList<>();
    clashes.forEach(
        (at, found) -> found.forEach(c -> outcomes.add(violated(at, c, basis(netlist, at)))));
    lines(study).forEach((at, clash) -> outcomes.add(violated(at, clash, Basis.of(slack))));
    if (outcomes.isEmpty()) {
      outcomes.add(
          Subject.ofCircuit(FACTS, netlist)
              .satisfied(
                  "No two of the figures that are held against each other contradict.",
                  Basis.of(apart, slack, efficiency)));
    }
    return outcomes;
  }

  private Basis basis(Netlist netlist, String at) {
    Part part = netlist.parts().get(at);
    return part != null && part.head().is().equals("motor")
        ? Basis.of(apart, efficiency)
        : Basis.of(apart);
  }

  private static Outcome violated(String at, FigureClash clash, Basis basis) {
    return Subject.of(FACTS, clash.one().mark(), at)
        .violated("two figures of %s contradict".formatted(at), clash.numbers(), clash.saysOne())
        .alsoAt(clash.other().mark(), clash.saysOther())
        .todo(
            "Look up both %s and %s, and correct the one that is wrong."
                .formatted(clash.one().text(), clash.other().text()),
            basis);
  }

  /** Lines between two parts that stand nearer than the line is long; the first of each run. */
  private Map<String, FigureClash> lines(Study study) {
    PanelWays panel = new PanelWays(study.circuit());
    Map<String, FigureClash> found = new LinkedHashMap<>();
    Set<String> seen = new LinkedHashSet<>();
    for (Conductor wire : study.circuit().branches(Conductor.class)) {
      Optional<Written<Quantity>> length =
          wire.wire().length().or(() -> wire.run().flatMap(Run::length));
      String one = PanelWays.part(wire.from());
      String other = PanelWays.part(wire.to());
      String at = wire.run().map(Run::name).orElse(wire.from().name());
      if (length.isEmpty()
          || PanelWays.isInPanel(wire)
          || one.equals(other)
          || !seen.add(at + " " + one + " " + other)) {
        continue;
      }
      panel
          .between(one, other, length.get().value().low())
          .filter(way -> length.get().value().low() - way > slack.value())
          .ifPresent(way -> found.putIfAbsent(at, tooLong(wire, length.get(), one, other, way)));
    }
    return found;
  }

  private static FigureClash tooLong(
      Conductor wire, Written<Quantity> length, String one, String other, double way) {
    return new FigureClash(
        length,
        wire.wire().from(),
        "is %s long".formatted(length.text()),
        "joins %s and %s".formatted(one, other),
        "The line from %s to %s is %s long, and by the wires of the panel the two lie %s apart."
            .formatted(one, other, length.text(), Printed.of(way, Dimension.LENGTH)));
  }
}
