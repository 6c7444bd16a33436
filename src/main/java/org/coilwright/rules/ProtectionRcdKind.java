package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A residual-current device that does not see the kind of current that can leak here. */
final class ProtectionRcdKind implements Rule {
  /** Each sees what those before it see, and more. */
  private static final List<String> KINDS = List.of("AC", "A", "F", "B");

  private static final RuleFacts FACTS =
      RuleFacts.of("protection.rcd-kind", Weight.FIX, "kind of residual-current device")
          .what(
              "Holds the kind of each residual-current device against asks-rcd of the parts behind"
                  + " it and of the inverters, and looks for kind AC where an inverter or"
                  + " electronics may leak other than plain alternating current.")
          .why(
              "Direct current in the leakage blinds a device that is not made for it: it then opens"
                  + " late or not at all.")
          .remedy(
              "Take the kind that the makers ask for; else A, and behind an inverter B or its"
                  + " maker's word.")
          .blind(
              "What a device truly leaks; devices outside this netlist, such as one of kind A ahead"
                  + " of one of kind B; practice nec, which knows no kinds.")
          .sources("iec-60364-7-712", "rcd-trade-article", "part-data");

  private final Tables tables;

  ProtectionRcdKind(Tables tables) {
    this.tables = tables;
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    Netlist netlist = study.circuit().netlist();
    if (netlist.site().practice().value() != Site.Practice.NEC) {
      List<Part.Source> inverters = inverters(netlist);
      for (Part.Protective device : ResidualDevices.of(study.circuit())) {
        outcomes.add(judge(study, device, inverters));
      }
    }
    return outcomes;
  }

  private Outcome judge(Study study, Part.Protective device, List<Part.Source> inverters) {
    Circuit circuit = study.circuit();
    List<Part> behind = new ArrayList<>(ResidualDevices.behind(study, device));
    behind.addAll(inverters);
    Optional<Written<String>> written = device.kind();
    Subject subject =
        Subject.of(FACTS, written.map(Written::mark).orElse(device.head().mark()), device.name());
    if (written.isEmpty()) {
      return subject.undecided(
          "kind of " + device.name(),
          "Whether %s sees what can leak behind it is open.".formatted(device.name()));
    }
    String kind = written.get().value();
    Optional<Part> asks =
        behind.stream()
            .filter(p -> p.head().asksRcd().isPresent())
            .max(Comparator.comparingInt(p -> rank(asked(p))));
    if (asks.isPresent() && rank(asked(asks.get())) > rank(kind)) {
      return asked(subject, device, kind, asks.get());
    }
    Optional<Mark> inverter = inverter(circuit.netlist(), inverters);
    if (kind.equals("AC") && inverter.isPresent()) {
      return subject
          .violated(
              "%s is of kind AC beside an inverter".formatted(device.name()),
              "An inverter feeds this installation, and %s sees plain alternating current only."
                  .formatted(device.name()),
              "plain alternating current only")
          .alsoAt(inverter.get(), "an inverter")
          .lighter(Weight.NOTE)
          .change(device.kind(), "B")
          .todo(
              "Take kind A, or kind B unless the inverter's maker states that it is not needed.",
              basis("iec-60364-7-712", "712.531.3.5.1"));
    }
    Optional<Part.Source> silent =
        inverters.stream().filter(s -> s.asksRcd().isEmpty()).findFirst();
    if (!kind.equals("B") && silent.isPresent()) {
      return subject
          .violated(
              "what %s asks for before its circuits is not stated".formatted(silent.get().name()),
              "%s is of kind %s, and %s may feed it: without simple separation in the inverter kind B is asked for, unless its maker states that it is not needed."
                  .formatted(device.name(), kind, silent.get().name()),
              "kind " + kind)
          .alsoAt(silent.get().head().mark(), "no asks-rcd")
          .lighter(Weight.NOTE)
          .change(device.kind(), "B")
          .todo(
              "Write asks-rcd of %s from its sheet, or take kind B.".formatted(silent.get().name()),
              basis("iec-60364-7-712", "712.531.3.5.1"));
    }
    Map<Part, String> leaks = new LinkedHashMap<>();
    behind.forEach(p -> electronics(p).ifPresent(words -> leaks.put(p, words)));
    if (kind.equals("AC") && !leaks.isEmpty()) {
      Map.Entry<Part, String> first = leaks.entrySet().iterator().next();
      return subject
          .violated(
              "%s is of kind AC before %s".formatted(device.name(), first.getKey().name()),
              "%s is %s, and %s sees plain alternating current only: that is in order for fixed resistive loads alone."
                  .formatted(first.getKey().name(), first.getValue(), device.name()),
              "plain alternating current only")
          .alsoAt(first.getKey().head().mark(), first.getValue())
          .lighter(Weight.NOTE)
          .change(device.kind(), "A")
          .todo(
              "Take kind A, or what the maker of %s asks for.".formatted(first.getKey().name()),
              basis("rcd-trade-article", "531.3.3"));
    }
    return subject.satisfied(
        asks.isPresent()
            ? "%s is of kind %s; %s asks for %s."
                .formatted(device.name(), kind, asks.get().name(), asked(asks.get()))
            : kind.equals("AC")
                ? "%s is of kind AC, and nothing behind it but resistive loads and coils."
                    .formatted(device.name())
                : "%s is of kind %s, and no part of this netlist asks for more."
                    .formatted(device.name(), kind),
        basis("rcd-trade-article", "531.3.3"));
  }

  private Outcome asked(Subject subject, Part.Protective device, String kind, Part part) {
    Mark mark = part.head().asksRcd().map(Written::mark).orElse(part.head().mark());
    return subject
        .violated(
            "%s is not of the kind that %s asks for".formatted(device.name(), part.name()),
            "%s is of kind %s; the maker of %s asks for kind %s."
                .formatted(device.name(), kind, part.name(), asked(part)),
            "kind " + kind)
        .alsoAt(mark, "asks for kind " + asked(part))
        .change(device.kind(), asked(part))
        .todo(
            "Take a residual-current device of kind %s.".formatted(asked(part)),
            new Basis(List.of(tables.source("part-data").cite()), Standing.PUBLISHED));
  }

  private static int rank(String kind) {
    return KINDS.indexOf(kind);
  }

  private static String asked(Part part) {
    return part.head().asksRcd().map(Written::value).orElse("");
  }

  private static Optional<Mark> inverter(Netlist netlist, List<Part.Source> inverters) {
    return inverters.stream()
        .findFirst()
        .map(i -> i.head().mark())
        .or(() -> netlist.switching().flatMap(s -> s.plant()).map(p -> p.mark()));
  }

  /** Sources with electronics at their output. */
  private static List<Part.Source> inverters(Netlist netlist) {
    return netlist.parts().values().stream()
        .filter(Part.Source.class::isInstance)
        .map(Part.Source.class::cast)
        .filter(s -> !s.kind().value().equals("generator"))
        .toList();
  }

  /** What of a part may leak other than plain alternating current. */
  private static Optional<String> electronics(Part part) {
    return part instanceof Part.Controller || part instanceof Part.DcSupply
        ? Optional.of("electronics")
        : part instanceof Part.OtherLoad ? Optional.of("no resistive load") : Optional.empty();
  }

  private Basis basis(String source, String place) {
    return new Basis(List.of(tables.source(source).cite() + ", " + place), Standing.PUBLISHED);
  }
}
