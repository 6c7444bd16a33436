package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.solve.LoadReading;
import org.coilwright.solve.State;
import org.coilwright.solve.StateTable;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Several loads start at the same instant. */
final class LoadTogether implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("load.together", Weight.NOTE, "loads that start together")
          .what(
              "Moves each output, switch and thermostat alone, in every state, and adds the loads"
                  + " that this one movement turns on; shows the step on each line and against the"
                  + " device that they share.")
          .why(
              "The step is what the mains fuse, the meter and a battery feel at once; apart by a"
                  + " few seconds it would be halved.")
          .remedy("Start them one after the other if the step is more than the supply takes well.")
          .blind("Loads outside this circuit; start-up currents.")
          .sources("circuit-theory");

  private final PowerSides sides;
  private final Basis basis;

  LoadTogether(PowerSides sides) {
    this.sides = sides;
    Tables tables = sides.tables();
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    PowerSide side = sides.of(study).side();
    List<Outcome> outcomes = new ArrayList<>();
    Optional<Step> largest = Optional.empty();
    Map<String, Part> byName = new LinkedHashMap<>();
    side.loads().forEach(l -> byName.put(l.name(), l));
    for (StateTable table : byName.isEmpty() ? List.<StateTable>of() : study.tables()) {
      List<Part> loads =
          table.loads().stream().flatMap(l -> Optional.ofNullable(byName.get(l)).stream()).toList();
      for (Step step : loads.isEmpty() ? List.<Step>of() : steps(study, table, loads)) {
        if (largest.isEmpty() || step.beats(largest.get())) {
          largest = Optional.of(step);
        }
      }
    }
    largest.filter(s -> !s.loads().isEmpty()).ifPresent(s -> outcomes.add(judge(side, s)));
    return outcomes;
  }

  /** What each movement of one contact turns on. */
  private static List<Step> steps(Study study, StateTable table, List<Part> loads) {
    Map<Map<String, Boolean>, State> byPositions = new LinkedHashMap<>();
    table.states().forEach(s -> byPositions.putIfAbsent(of(table, s), s));
    List<Step> steps = new ArrayList<>();
    byPositions.forEach(
        (positions, after) -> {
          for (String column : table.columns()) {
            Map<String, Boolean> other = new LinkedHashMap<>(positions);
            other.computeIfPresent(column, (name, on) -> !on);
            State before = byPositions.get(other);
            if (before != null && !study.isShorted(after) && !study.isShorted(before)) {
              steps.add(step(study, loads, column, before, after));
            }
          }
        });
    return steps;
  }

  private static Map<String, Boolean> of(StateTable table, State state) {
    Map<String, Boolean> own = new LinkedHashMap<>();
    table.columns().forEach(c -> own.put(c, state.isOperated(c)));
    return own;
  }

  private record Step(String column, List<Part> loads, double watts, Map<String, Double> lines) {
    boolean beats(Step other) {
      boolean more = loads.size() > 1;
      boolean others = other.loads().size() > 1;
      return more == others ? watts > other.watts : more;
    }
  }

  private static Step step(
      Study study, List<Part> loads, String column, State before, State after) {
    List<Part> started = new ArrayList<>();
    double watts = 0;
    Map<String, Double> lines = new TreeMap<>();
    for (Part load : loads) {
      LoadReading now = study.load(load.name(), after);
      if (now.on() && !study.load(load.name(), before).on()) {
        started.add(load);
        watts += now.watts();
        double most = now.amps().values().stream().mapToDouble(a -> a).max().orElse(0);
        now.lines().forEach(l -> lines.merge(l, most, Double::sum));
      }
    }
    return new Step(column, List.copyOf(started), watts, lines);
  }

  private Outcome judge(PowerSide side, Step step) {
    List<String> at = step.loads().stream().map(Part::name).toList();
    Subject subject = new Subject(FACTS, step.loads().get(0).head().mark(), at);
    String total = Printed.of(step.watts(), Dimension.POWER);
    Measure value = new Measure(step.loads().size(), "loads");
    Measure limit = new Measure(1, "loads");
    if (step.loads().size() < 2) {
      return subject.satisfied(
          "No movement of one contact starts more than one load; the largest step is %s (%s by %s)."
              .formatted(total, at.get(0), step.column()),
          value,
          limit,
          basis);
    }
    List<String> lines = new ArrayList<>();
    step.lines().forEach((l, a) -> lines.add("%s %s".formatted(l, Printed.amps(a))));
    Subject.Finding finding =
        subject
            .violated(
                "%s start together".formatted(String.join(" and ", at)),
                "%s turns on %s loads at once: a step of %s, on the lines %s%s."
                    .formatted(
                        step.column(),
                        step.loads().size(),
                        total,
                        String.join(", ", lines),
                        shared(side, step.loads())),
                "starts with the others")
            .measured(value, limit);
    step.loads().forEach(l -> finding.alsoAt(l.head().mark(), "starts with it"));
    return finding.todo(
        "Nothing, if the supply takes %s at once; otherwise start them one after the other."
            .formatted(total),
        basis);
  }

  /** What the largest common device makes of it. */
  private static String shared(PowerSide side, List<Part> loads) {
    for (Branch branch : side.branches()) {
      Optional<Part> device = Overcurrent.device(side.circuit(), branch);
      if (device.isPresent() && side.loadsThrough(branch).containsAll(loads)) {
        OptionalDouble rating = Overcurrent.rating(device.get());
        if (rating.isPresent()) {
          return ", all behind %s of %s"
              .formatted(device.get().name(), Printed.of(rating.getAsDouble(), Dimension.CURRENT));
        }
      }
    }
    return "";
  }
}
