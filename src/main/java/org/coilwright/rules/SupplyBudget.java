// Over 250 lines: both questions that are asked of a supply, on one sum.
package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.solve.Study;
import org.coilwright.solve.Trouble;
import org.coilwright.table.Cited;

/**
 * What hangs on a direct-voltage supply, and the most it can ask of it in any reachable state.
 *
 * @param consumers everything that draws current from it, in the order of the netlist
 */
record SupplyBudget(Study study, DirectSupply supply, CoilWiring wiring, List<Branch> consumers) {
  /** More parts than this are counted instead of named. */
  private static final int NAMED = 2 * 2 * 2;

  /**
   * Something a netlist does not tell.
   *
   * @param key as an undecided outcome names it
   */
  private record Gap(String key, String at, Mark mark) {}

  /** The most over all states, how it comes about, and who draws it where that is known. */
  record Most(double amps, String how, List<Branch> consumers) {
    /** Designations: the supply first, then what draws on it. */
    List<String> at(String supply) {
      List<String> at = new ArrayList<>(List.of(supply));
      consumers.stream().map(Branch::part).distinct().forEach(at::add);
      return List.copyOf(at);
    }
  }

  /** The budget of a supply; coils without a written tolerance have the usual one. */
  static SupplyBudget of(Study study, DirectSupply supply, Cited<Double> tolerance) {
    return new SupplyBudget(
        study, supply, CoilWiring.of(study, tolerance.value()), consumers(study.circuit(), supply));
  }

  private static List<Branch> consumers(Circuit circuit, DirectSupply supply) {
    Set<Node> zone = circuit.reach(supply.source().to(), VoltageBands::avoidsEarth);
    return circuit.islandOf(supply.source().to()).branches().stream()
        .filter(b -> zone.contains(b.from()))
        .filter(
            b ->
                b instanceof Coil
                    || b instanceof Branch.LoadElement
                    || (b instanceof Branch.Passive p
                        && (p.spec() instanceof Part.Lamp
                            || p.spec() instanceof Part.Resistor
                            || conducts(p.spec(), supply))))
        .toList();
  }

  /** True for a varistor that the supply drives above its clamping voltage all the time. */
  private static boolean conducts(Part part, DirectSupply supply) {
    double volts = supply.volts().map(Quantity::nominal).orElse(0.0);
    return part instanceof Part.Varistor varistor
        && varistor.clampingVoltage().filter(clamp -> clamp.value().nominal() < volts).isPresent();
  }

  /**
   * One undecided outcome for each thing that keeps the sum from being made or held against a
   * limit.
   */
  List<Outcome> unknown(RuleFacts rule) {
    String part = supply.part();
    if (supply.output().limit().isEmpty()) {
      return List.of(
          Subject.of(rule, supply.output().mark(), part)
              .undecided(
                  supply.missing("limit"),
                  "What %s can give is not written, so what is asked of it has nothing to be held against."
                      .formatted(part)));
    }
    return gaps().stream()
        .<Outcome>map(
            gap ->
                Subject.of(rule, gap.mark(), gap.at())
                    .undecided(
                        gap.key(),
                        "What is asked of %s cannot be added up without %s."
                            .formatted(part, gap.key())))
        .toList();
  }

  /** The undecided outcome of a sum that holds for the explored states alone. */
  Optional<Outcome> unexplored(RuleFacts rule) {
    return study.troubles().stream()
        .filter(Trouble.Gap.class::isInstance)
        .map(Trouble.Gap.class::cast)
        .map(
            group ->
                (Outcome)
                    Subject.of(rule, supply.output().mark(), supply.part())
                        .undecided(
                            Troubles.missing(group),
                            group instanceof Trouble.NotExplored
                                ? "Not every position of %s was explored, so the most that %s is asked for is not known."
                                    .formatted(String.join(", ", group.names()), supply.part())
                                : "Because %s, the most that %s is asked for is not known."
                                    .formatted(Troubles.reason(group), supply.part())))
        .findFirst();
  }

  private List<Gap> gaps() {
    List<Gap> gaps = new ArrayList<>();
    if (supply.volts().isEmpty()) {
      gaps.add(new Gap(supply.missing("voltage"), supply.part(), supply.mark()));
    }
    for (Branch consumer : consumers) {
      gap(consumer)
          .map(key -> new Gap(key + " of " + consumer.part(), consumer.part(), consumer.mark()))
          .ifPresent(gaps::add);
    }
    return gaps;
  }

  private Optional<String> gap(Branch consumer) {
    if (consumer instanceof Coil coil) {
      return wiring.fed(coil).ohms().isEmpty() ? Optional.of("coil.resistance") : Optional.empty();
    }
    if (consumer instanceof Branch.LoadElement load) {
      return load.ratedWatts().isEmpty() ? Optional.of("power") : Optional.empty();
    }
    if (consumer instanceof Branch.Passive passive) {
      if (passive.spec() instanceof Part.Lamp lamp && lamp.current().isEmpty()) {
        return Optional.of("current");
      }
      if (passive.spec() instanceof Part.Resistor r && r.resistance().isEmpty()) {
        return Optional.of("resistance");
      }
    }
    return Optional.empty();
  }

  /**
   * The most it delivers while everything that is on holds. Only where nothing is {@link #unknown}.
   */
  Most steady() {
    return most(study.heaviest(supply.source().id()).amps());
  }

  /** The most it delivers while everything that is on pulls in at once. */
  Most pickUp() {
    return most(study.heaviest(supply.source().id()).pickUpAmps());
  }

  private Most most(double amps) {
    Quantity volts = supply.volts().orElseThrow();
    double spread = leastShare();
    List<Branch> on = drawing();
    return new Most(
        amps * volts.high() / volts.nominal() / spread,
        "%s: %s at nominal figures. At worst the supply gives %s and coils have %s of their resistance"
            .formatted(
                names(on),
                Printed.amps(amps),
                Printed.volts(volts.high()),
                Printed.percent(spread)),
        on);
  }

  private static String names(List<Branch> on) {
    List<String> names = on.stream().map(Branch::part).distinct().toList();
    if (names.isEmpty()) {
      return "What hangs on it";
    }
    return names.size() <= NAMED
        ? String.join(", ", names) + (names.size() > 1 ? " together" : "")
        : "%s and %s more together"
            .formatted(String.join(", ", names.subList(0, NAMED)), names.size() - NAMED);
  }

  /** Shows, of what draws the most, the hungriest two. */
  void show(Subject.Finding finding, Most most) {
    most.consumers().stream()
        .sorted(Comparator.comparingDouble((Branch b) -> -draws(b)))
        .limit(2)
        .forEach(b -> finding.alsoAt(b.mark(), label(b)));
  }

  private String label(Branch consumer) {
    double pickUp =
        consumer instanceof Coil coil
            ? coil.spec()
                .pickUp()
                .map(p -> p.value().high() / coil.spec().voltage().value().nominal())
                .orElse(0.0)
            : 0;
    double most = draws(consumer);
    if (pickUp > most) {
      return "pulls in with %s, holds with %s at most"
          .formatted(Printed.amps(pickUp), Printed.amps(most));
    }
    return most > 0 ? "draws up to " + Printed.amps(most) : "on as well";
  }

  private double draws(Branch consumer) {
    return consumer instanceof Coil coil ? wiring.fed(coil).mostAmps().orElse(0) : 0;
  }

  /** What draws current in the heaviest state; empty if the states are too many to list. */
  private List<Branch> drawing() {
    String id = supply.source().id();
    if (!study.listsEveryCombination()) {
      return List.of();
    }
    return study.states().stream()
        .max(Comparator.comparingDouble(s -> study.supply(id, s).amps()))
        .map(
            worst ->
                consumers.stream()
                    .filter(b -> !(b instanceof Coil) || study.coil(b.part(), worst).amps() > 0)
                    .toList())
        .orElse(List.of());
  }

  /** The least share of its nominal resistance that a coil on this supply may have. */
  private double leastShare() {
    return consumers.stream()
        .filter(Coil.class::isInstance)
        .map(Coil.class::cast)
        .flatMap(coil -> wiring.fed(coil).ohms().stream())
        .mapToDouble(ohms -> ohms.low() / ohms.nominal())
        .min()
        .orElse(1);
  }

  /**
   * How a rule speaks of the most that is asked of a supply. In each text the supply or the figures
   * stand where {@code %s} is.
   *
   * @param most which of the sums is asked about
   * @param headline of the supply
   * @param asked of the sum, the limit, by how much it is missed
   * @param remedy of the sum
   * @param enough of the supply, the sum, the limit
   */
  record Question(
      Function<SupplyBudget, Most> most,
      String headline,
      String asked,
      String remedy,
      String enough) {}

  /** Holds the most that is asked of each direct supply against what it gives. */
  static List<Outcome> ask(
      Study study, RuleFacts rule, Cited<Double> tolerance, Question question) {
    List<Outcome> outcomes = new ArrayList<>();
    for (DirectSupply supply : DirectSupply.of(study.circuit())) {
      SupplyBudget budget = of(study, supply, tolerance);
      if (!budget.consumers().isEmpty()) {
        List<Outcome> unknown = budget.unknown(rule);
        outcomes.addAll(
            unknown.isEmpty()
                ? List.of(budget.compare(rule, Basis.of(tolerance), question))
                : unknown);
      }
    }
    return outcomes;
  }

  private Outcome compare(RuleFacts rule, Basis basis, Question question) {
    String name = supply.part();
    Written<Quantity> limit = supply.output().limit().orElseThrow();
    double gives = limit.value().low();
    Most most = question.most().apply(this);
    Printed.Pair pair = Printed.pair(most.amps(), gives, Dimension.CURRENT);
    Measure value = new Measure(most.amps(), "A");
    Measure held = new Measure(gives, "A");
    Subject subject = new Subject(rule, limit.mark(), most.at(name));
    if (Comparison.exceeds(most.amps(), gives)) {
      Subject.Finding finding =
          subject.violated(
              question.headline().formatted(name),
              question.asked().formatted(pair.value(), pair.limit(), pair.apart()),
              "gives at most " + pair.limit());
      show(finding, most);
      return finding
          .detail(most.how() + ".")
          .measured(value, held)
          .change(limit.mark(), Printed.atLeast(most.amps(), Dimension.CURRENT))
          .todo(
              question.remedy().formatted(Printed.atLeast(most.amps(), Dimension.CURRENT)), basis);
    }
    return unexplored(rule)
        .orElseGet(
            () ->
                subject.satisfied(
                    question.enough().formatted(name, pair.value(), pair.limit()),
                    value,
                    held,
                    basis));
  }
}
