package org.coilwright.rules;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Actuator;
import org.coilwright.netlist.Intent;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.rule.FaultWords;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.solve.Fault;
import org.coilwright.solve.FaultCase;
import org.coilwright.solve.FaultClass;
import org.coilwright.solve.Faults;
import org.coilwright.solve.LoadEffect;
import org.coilwright.solve.LoadEffect.Effect;
import org.coilwright.solve.Study;
import org.coilwright.solve.Trouble;

/**
 * A load that single faults leave on where it should be off, or start with nobody asking.
 *
 * @param held what holds it on, in the order of the netlist; may be empty
 * @param unknown faults whose effect was not computed
 */
record KeptOn(Study study, Part load, List<Held> held, List<Fault> unknown) {
  /** What the rules ask about; nothing else is broken for them, for breaking takes time. */
  private static final Set<Fault.Kind> ASKED =
      EnumSet.of(
          Fault.Kind.CONTACT_WELDS,
          Fault.Kind.ARMATURE_STICKS,
          Fault.Kind.WIRE_BROKEN,
          Fault.Kind.SUPPLY_LOST,
          Fault.Kind.COIL_SHORTED,
          Fault.Kind.SUPPRESSOR_SHORTED,
          Fault.Kind.EARTHED);

  /** A fault that leaves a load on, and in which positions. */
  record Held(Fault fault, LoadEffect effect) {}

  /** The faults of a study, worked out once for the rules that ask. */
  private record All(List<FaultCase> cases) {}

  private static List<FaultCase> cases(Study study, Set<Fault.Kind> kinds) {
    return study.derived(All.class, s -> new All(Faults.of(s, ASKED).cases())).cases().stream()
        .filter(c -> kinds.contains(c.fault().kind()))
        .toList();
  }

  /** Every load, and the faults of these kinds that leave it on; none if nothing can so break. */
  static List<KeptOn> all(Study study, Set<Fault.Kind> kinds) {
    List<FaultCase> cases = cases(study, kinds);
    List<KeptOn> all = new ArrayList<>();
    if (cases.isEmpty()) {
      return all;
    }
    List<Fault> unknown =
        cases.stream().filter(c -> !c.explored()).map(FaultCase::fault).distinct().toList();
    Map<String, List<Held>> held = new HashMap<>();
    for (FaultCase one : cases) {
      List<LoadEffect> unasked =
          one.effects().stream()
              .filter(LoadEffect::isUnasked)
              .flatMap(e -> unwanted(study, e).stream())
              .toList();
      // one that cannot be turned off need not be said to start as well
      unasked.stream()
          .filter(
              e ->
                  e.effect() == Effect.STAYS_ON
                      || unasked.stream()
                          .noneMatch(
                              o -> o.effect() == Effect.STAYS_ON && o.load().equals(e.load())))
          .forEach(
              e ->
                  held.computeIfAbsent(e.load(), k -> new ArrayList<>())
                      .add(new Held(one.fault(), e)));
    }
    for (Part load : Loads.of(study.circuit())) {
      List<Held> own = List.copyOf(held.getOrDefault(load.name(), List.of()));
      all.add(new KeptOn(study, load, own, unknown));
    }
    return all;
  }

  /**
   * The effect without the positions in which the load is meant to be on: where the whole circuit
   * fails to do what is intended, a fault may happen to bring it about.
   */
  private static Optional<LoadEffect> unwanted(Study study, LoadEffect effect) {
    Written<Intent> intent = study.circuit().netlist().intent().get(effect.load());
    if (intent == null) {
      return Optional.of(effect);
    }
    List<Map<String, Boolean>> rest =
        effect.positions().stream().filter(p -> !isMeantOn(study, intent.value(), p)).toList();
    return rest.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new LoadEffect(
                effect.load(), effect.effect(), rest, effect.stoppedBy(), effect.onlyHolds()));
  }

  /** Thermostats and cut-outs that the intent does not name turn the load off where they open. */
  private static boolean isMeantOn(Study study, Intent intent, Map<String, Boolean> positions) {
    return intent.holds(name -> positions.getOrDefault(name, false))
        && study.circuit().independentActuators().stream()
            .filter(a -> a.kind() == Actuator.Kind.THERMOSTAT || a.kind() == Actuator.Kind.CUT_OUT)
            .filter(a -> !intent.names().contains(a.name()))
            .allMatch(a -> positions.getOrDefault(a.name(), true));
  }

  String name() {
    return load.name();
  }

  /** The load and the parts at fault, the load first. */
  List<String> at(List<Held> those) {
    List<String> at = new ArrayList<>(List.of(name()));
    those.forEach(h -> at.addAll(h.fault().at()));
    return at.stream().distinct().toList();
  }

  /** Those that leave it on in the same positions and that the same things stop, together. */
  static List<List<Held>> alike(List<Held> those) {
    Map<LoadEffect, List<Held>> alike = new LinkedHashMap<>();
    those.forEach(h -> alike.computeIfAbsent(h.effect(), k -> new ArrayList<>()).add(h));
    return List.copyOf(alike.values());
  }

  /** {@code E1 is on with U1.heat open if K1.11-14 welds; what then still stops it: B1}. */
  String inWords(List<Held> alike) {
    Held first = alike.get(0);
    return "%s %s%s if %s; what then still stops it: %s."
        .formatted(
            name(),
            first.effect().onlyHolds()
                ? "may stay on"
                : first.effect().effect() == Effect.STARTS_BY_ITSELF ? "starts by itself" : "is on",
            with(first.effect()),
            faults(alike),
            FaultWords.stops(first.effect()));
  }

  /**
   * In which positions: those of the contacts that decide, if all others may stand as they like.
   */
  private String with(LoadEffect effect) {
    List<Map<String, Boolean>> all = effect.positions();
    Map<String, Boolean> common = new LinkedHashMap<>(all.get(0));
    all.forEach(p -> common.entrySet().retainAll(p.entrySet()));
    int combinations = 1;
    for (int free = all.get(0).size() - common.size(); free > 0; free--) {
      combinations *= 2;
    }
    if (combinations == all.size()) {
      return common.isEmpty() ? "" : " with " + Positions.of(study, common);
    }
    int more = all.size() - 1;
    return " with %s (and in %s more position%s)"
        .formatted(Positions.of(study, all.get(0)), more, more == 1 ? "" : "s");
  }

  private static String faults(List<Held> alike) {
    List<Fault> faults = alike.stream().map(Held::fault).toList();
    FaultCase like = new FaultCase(faults.get(0), List.of(), List.of(), Optional.empty(), true);
    return FaultWords.what(new FaultClass(faults, like)).replace("; ", " or ");
  }

  /** What all of them do, one sentence for those that behave alike. */
  String inWordsAll(List<Held> those) {
    return alike(those).stream().map(this::inWords).collect(Collectors.joining(" "));
  }

  /** What keeps the question open, if something does. */
  Optional<Outcome> open(RuleFacts rule) {
    Subject subject = Subject.of(rule, load.head().mark(), name());
    Optional<String> missing = Loads.unknown(study.circuit(), load);
    if (missing.isPresent()) {
      return Optional.of(
          subject.undecided(
              missing.get(),
              "What %s does when something breaks cannot be told: the %s is not written."
                  .formatted(name(), missing.get())));
    }
    if (!unknown.isEmpty()) {
      Optional<Trouble.Gap> gap =
          study.troubles().stream()
              .filter(Trouble.Gap.class::isInstance)
              .map(Trouble.Gap.class::cast)
              .findFirst();
      String key =
          gap.map(Troubles::missing)
              .orElse("a smaller group than " + unknown.get(0).at().get(0) + " then belongs to");
      String reason =
          gap.filter(g -> !(g instanceof Trouble.NotExplored))
              .map(Troubles::reason)
              .orElse("too many contacts then act on one another");
      return Optional.of(
          subject.undecided(
              key,
              "What %s does was not computed for %s of the faults, as %s; the first is: %s."
                  .formatted(name(), unknown.size(), reason, unknown.get(0).inWords())));
    }
    if (study.statesFor(name()).stream().allMatch(study::isShorted)
        && !study.statesFor(name()).isEmpty()) {
      return Optional.of(
          subject.undecided(
              Troubles.unshorted(load),
              "A short-circuit hides what %s does in every position.".formatted(name())));
    }
    return Optional.empty();
  }

  /** Begins a finding about some of what holds it on, with the places of the first few. */
  Subject.Finding finding(RuleFacts rule, List<Held> those, String headline, String then) {
    Held first = those.get(0);
    Subject.Finding finding =
        new Subject(rule, first.fault().mark(), at(those))
            .violated(headline, inWordsAll(those), breaks(first.fault()));
    finding.alsoAt(load.head().mark(), then);
    those.stream()
        .skip(1)
        .limit(1)
        .forEach(h -> finding.alsoAt(h.fault().mark(), breaks(h.fault())));
    return finding;
  }

  /** {@code K1.11-14 welds}, {@code this wire breaks}. */
  private static String breaks(Fault fault) {
    return switch (fault.kind()) {
      case WIRE_BROKEN -> "breaks";
      case EARTHED -> "touches earth";
      default -> fault.inWords();
    };
  }
}
