package org.coilwright.rules;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Actuator;
import org.coilwright.netlist.Intent;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.solve.Trouble;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A load is on or off in a position of the contacts in which the intent says otherwise. */
final class WiringIntentDiffers implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("wiring.intent-differs", Weight.STOP, "load does not do what is intended")
          .what(
              "Compares the computed switching table with `intent:`, position by position."
                  + " Thermostats and cut-outs that the intent does not name count as closed. A"
                  + " relay that the intent names, because it is meant to hold itself in, counts as"
                  + " it stands.")
          .why(
              "A load that is on when it should be off heats with nobody in charge of it; one that"
                  + " is off when it should be on shows that a wire is not where the drawing has"
                  + " it.")
          .remedy("Follow the path that the finding names, or correct the intent.")
          .blind(
              "How far a load is on that hangs on the same lines whenever it is: one at a fraction"
                  + " of its power counts as on.")
          .sources("circuit-theory")
          .consequenceOf(
              "wiring.sneak-path",
              "poles.load-not-switched",
              "poles.line-missing",
              "poles.neutral-missing",
              "poles.line-repeated",
              "wiring.self-joined",
              "separation.mains-meets-elv",
              "coil.always-on",
              "coil.half-pulled",
              "coil.reversed",
              "coil.wont-release",
              "coil.wrong-current-kind",
              "poles.neutral-earthed",
              "supply.unfed")
          .carriedBy("wiring.loose-end");

  /** A load that stays off follows from a relay before it that cannot pull in. */
  private static final RuleFacts OFF =
      FACTS.carriedBy("wiring.loose-end", "coil.never-on", "coil.too-low");

  private final Basis basis;

  WiringIntentDiffers(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return Loads.of(study.circuit()).stream().map(load -> checkLoad(study, load)).toList();
  }

  private Outcome checkLoad(Study study, Part load) {
    String name = load.name();
    Written<Intent> intent = study.circuit().netlist().intent().get(name);
    if (intent == null) {
      return Subject.of(FACTS, load.head().mark(), name)
          .undecided("intent of " + name, "Nothing says when %s shall be on.".formatted(name));
    }
    Subject subject = Subject.of(FACTS, intent.mark(), name);
    Set<String> names = intent.value().names();
    Optional<String> missing = Loads.unknown(study.circuit(), load);
    if (missing.isPresent()) {
      return Subject.of(FACTS, load.head().mark(), name)
          .undecided(
              missing.get(),
              "When %s is on cannot be told: the %s is not written."
                  .formatted(name, missing.get()));
    }
    List<String> unknown =
        names.stream().filter(n -> !study.columns().contains(n) && !holdsItself(study, n)).toList();
    if (!unknown.isEmpty()) {
      return subject.undecided(
          "intent of %s in independent contacts".formatted(name),
          "The intent of %s names %s, which is no independent contact and no relay that holds itself in."
              .formatted(name, String.join(", ", unknown)));
    }
    List<State> states =
        states(study, name, names).stream().filter(s -> counts(study, s, names)).toList();
    List<State> differing =
        states.stream().filter(s -> on(study, load, s) != holds(intent, s)).toList();
    if (!differing.isEmpty()) {
      return differs(study, load, intent, differing, states.size());
    }
    Optional<Outcome> part =
        PartlyOn.of(study, load, states.stream().filter(s -> holds(intent, s)).toList())
            .map(partly -> partly.outcome(subject, basis));
    if (part.isPresent()) {
      return part.get();
    }
    List<Outcome> gaps = Troubles.unexplored(FACTS, study);
    if (!gaps.isEmpty()) {
      return gaps.get(0);
    }
    String where = states.isEmpty() ? "every position" : "some positions";
    if (states.isEmpty() || Troubles.any(study, Trouble.ShortCircuit.class)) {
      return subject.undecided(
          Troubles.unshorted(load),
          "A short-circuit hides what %s does in %s.".formatted(name, where));
    }
    if (Troubles.any(study, Trouble.NoSteadyState.class)) {
      return subject.undecided(
          "positions of %s in which its relays come to rest".formatted(name),
          "What %s does while relays pull in and drop out is not known.".formatted(name));
    }
    return subject.satisfied(
        "%s is on exactly when %s, in each of %s states."
            .formatted(name, intent.text(), states.size()),
        basis);
  }

  private static boolean holdsItself(Study study, String name) {
    return study.circuit().netlist().parts().get(name) instanceof Part.Relay
        && CoilFeed.of(study, name).holdsItself();
  }

  /**
   * The states that can matter to the load; all of them if the intent names a contact that cannot.
   */
  private static List<State> states(Study study, String load, Set<String> names) {
    List<State> own = study.statesFor(load);
    boolean allVary =
        names.stream()
            .filter(n -> study.columns().contains(n))
            .allMatch(n -> own.stream().map(s -> s.positions().get(n)).distinct().count() > 1);
    List<State> looked = own;
    if (!allVary) {
      Set<String> all = new LinkedHashSet<>(names);
      all.add(load);
      looked =
          study.listsEveryCombination()
              ? study.states()
              : study.statesOfAll(all).orElseGet(study::states);
    }
    return looked.stream().filter(s -> !study.isShorted(s)).toList();
  }

  /** Unnamed thermostats and cut-outs count as closed: positions with one open are left out. */
  private static boolean counts(Study study, State state, Set<String> named) {
    return study.circuit().independentActuators().stream()
        .filter(a -> a.kind() == Actuator.Kind.THERMOSTAT || a.kind() == Actuator.Kind.CUT_OUT)
        .map(Actuator::name)
        .filter(name -> !named.contains(name))
        .allMatch(name -> state.positions().getOrDefault(name, true));
  }

  private Outcome differs(
      Study study, Part load, Written<Intent> intent, List<State> differing, int of) {
    // a load that is on against the intent is the worse half, so it is the one that is shown
    State shown =
        differing.stream().filter(s -> on(study, load, s)).findFirst().orElse(differing.get(0));
    boolean on = on(study, load, shown);
    String name = load.name();
    // the relays before the load stand among the places, so that a fault of theirs is the cause
    List<String> relays = Loads.relaysBefore(study, name);
    Set<String> at = new LinkedHashSet<>(List.of(name));
    at.addAll(relays);
    if (!on) {
      relays.forEach(relay -> at.addAll(CoilFeed.of(study, relay).deadEnds()));
    }
    boolean opposite = differing.size() == of && of > 1;
    return new Subject(on ? FACTS : OFF, intent.mark(), List.copyOf(at))
        .violated(
            "%s is %s when it should be %s".formatted(name, onOff(on), onOff(!on)),
            "With %s it should be %s and is %s. It misses the intent in %s."
                .formatted(
                    Positions.of(study, shown),
                    onOff(!on),
                    onOff(on),
                    opposite
                        ? "every one of %s states: it does the opposite".formatted(of)
                        : "%s of %s states".formatted(differing.size(), of)),
            "says %s here".formatted(onOff(!on)))
        .alsoAt(load.head().mark(), "is %s".formatted(onOff(on)))
        .detail(
            (on ? LoadTrail.fedBy(study, name, shown) : LoadTrail.openBefore(study, name, shown))
                + LoadTrail.relays(study, relays, shown)
                + Positions.ofOpening(study, intent.value().names()))
        .todo(
            opposite
                ? "Look for a contact of the other form (NC in place of NO) in its way, or correct"
                    + " the intent."
                : on
                    ? "Put the contact that should decide into this way, or correct the intent."
                    : "Find out why it is open in this position, or correct the intent.",
            basis);
  }

  private static String onOff(boolean on) {
    return on ? "on" : "off";
  }

  private static boolean holds(Written<Intent> intent, State state) {
    return intent.value().holds(name -> state.isOperated(name) || state.isIn(name));
  }

  private static boolean on(Study study, Part load, State state) {
    return study.load(load.name(), state).on();
  }
}
