// Over 250 lines: each load for long, for a moment, and all together share one finding.
package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Words;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.Making;
import org.coilwright.solve.State;
import org.coilwright.solve.StateTable;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A load takes more than its own source gives while the mains are off. */
final class LoadExceedsIsland implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("load.exceeds-island", Weight.FIX, "load above what the source gives alone")
          .what(
              "Holds the current of each load that the source of `site.island` feeds, and of all"
                  + " that can be on together in one line, at the highest voltage and power,"
                  + " against its `rated-current`; what a load draws at first against the larger of"
                  + " that and `fault-current`.")
          .why(
              "The source shuts down at the change-over or at the first start, and the house is"
                  + " dark with the mains off.")
          .remedy("Take the load off what `feeds` names, or take a larger source.")
          .blind(
              "Other loads of the house that it feeds as well; a contact that drops out at the"
                  + " change-over and stays out, which the netlist cannot say.")
          .sources("island-largest-load", "load-inrush-data");

  private final PowerSides sides;
  private final Tables tables;

  LoadExceedsIsland(PowerSides sides) {
    this.sides = sides;
    this.tables = sides.tables();
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return ByShaft.open(study, sides, IslandView.ask(study, sides, FACTS, this::judge));
  }

  private List<Outcome> judge(IslandView island) {
    List<Outcome> outcomes = new ArrayList<>();
    Optional<Written<Quantity>> rated = island.written().ratedCurrent();
    Optional<Outcome> together = rated.flatMap(r -> together(island, r));
    Set<String> told = new LinkedHashSet<>();
    together.ifPresent(t -> told.addAll(t.at()));
    boolean beyond = false;
    for (Part load : island.loads()) {
      Subject subject = Subject.of(FACTS, load.head().mark(), load.name());
      String open = "Whether the source alone carries %s is open.".formatted(load.name());
      Optional<LoadCurrent> takes = island.seen().side().current(load);
      if (rated.isEmpty()) {
        outcomes.add(
            subject.undecided(
                "site.island.rated-current", open + " What it gives for long is not written."));
      } else if (takes.isEmpty()) {
        outcomes.add(
            subject.undecided(LoadCurrent.missing(load), open + " Its power is not known."));
      } else {
        Outcome steady = steady(subject, takes.get(), rated.get());
        boolean tooMuch = steady instanceof Outcome.Violated;
        beyond |= tooMuch;
        Optional<Outcome> first = tooMuch ? Optional.empty() : first(island, subject, takes.get());
        beyond |= first.filter(Outcome.Violated.class::isInstance).isPresent();
        outcomes.add(first.orElse(steady));
      }
    }
    for (Part load : island.seen().side().mainsLoads()) {
      if (!island.loads().contains(load)) {
        outcomes.add(
            new Subject(FACTS, island.written().mark(), List.of(load.name()))
                .satisfied(
                    "In island operation nothing feeds %s.".formatted(load.name()),
                    Basis.of(share())));
      }
    }
    if (!beyond && together.isPresent()) {
      outcomes.removeIf(o -> o instanceof Outcome.Satisfied && told.contains(o.at().get(0)));
      outcomes.add(together.get());
    }
    return outcomes;
  }

  private Outcome steady(Subject subject, LoadCurrent takes, Written<Quantity> rated) {
    double gives = rated.value().low() / share().value();
    Printed.Pair pair = Printed.pair(takes.worst(), gives, Dimension.CURRENT);
    Measure value = new Measure(takes.worst(), "A");
    Measure limit = new Measure(gives, "A");
    if (!Comparison.exceeds(takes.worst(), gives)) {
      return subject.satisfied(
          "%s takes %s %s, and the source gives %s in each line."
              .formatted(subject.at().get(0), pair.value(), takes.worstWords(), pair.limit()),
          value,
          limit,
          basis(takes));
    }
    return finding(subject, rated, takes.worst(), pair, takes.worstWords())
        .measured(value, limit)
        .change(rated.mark(), Printed.atLeast(takes.worst() * share().value(), Dimension.CURRENT))
        .todo(remedy("rated-current", takes.worst() * share().value()), basis(takes));
  }

  /** For each line the loads of one circuit that take most of it together. */
  private static Map<Node, List<Part>> fullest(
      IslandView island, StateTable table, List<Part> loads) {
    Study study = island.seen().study();
    boolean known = table.isComplete();
    Map<Node, List<Part>> fullest = new LinkedHashMap<>();
    for (State state : known ? table.states() : study.states().subList(0, 1)) {
      Map<Node, List<Part>> byLine = new LinkedHashMap<>();
      for (Part load : loads) {
        if (!known || study.load(load.name(), state).on()) {
          island
              .seen()
              .side()
              .linesOf(load)
              .forEach(l -> byLine.computeIfAbsent(l, k -> new ArrayList<>()).add(load));
        }
      }
      byLine.forEach(
          (line, here) -> {
            if (sum(island, here) > sum(island, fullest.getOrDefault(line, List.of()))) {
              fullest.put(line, here);
            }
          });
    }
    return fullest;
  }

  private static double sum(IslandView island, List<Part> loads) {
    return loads.stream()
        .flatMap(l -> island.seen().side().current(l).stream())
        .mapToDouble(LoadCurrent::worst)
        .sum();
  }

  private static Subject.Finding finding(
      Subject subject, Written<Quantity> written, double amps, Printed.Pair pair, String how) {
    String loads = Words.all(subject.at());
    return subject
        .violated(
            "%s %s more than the source gives alone"
                .formatted(loads, subject.at().size() > 1 ? "take" : "takes"),
            "%s (%s) in island operation, and it gives %s: too much by %s."
                .formatted(pair.value(), how, pair.limit(), pair.apart()),
            "takes " + Printed.amps(amps))
        .alsoAt(written.mark(), "gives " + pair.limit());
  }

  private static String remedy(String key, double amps) {
    return "Name under site.island.feeds only parts behind which it does not lie, and wire it so; or take a source of %s: %s or more."
        .formatted(key, Printed.atLeast(amps, Dimension.CURRENT));
  }

  private Basis basis(LoadCurrent takes) {
    List<Cited<?>> cited = new ArrayList<>(List.of(share()));
    takes.power().ifPresent(cited::add);
    inrush(takes).ifPresent(cited::add);
    return Basis.of(cited);
  }

  private Cited<Double> share() {
    return tables.figure("sizing.island-share");
  }

  /** What it draws at first; empty if that is no more than what the source gives for long. */
  private Optional<Outcome> first(IslandView island, Subject subject, LoadCurrent takes) {
    Optional<Cited<Double>> drawn = inrush(takes);
    String open = "Whether the source alone starts %s is open.".formatted(takes.load().name());
    if (drawn.isEmpty()) {
      return Optional.of(
          subject.undecided(
              "inrush of " + takes.load().name(),
              open + " What it draws at first is not written."));
    }
    double peak = drawn.get().value();
    Written<Quantity> rated = island.written().ratedCurrent().orElseThrow();
    if (!Comparison.exceeds(peak, rated.value().low())) {
      return Optional.empty();
    }
    Optional<Written<Quantity>> most = island.written().faultCurrent();
    if (most.isEmpty()) {
      return Optional.of(
          subject.undecided(
              "site.island.fault-current",
              "%s It draws %s at first, and what the source gives for a moment is not written."
                  .formatted(open, Printed.amps(peak))));
    }
    double gives = Math.max(most.get().value().low(), rated.value().low());
    if (!Comparison.exceeds(peak, gives)) {
      return Optional.empty();
    }
    Printed.Pair pair = Printed.pair(peak, gives, Dimension.CURRENT);
    return Optional.of(
        finding(subject, most.get(), peak, pair, "at first")
            .measured(new Measure(peak, "A"), new Measure(gives, "A"))
            .change(most, Printed.atLeast(peak, Dimension.CURRENT))
            .todo(remedy("fault-current", peak), Basis.of(drawn.get())));
  }

  /** A that a load draws at first: as written, or by what it is. */
  private Optional<Cited<Double>> inrush(LoadCurrent takes) {
    Part load = takes.load();
    if (load instanceof Part.OtherLoad other && other.inrush().isPresent()) {
      Quantity inrush = other.inrush().get().value().amount();
      double times = inrush.dimension() == Dimension.CURRENT ? 1 : takes.worst();
      return Optional.of(
          new Cited<>(
              inrush.high() * times, tables.source("part-data"), "inrush", Standing.PUBLISHED));
    }
    String kind =
        load instanceof Part.Heater heater
            ? heater.kind().map(Written::value).orElse("metal-sheathed")
            : load.head().is();
    return Making.inrush(kind, tables).map(c -> c.map(multiple -> multiple * takes.worst()));
  }

  /** All loads of a line that one position of the contacts turns on; circuits add up. */
  private Optional<Outcome> together(IslandView island, Written<Quantity> rated) {
    Study study = island.seen().study();
    Map<String, Part> byName = new LinkedHashMap<>();
    island.loads().forEach(l -> byName.put(l.name(), l));
    Map<Node, List<Part>> fullest = new LinkedHashMap<>();
    for (StateTable table : study.tables()) {
      List<Part> own =
          table.loads().stream().flatMap(l -> Optional.ofNullable(byName.get(l)).stream()).toList();
      if (!own.isEmpty()) {
        fullest(island, table, own)
            .forEach(
                (line, on) -> fullest.computeIfAbsent(line, k -> new ArrayList<>()).addAll(on));
      }
    }
    double most = 0;
    List<Part> worst = List.of();
    for (List<Part> here : fullest.values()) {
      double sum = sum(island, here);
      if (here.size() > 1 && sum > most) {
        most = sum;
        worst = island.loads().stream().filter(here::contains).toList();
      }
    }
    double gives = rated.value().low() / share().value();
    if (!Comparison.exceeds(most, gives)) {
      return Optional.empty();
    }
    Printed.Pair pair = Printed.pair(most, gives, Dimension.CURRENT);
    Subject subject =
        new Subject(FACTS, worst.get(0).head().mark(), worst.stream().map(Part::name).toList());
    Subject.Finding finding =
        finding(subject, rated, most, pair, "together in one line")
            .measured(new Measure(most, "A"), new Measure(gives, "A"));
    worst.forEach(l -> finding.alsoAt(l.head().mark(), "can be on as well"));
    finding.change(rated.mark(), Printed.atLeast(most * share().value(), Dimension.CURRENT));
    return Optional.of(
        finding.todo(remedy("rated-current", most * share().value()), Basis.of(share())));
  }
}
