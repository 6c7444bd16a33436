package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.netlist.Method;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
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

/** Circuits behind separate devices return over one wire. */
final class PolesNeutralShared implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("poles.neutral-shared", Weight.STOP, "one neutral for several circuits")
          .what(
              "Follows the neutral of each load, coil and mains input from its pin to the first"
                  + " neutral pole of a device, or to the mains, and looks whether one wire returns"
                  + " what comes through different breakers or fuses. Wires of a panel and bridges,"
                  + " which join the neutrals at the board, are well, and so is a cable that also"
                  + " brings the lines to these devices. STOP where nothing opens the lines of all"
                  + " of them at once, FIX where a switch or device ahead of the separate ones"
                  + " does.")
          .why(
              "With one device off, its neutral is taken for dead, and once opened it is live"
                  + " through the load of the other. Where it breaks, the loads lie in series"
                  + " between two lines, and the smaller one gets almost all of their voltage.")
          .remedy(
              "Give each circuit its own neutral, or put one device that opens all their lines"
                  + " together in the place of the separate ones.")
          .blind(
              "Handle ties between one-pole breakers; a neutral shared"
                  + " with a circuit that is not written; the joints of a panel; a pin that a"
                  + " change-over brings now to a line and now to the neutral.")
          .sources("iec-60364-5-52-neutral", "nec", "circuit-theory")
          .consequenceOf("poles.neutral-borrowed", "poles.neutral-crossed", "wiring.short-circuit");

  private final Basis iec;
  private final Basis nec;
  private final Basis theory;

  PolesNeutralShared(Tables tables) {
    iec = new Basis(List.of(tables.source("iec-60364-5-52-neutral").cite()), Standing.FROM_MEMORY);
    nec =
        new Basis(
            List.of(tables.source("nec").cite() + ", 210.4(B) (from memory)"),
            Standing.FROM_MEMORY);
    theory = new Basis(List.of(tables.source("circuit-theory").cite()), Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  /** Those that one wire, or several, return. */
  private record Shared(List<NeutralWay> ways, List<Conductor> wires) {
    List<Part> devices() {
      return ways.stream().flatMap(w -> w.devices().stream()).distinct().toList();
    }
  }

  @Override
  public List<Outcome> check(Study study) {
    List<NeutralWay> all = NeutralWay.all(study);
    Map<List<NeutralWay>, List<Conductor>> groups = new LinkedHashMap<>();
    Set<NeutralWay> sharing = new LinkedHashSet<>();
    returning(all)
        .forEach(
            (wire, ways) -> {
              if (separate(ways) && !isBoard(wire)) {
                groups.computeIfAbsent(ways, k -> new ArrayList<>()).add(wire);
                sharing.addAll(ways);
              }
            });
    List<Outcome> outcomes = new ArrayList<>();
    if (separate(all)) {
      all.stream().filter(w -> !sharing.contains(w)).forEach(w -> outcomes.add(sound(w)));
    }
    // the wires of one and the same loads belong to one finding
    Map<Set<Part>, Shared> causes = new LinkedHashMap<>();
    groups.forEach(
        (ways, wires) -> {
          Shared shared = new Shared(ways, wires);
          causes.merge(
              new LinkedHashSet<>(shared.devices()),
              shared,
              (a, b) -> a.ways().size() >= b.ways().size() ? a : b);
        });
    causes.values().forEach(shared -> outcomes.add(judge(study, shared)));
    return outcomes;
  }

  /** What each wire returns, gathered in one pass. */
  private static Map<Conductor, List<NeutralWay>> returning(List<NeutralWay> all) {
    Map<Conductor, List<NeutralWay>> returning = new LinkedHashMap<>();
    for (NeutralWay way : all) {
      for (Conductor wire : way.wires()) {
        List<NeutralWay> ways = returning.computeIfAbsent(wire, k -> new ArrayList<>());
        if (way.returnsBy(wire)) {
          ways.add(way);
        }
      }
    }
    return returning;
  }

  private static boolean separate(List<NeutralWay> ways) {
    return ways.stream().map(NeutralWay::devices).distinct().count() > 1;
  }

  /** True for what joins neutrals where the circuits begin. */
  private static boolean isBoard(Conductor wire) {
    return wire.bridge() || method(wire).filter(m -> m == Method.PANEL).isPresent();
  }

  private static Optional<Method> method(Conductor wire) {
    return wire.run().flatMap(Run::installed).map(Written::value);
  }

  private Basis basis(Study study) {
    return study.circuit().netlist().site().practice().value() == Site.Practice.NEC ? nec : iec;
  }

  private static Subject subject(List<NeutralWay> ways, List<Conductor> wires) {
    List<String> at = new ArrayList<>();
    ways.forEach(w -> at.add(w.consumer().name()));
    ways.forEach(w -> w.devices().forEach(d -> at.add(d.name())));
    wires.forEach(w -> at.add(w.id()));
    return new Subject(FACTS, ways.get(0).consumer().mark(), at.stream().distinct().toList());
  }

  private Outcome sound(NeutralWay way) {
    return subject(List.of(way), List.of())
        .satisfied(
            "No wire outside the panel returns %s together with what comes through another device than %s."
                .formatted(way.consumer().name(), names(way.devices())),
            theory);
  }

  private Outcome judge(Study study, Shared shared) {
    Netlist netlist = study.circuit().netlist();
    List<NeutralWay> ways = shared.ways();
    Subject subject = subject(ways, shared.wires());
    Conductor wire =
        shared.wires().stream()
            .filter(w -> method(w).isPresent())
            .findFirst()
            .orElse(shared.wires().get(0));
    String loads = DeadEnds.listed(ways.stream().map(w -> w.consumer().name()).distinct().toList());
    String words = "%s to %s".formatted(wire.from(), wire.to());
    if (method(wire).isEmpty()) {
      return subject.undecided(
          "installed of " + EarthLoop.name(wire),
          "%s returns %s, which come through %s. Whether that is a joint of the panel or a neutral of several circuits is open."
              .formatted(words, loads, names(shared.devices())));
    }
    NeutralWay first = ways.get(0);
    NeutralWay other =
        ways.stream().filter(w -> !w.devices().equals(first.devices())).findFirst().orElse(first);
    List<Part> together = together(study, ways);
    Subject.Finding finding =
        subject
            .violated(
                "%s share a neutral behind %s".formatted(loads, names(shared.devices())),
                "%s returns %s. With %s off and this neutral opened, its end is live through %s, which %s leaves on. %s"
                    .formatted(
                        words,
                        loads,
                        names(first.devices()),
                        other.consumer().name(),
                        names(other.devices()),
                        together.isEmpty()
                            ? "Nothing opens the lines of all of them at once."
                            : "Only %s opens the lines of all of them at once."
                                .formatted(names(together))),
                "returns by the shared neutral")
            .alsoAt(wire.mark(), "the shared neutral");
    ways.stream()
        .skip(1)
        .forEach(w -> finding.alsoAt(w.consumer().mark(), "returns by it as well"));
    if (!together.isEmpty()) {
      finding.lighter(Weight.FIX);
    }
    finding.change(PolesDevicesApart.joined(netlist, shared.devices()));
    return finding.todo(
        "Run a neutral of its own to each of %s, or put one breaker that opens all their lines in the place of %s."
            .formatted(loads, names(shared.devices())),
        basis(study));
  }

  /** Devices and switches that alone take every line off all of them. */
  private static List<Part> together(Study study, List<NeutralWay> ways) {
    return study.circuit().netlist().parts().values().stream()
        .filter(p -> p instanceof Part.Protective || p instanceof Part.Switch)
        .filter(
            p -> {
              Feeding open = ResidualDevices.opened(study, p);
              return ways.stream()
                  .flatMap(w -> w.consumer().pins().stream())
                  .noneMatch(pin -> MainsConsumer.isLine(open, pin));
            })
        .toList();
  }

  private static String names(Collection<? extends Part> parts) {
    return DeadEnds.listed(parts.stream().map(Part::name).toList());
  }
}
