package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part.ContactForm;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.solve.Trouble.TwoSteadyStates;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** The circuit holds itself in, and nothing says that it should. */
final class WiringTwoSteadyStates implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("wiring.two-steady-states", Weight.FIX, "circuit that holds itself in")
          .what(
              "Carries every position of the contacts to rest, from all relays out and from each"
                  + " neighbouring state; raised where more than one rest is reached. Relays move"
                  + " in the order of their operate and release times; where these are not written"
                  + " and it matters, in every order.")
          .why(
              "Whether the load is on depends on what was before, or on which relay is faster: the"
                  + " controller's contact opens"
                  + " and the load stays on, or it closes and the load stays off.")
          .remedy(
              "Take the holding contact out. If the circuit shall hold itself, name the relay in"
                  + " the intent of the load, such as `E1: K1`.")
          .blind(
              "What was meant: a latch with a stop button is raised as well, until the intent of a"
                  + " load names its relay. Relays that lock each other out through opening"
                  + " contacts are not.")
          .sources("circuit-theory")
          .consequenceOf("wiring.sneak-path", "wiring.short-circuit", "coil.wont-release");

  private final Basis basis;

  WiringTwoSteadyStates(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    Troubles.alike(study, TwoSteadyStates.class, TwoSteadyStates::relays)
        .forEach(
            alike ->
                outcomes.add(
                    isInterlock(study, alike.get(0).relays())
                        ? interlocked(study, alike)
                        : meantToHold(study, alike).orElseGet(() -> holding(study, alike))));
    outcomes.addAll(Troubles.unexplored(FACTS, study));
    CoilFeed.all(study).stream()
        .filter(PerCoil::returnsByEarth)
        .map(feed -> PerCoil.byEarth(PerCoil.subject(FACTS, feed), feed.relay()))
        .forEach(outcomes::add);
    if (outcomes.isEmpty()) {
      outcomes.add(
          Subject.ofCircuit(FACTS, study.circuit().netlist())
              .satisfied(
                  "Each position of the contacts leads to one state, whatever was before.", basis));
    }
    return outcomes;
  }

  /** True if each of these relays has an opening contact of another in its way, and holds none. */
  private static boolean isInterlock(Study study, List<String> relays) {
    return relays.size() > 1
        && relays.stream()
            .map(relay -> CoilFeed.of(study, relay))
            .allMatch(
                feed ->
                    follows(feed, relays, ContactForm.NC)
                        && !follows(feed, relays, ContactForm.NO));
  }

  private static boolean follows(CoilFeed feed, List<String> relays, ContactForm form) {
    return feed.switches().stream()
        .anyMatch(
            contact ->
                contact.actuator().kind() == Actuator.Kind.COIL
                    && relays.contains(contact.actuator().name())
                    && contact.form() == form);
  }

  private Outcome interlocked(Study study, List<TwoSteadyStates> alike) {
    List<String> relays = alike.get(0).relays();
    return new Subject(FACTS, Where.coil(study.circuit(), relays.get(0)), relays)
        .satisfied(
            "%s lock each other out: where more than one is called, the one that was in first stays. %s."
                .formatted(String.join(" and ", relays), Troubles.with(study, alike)),
            basis);
  }

  /** Satisfied if an intent names these relays and some position of the contacts releases them. */
  private Optional<Outcome> meantToHold(Study study, List<TwoSteadyStates> alike) {
    List<String> relays = alike.get(0).relays();
    boolean meant =
        study.circuit().netlist().intent().values().stream()
            .anyMatch(intent -> intent.value().names().containsAll(relays));
    Optional<State> released =
        study.statesFor(relays.get(0)).stream()
            .filter(state -> relays.stream().noneMatch(state::isIn))
            .filter(
                state -> alike.stream().noneMatch(two -> two.positions().equals(state.positions())))
            .findFirst();
    return meant && !alike.get(0).race() && released.isPresent()
        ? Optional.of(
            new Subject(FACTS, Where.coil(study.circuit(), relays.get(0)), relays)
                .satisfied(
                    "%s may hold in, as the intent names it; %s releases it."
                        .formatted(
                            String.join(" and ", relays), Positions.of(study, released.get())),
                    basis))
        : Optional.empty();
  }

  private Outcome holding(Study study, List<TwoSteadyStates> alike) {
    Circuit circuit = study.circuit();
    TwoSteadyStates first = alike.get(0);
    List<String> relays = first.relays();
    String names = String.join(" and ", relays);
    boolean one = relays.size() == 1;
    var finding =
        new Subject(FACTS, Where.coil(circuit, relays.get(0)), relays)
            .violated(
                first.race()
                    ? "a race decides over " + names
                    : one ? names + " holds itself in" : names + " hold one another",
                "%s, %s can be in or out, whichever %s.%s"
                    .formatted(
                        Troubles.with(study, alike),
                        names,
                        first.race()
                            ? "relay is faster"
                            : one ? "it was before" : "they were before",
                        loadsThatFollow(study, first)),
                first.race()
                    ? "in or out, as the race ends"
                    : one ? "stays in once it is in" : "stays as it was");
    for (String relay : relays) {
      finding.alsoAt(Where.coil(circuit, relay), "this coil as well");
      for (Contact contact : circuit.contactsOf(new Actuator(Actuator.Kind.COIL, relay))) {
        if (contact.form() == ContactForm.NO && !contact.pole() && feedsOwnCoil(circuit, contact)) {
          finding.alsoAt(contact.mark(), "%s feeds the coil once it is in".formatted(contact.id()));
        }
      }
    }
    return finding.todo(
        first.race()
            ? "Wire it so that the order does not matter, or write operate-time and release-time of"
                + " these coils."
            : "Take the holding contact out; if it shall hold, name %s in the intent of the load."
                .formatted(names),
        basis);
  }

  private static String loadsThatFollow(Study study, TwoSteadyStates trouble) {
    List<String> loads = new ArrayList<>();
    for (String load : Loads.names(study.circuit())) {
      if (on(study, load, trouble.first()) != on(study, load, trouble.second())) {
        loads.add(load);
      }
    }
    return loads.isEmpty()
        ? ""
        : " %s follow%s it.".formatted(String.join(", ", loads), loads.size() == 1 ? "s" : "");
  }

  private static boolean on(Study study, String load, State state) {
    return study.load(load, state).on();
  }

  /** True if wires and contacts lead from the contact to its own coil. */
  private static boolean feedsOwnCoil(Circuit circuit, Contact contact) {
    Set<Node> reached =
        circuit.reach(contact.to(), b -> b instanceof Conductor || b instanceof Contact);
    return circuit.branchesOf(contact.part()).stream()
        .filter(Coil.class::isInstance)
        .anyMatch(coil -> reached.contains(coil.from()) || reached.contains(coil.to()));
  }
}
