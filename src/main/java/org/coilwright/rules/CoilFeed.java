// Over 250 lines: what every coil rule asks of a coil.
package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.solve.CoilReading;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;

/**
 * How a coil is meant to get its current: the ways round from its first pin through conductors,
 * contacts and a source to its second pin. A way through another coil, a load or a snubber is not
 * meant, whatever current it carries.
 *
 * @param ways every such way, shortest first
 */
record CoilFeed(Study study, Coil coil, List<Path> ways) {

  /** The feeds of every coil that has a wire at all, in the order of the netlist. */
  static List<CoilFeed> all(Study study) {
    return All.of(study).wired();
  }

  static CoilFeed of(Study study, Coil coil) {
    return All.of(study).of(coil);
  }

  /**
   * The feed of a relay's coil.
   *
   * @throws IllegalArgumentException if there is no such relay
   */
  static CoilFeed of(Study study, String relay) {
    return study.circuit().branchesOf(relay).stream()
        .filter(Coil.class::isInstance)
        .map(coil -> of(study, (Coil) coil))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no relay " + relay));
  }

  /** The feeds of a study, worked out once for the many rules that ask. */
  private record All(Map<Coil, CoilFeed> byCoil, List<CoilFeed> wired) {
    static All of(Study study) {
      return study.derived(All.class, All::workedOut);
    }

    private static All workedOut(Study study) {
      Circuit circuit = study.circuit();
      CoilWays ways = new CoilWays(study);
      Map<Coil, CoilFeed> byCoil = new LinkedHashMap<>();
      List<CoilFeed> wired = new ArrayList<>();
      for (Coil coil : circuit.branches(Coil.class)) {
        CoilFeed feed = new CoilFeed(study, coil, ways.of(coil));
        byCoil.put(coil, feed);
        if (isWired(circuit, coil)) {
          wired.add(feed);
        }
      }
      return new All(byCoil, List.copyOf(wired));
    }

    CoilFeed of(Coil coil) {
      return Objects.requireNonNull(byCoil.get(coil), "not a coil of this circuit");
    }
  }

  /** True for what may lead a coil's current on its way, contacts in any position. */
  boolean leads(Branch branch) {
    return CoilWays.leads(study.circuit(), branch);
  }

  private static boolean isWired(Circuit circuit, Coil coil) {
    return circuit.branchesAt(coil.from()).size() > 1 || circuit.branchesAt(coil.to()).size() > 1;
  }

  /**
   * Of a coil that no way feeds, the pins that wires and contacts lead it to, those of supplies
   * left out: the fault lies at one of them. Empty if it has a way.
   */
  List<String> deadEnds() {
    return ways.isEmpty() ? CoilWays.deadEnds(study.circuit(), coil) : List.of();
  }

  String relay() {
    return coil.part();
  }

  Part.CoilSpec spec() {
    return coil.spec();
  }

  double ratedVolts() {
    return spec().voltage().value().nominal();
  }

  /** True if it is made for alternating current, by its word or by what only such coils have. */
  boolean isAlternating() {
    CurrentKind kind = spec().voltage().value().kind();
    return kind == CurrentKind.AC
        || (kind == CurrentKind.UNSTATED
            && (spec().pickUp().isPresent() || spec().hold().isPresent()));
  }

  /** True if something is written that the coil's current follows from. */
  boolean isCurrentKnown() {
    return spec().resistance().isPresent()
        || spec().power().isPresent()
        || (isAlternating() && (spec().hold().isPresent() || spec().pickUp().isPresent()));
  }

  /** The part as written; coils belong to relays and contactors alone. */
  Optional<Part.Relay> part() {
    return study.circuit().netlist().parts().get(relay()) instanceof Part.Relay relay
        ? Optional.of(relay)
        : Optional.empty();
  }

  /** The way the current takes in a state; empty if the coil shall be off in it. */
  Optional<Path> wayIn(State state) {
    return waysIn(state).findFirst();
  }

  /** Every way that is closed in a state. */
  Stream<Path> waysIn(State state) {
    return ways.stream().filter(way -> conducts(way, state));
  }

  /** True if the coil shall be on in this state. */
  boolean isFed(State state) {
    return wayIn(state).isPresent();
  }

  /** True if the coil shall be on in this state, or is on whether it shall or not. */
  boolean isEnergised(State state) {
    // a coil whose current is unknown takes whatever a leak lets through: that proves nothing
    return isFed(state) || (isCurrentKnown() && study.coil(relay(), state).pulledIn());
  }

  /** A way round through a supply that is itself switched off feeds nothing. */
  private boolean conducts(Path way, State state) {
    return isClosed(way, state)
        && sourcesOf(way).stream().allMatch(source -> study.isLive(source, state));
  }

  private boolean isClosed(Path way, State state) {
    return way.branches().stream()
        .allMatch(b -> !(b instanceof Contact c) || study.contact(c, state).closed());
  }

  /** Supplies that are switched off whenever the contacts of a way through them are closed. */
  List<String> deadSupplies() {
    return ways.stream()
        .filter(way -> states().stream().anyMatch(state -> isClosed(way, state)))
        .filter(way -> states().stream().noneMatch(state -> conducts(way, state)))
        .flatMap(way -> sourcesOf(way).stream())
        .map(Source::part)
        .distinct()
        .toList();
  }

  /** The states to look at for this coil. */
  List<State> states() {
    return study.statesToLookAtFor(relay());
  }

  /** States in which the coil shall be on, the moments in which it pulls in by itself included. */
  List<State> fedStates() {
    return Stream.concat(
            states().stream().filter(this::isFed), economyStates().stream().map(this::before))
        .toList();
  }

  /**
   * States in which the armature is in although its own contact has since opened the way by which
   * it pulled in: an economy circuit, which holds on less than it pulls in with.
   */
  List<State> economyStates() {
    return ways.stream().noneMatch(way -> way.branches().stream().anyMatch(this::opensAsItPullsIn))
        ? List.of()
        : states().stream()
            .filter(state -> state.isIn(relay()) && !isFed(state) && isFed(before(state)))
            .toList();
  }

  /** True for a contact of its own that opens as it pulls in. */
  boolean opensAsItPullsIn(Branch branch) {
    return branch instanceof Contact contact
        && contact.form() == Part.ContactForm.NC
        && contact.actuator().kind() == Actuator.Kind.COIL
        && contact.actuator().name().equals(relay());
  }

  /** The moment before a state in which the armature is still out. */
  private State before(State state) {
    Map<String, Boolean> armatures = new LinkedHashMap<>(state.pulledIn());
    armatures.put(relay(), false);
    return new State(state.positions(), armatures);
  }

  /**
   * States in which the coil shall be on and its supply holds its voltage; where it never does, all
   * in which the coil shall be on.
   */
  List<State> soundStates() {
    List<State> sound = fedStates().stream().filter(this::isSound).toList();
    return sound.isEmpty() ? fedStates() : sound;
  }

  /** True if the supply folds back whenever the coil shall be on: then that is what is wrong. */
  boolean supplyFolds() {
    return fedStates().stream().noneMatch(this::isSound);
  }

  /** True if the supply holds its voltage in this state, worst case included. */
  boolean isSound(State state) {
    CoilReading reading = study.coil(relay(), state);
    return wayIn(state).stream()
        .flatMap(way -> sourcesOf(way).stream())
        .filter(Source::isDirect)
        .flatMap(source -> source.volts().stream())
        .noneMatch(volts -> Comparison.fallsShort(reading.sourceVolts(), volts.low()));
  }

  /**
   * States in which contacts keep the coil off. Those in which they do not and its supply is itself
   * switched off are neither idle nor fed: nothing is to be asked of the coil in them.
   */
  List<State> idleStates() {
    List<State> economy = economyStates();
    return states().stream()
        .filter(state -> !economy.contains(state))
        .filter(state -> ways.stream().noneMatch(way -> isClosed(way, state)))
        .toList();
  }

  /** Sources on any way. */
  List<Source> sources() {
    return ways.stream().flatMap(way -> sourcesOf(way).stream()).distinct().toList();
  }

  static List<Source> sourcesOf(Path way) {
    return way.branches().stream()
        .filter(Source.class::isInstance)
        .map(Source.class::cast)
        .toList();
  }

  /** Contacts that switch this coil, protective devices left out. */
  List<Contact> switches() {
    return ways.stream()
        .flatMap(way -> way.branches().stream())
        .filter(Contact.class::isInstance)
        .map(Contact.class::cast)
        .filter(c -> c.actuator().kind() != Actuator.Kind.PROTECTIVE)
        .distinct()
        .toList();
  }

  /** True if one of its own contacts keeps it in once it is in: start and stop by buttons. */
  boolean holdsItself() {
    return switches().stream()
        .filter(c -> c.form() == Part.ContactForm.NO)
        .anyMatch(
            c -> c.actuator().kind() == Actuator.Kind.COIL && c.actuator().name().equals(relay()));
  }

  /** Where the operative range is written, or the rated voltage where it is not. */
  Mark rangeMark() {
    return spec().range().map(Written::mark).orElse(spec().voltage().mark());
  }
}
