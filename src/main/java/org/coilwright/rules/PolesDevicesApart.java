// Over 250 lines: finding devices apart, joined, tied, and the remedy that joins them.
package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site.Practice;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Written;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Change;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rewiring;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** The lines of one load come through several devices, each of which opens by itself. */
final class PolesDevicesApart implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("poles.devices-apart", Weight.STOP, "lines of one load in separate devices")
          .what(
              "Opens each breaker and fuse in the lines of a load, controller or supply that hangs"
                  + " on several lines: what takes one of them off and leaves another stands apart."
                  + " STOP for breakers, FIX where one switch or device of all poles stands in the"
                  + " way as well. Fuses, which nobody switches off, are well behind or before such"
                  + " a one, and FIX without. Breakers whose handles are tied do with practice nec,"
                  + " and are a FIX elsewhere, as each trips alone. A contactor is none: it"
                  + " isolates nothing.")
          .why(
              "One of them trips or is switched off, and the load is live from the other lines:"
                  + " it is taken for dead, or goes on heating by an earth fault.")
          .remedy("Put one device with a pole for every line in the place of the separate ones.")
          .blind(
              "Which loads of a network the code allows handle ties for. Coils; and"
                  + " residual-current devices, which have protection.rcd-bypassed. A line that"
                  + " goes past every breaker and fuse is for conductor.unprotected.")
          .sources("common-practice", "nec")
          .consequenceOf("poles.line-repeated", "wiring.short-circuit");

  private final Basis practice;
  private final Basis code;

  PolesDevicesApart(Tables tables) {
    practice =
        new Basis(List.of(tables.source("common-practice").cite()), Standing.COMMON_PRACTICE);
    code = new Basis(List.of(tables.source("nec").cite()), Standing.FROM_MEMORY);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  /** What a consumer has in its lines. */
  private record Found(
      MainsConsumer consumer, Set<Part> apart, Set<Part> together, Set<Node> taken) {
    /** True if those that stand apart take every line off, one by one. */
    boolean isApart(List<Node> lines) {
      return taken.containsAll(lines);
    }
  }

  @Override
  public List<Outcome> check(Study study) {
    Map<Set<Part>, List<Found>> groups = new LinkedHashMap<>();
    for (Found found : look(study)) {
      groups.computeIfAbsent(found.apart(), k -> new ArrayList<>()).add(found);
    }
    List<Outcome> outcomes = new ArrayList<>();
    groups.forEach(
        (apart, found) -> {
          if (apart.isEmpty()) {
            found.forEach(f -> outcomes.add(sound(f)));
          } else {
            outcomes.add(judge(study, List.copyOf(apart), found));
          }
        });
    return outcomes;
  }

  private static List<Found> look(Study study) {
    Circuit circuit = study.circuit();
    Feeding whole = Feeding.whole(study);
    Map<MainsConsumer, Found> all = new LinkedHashMap<>();
    for (Part part : circuit.netlist().parts().values()) {
      if (!isDevice(part) && !(part instanceof Part.Switch)) {
        continue;
      }
      Feeding open = ResidualDevices.opened(study, part);
      for (MainsConsumer consumer : Regions.of(study).consumersThatFeel(part)) {
        List<Node> lines = lines(whole, consumer);
        List<Node> left = lines.stream().filter(p -> MainsConsumer.isLine(open, p)).toList();
        if (lines.size() < 2
            || left.size() == lines.size()
            || circuit.netlist().parts().get(consumer.name()) instanceof Part.Relay) {
          continue;
        }
        Found found =
            all.computeIfAbsent(
                consumer,
                c ->
                    new Found(
                        c, new LinkedHashSet<>(), new LinkedHashSet<>(), new LinkedHashSet<>()));
        if (left.isEmpty()) {
          found.together().add(part);
        } else if (isDevice(part) && !isResidual(part)) {
          found.apart().add(part);
          lines.stream().filter(p -> !left.contains(p)).forEach(found.taken()::add);
        }
      }
    }
    return all.values().stream()
        .filter(
            f ->
                f.apart().isEmpty()
                    ? !f.together().isEmpty()
                    : f.isApart(lines(whole, f.consumer())))
        .toList();
  }

  private static boolean isDevice(Part part) {
    return part instanceof Part.Protective || part instanceof Part.Fuse;
  }

  private static boolean isResidual(Part part) {
    return part instanceof Part.Protective device && device.isRcd();
  }

  private static List<Node> lines(Feeding whole, MainsConsumer consumer) {
    return consumer.pins().stream().filter(p -> MainsConsumer.isLine(whole, p)).toList();
  }

  private Outcome sound(Found found) {
    return Subject.of(FACTS, found.consumer().mark(), found.consumer().name())
        .satisfied(
            "%s opens every line of %s at once."
                .formatted(names(found.together(), " and "), found.consumer().name()),
            practice);
  }

  private Outcome judge(Study study, List<Part> apart, List<Found> found) {
    Netlist netlist = study.circuit().netlist();
    Set<Part> together = new LinkedHashSet<>(found.get(0).together());
    found.forEach(f -> together.retainAll(f.together()));
    List<String> at = new ArrayList<>(apart.stream().map(Part::name).toList());
    found.forEach(f -> at.add(f.consumer().name()));
    Subject subject = new Subject(FACTS, apart.get(0).head().mark(), List.copyOf(at));
    String loads =
        found.stream().map(f -> f.consumer().name()).collect(Collectors.joining(" and "));
    boolean fuses = apart.stream().allMatch(Part.Fuse.class::isInstance);
    if (fuses && !together.isEmpty()) {
      return subject.satisfied(
          "%s are fuses, and %s opens every line of %s at once."
              .formatted(names(apart, ", "), names(together, " and "), loads),
          practice);
    }
    boolean nec = netlist.site().practice().value() == Practice.NEC;
    boolean tied = isTied(apart);
    if (tied && nec) {
      return subject.satisfied(
          "The handles of %s are tied: they are switched off together, which practice nec allows for %s (240.15(B))."
              .formatted(names(apart, " and "), loads),
          code);
    }
    MainsConsumer first = found.get(0).consumer();
    List<Node> lines = lines(Feeding.whole(study), first);
    Feeding open = ResidualDevices.opened(study, apart.get(0));
    List<Node> left = lines.stream().filter(p -> MainsConsumer.isLine(open, p)).toList();
    Subject.Finding finding =
        subject.violated(
            "%s open the lines of %s one by one".formatted(names(apart, ", "), loads),
            "%s hangs on %s lines. With %s off or %s, %s of them stay%s on it, at %s.%s"
                .formatted(
                    first.name(),
                    lines.size(),
                    apart.get(0).name(),
                    fuses ? "blown" : "tripped",
                    left.size(),
                    left.size() == 1 ? "s" : "",
                    left.stream().map(Node::name).collect(Collectors.joining(" and ")),
                    together.isEmpty()
                        ? " Nothing but contactors opens all of them at once."
                        : " Only %s opens all of them at once.".formatted(names(together, " or "))),
            "opens some of the lines");
    apart.stream().skip(1).forEach(p -> finding.alsoAt(p.head().mark(), "opens another"));
    finding.alsoAt(
        Objects.requireNonNull(netlist.parts().get(first.name())).head().mark(), "stays live");
    if (fuses || tied || !together.isEmpty()) {
      finding.lighter(Weight.FIX);
    }
    if (tied) {
      finding.detail("Tied handles go off together by hand; one that trips leaves the other on.");
    }
    if (!fuses) {
      finding.change(joined(netlist, apart));
    }
    return finding.todo(remedy(apart, lines.size(), fuses, nec), nec ? code : practice);
  }

  /** True for breakers that share one tie. */
  private static boolean isTied(List<Part> apart) {
    Set<Optional<String>> ties =
        apart.stream().map(PolesDevicesApart::tie).collect(Collectors.toSet());
    return ties.size() == 1 && !ties.contains(Optional.<String>empty());
  }

  private static Optional<String> tie(Part part) {
    return part instanceof Part.Protective breaker
        ? breaker.handleTie().map(Written::value)
        : Optional.empty();
  }

  /** The first with as many poles, and the wires of the others on these. */
  static List<Change> joined(Netlist netlist, List<Part> apart) {
    Part first = apart.get(0);
    List<Change> changes =
        new ArrayList<>(
            Rewiring.word(netlist, first.head().mark(), "poles: 1", "poles: " + apart.size()));
    for (Part part : apart) {
      if (changes.isEmpty()
          || !(part instanceof Part.Protective device)
          || device.poles().size() > 1) {
        return List.of();
      }
      int place = apart.indexOf(part);
      if (place > 0) {
        Part.Pole pole = device.poles().get(0);
        int pin = 2 * place + 1;
        changes.addAll(moved(netlist, part, pole.from(), first, pin));
        changes.addAll(moved(netlist, part, pole.to(), first, pin + 1));
      }
    }
    return List.copyOf(changes);
  }

  private static List<Change> moved(Netlist netlist, Part from, String pin, Part to, int toPin) {
    return Rewiring.exchanged(
        netlist, new Terminal(from.name(), pin), new Terminal(to.name(), "" + toPin));
  }

  private static String remedy(List<Part> apart, int lines, boolean fuses, boolean nec) {
    String devices = names(apart, ", ");
    if (fuses) {
      return "Put one switch with %s poles ahead of %s.".formatted(lines, devices);
    }
    return "Put one breaker with %s poles in the place of %s%s."
        .formatted(
            lines, devices, nec ? " (240.15(B)), or tie their handles and write handle-tie" : "");
  }

  private static String names(Iterable<? extends Part> parts, String between) {
    List<String> names = new ArrayList<>();
    parts.forEach(p -> names.add(p.name()));
    return String.join(between, names);
  }
}
