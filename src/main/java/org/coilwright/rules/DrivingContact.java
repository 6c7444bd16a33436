package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.CoilReading;
import org.coilwright.solve.ContactReading;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/**
 * A contact that switches coils: an output, another relay's contact, a switch, a thermostat. Fuses
 * and breakers are left out, they do not switch in use.
 *
 * @param coils the coils on whose way it lies
 * @param alsoLoads true if a load hangs on it as well; then only the coils' own current counts here
 */
record DrivingContact(Study study, Contact contact, List<CoilFeed> coils, boolean alsoLoads) {

  /** Every such contact, in the order of the coils that they switch. */
  static List<DrivingContact> all(Study study) {
    return study.derived(All.class, s -> new All(workedOut(s))).contacts();
  }

  /** The driving contacts of a study, worked out once for the rules that ask. */
  private record All(List<DrivingContact> contacts) {}

  private static List<DrivingContact> workedOut(Study study) {
    Map<Contact, List<CoilFeed>> coils = new LinkedHashMap<>();
    for (CoilFeed feed : CoilFeed.all(study)) {
      for (Contact contact : feed.switches()) {
        coils.computeIfAbsent(contact, c -> new ArrayList<>()).add(feed);
      }
    }
    Set<Branch> beforeLoads = study.circuit().inevitableBefore(Loads.names(study.circuit()));
    // main poles are for loads, and what a load draws through one is for the contactor rules
    return coils.entrySet().stream()
        .map(
            e ->
                new DrivingContact(
                    study,
                    e.getKey(),
                    List.copyOf(e.getValue()),
                    e.getKey().pole() || beforeLoads.contains(e.getKey())))
        .toList();
  }

  String name() {
    return contact.id();
  }

  String coilNames() {
    return coils.stream().map(CoilFeed::relay).collect(Collectors.joining(" and "));
  }

  /** Designations for an outcome: the contact, then its coils. */
  List<String> at() {
    List<String> at = new ArrayList<>(List.of(name()));
    coils.forEach(feed -> at.add(feed.relay()));
    return List.copyOf(at);
  }

  List<Source> sources() {
    return coils.stream().flatMap(feed -> feed.sources().stream()).distinct().toList();
  }

  /** True if what it switches is direct current. */
  boolean isDirect() {
    return sources().stream().allMatch(Source::isDirect);
  }

  /** What its ratings say of the kind of current that it switches. */
  RatedKind ratedKind() {
    return RatedKind.in(sheet().ratings(), isDirect());
  }

  /** The first thing without which its current cannot be known. */
  Optional<Gap> currentUnknown() {
    return coils.stream().flatMap(feed -> Gap.ofCurrent(feed).stream()).findFirst();
  }

  /** The source whose voltage is not written. */
  Optional<Gap> voltageUnknown() {
    return coils.stream().flatMap(feed -> Gap.ofVoltage(feed).stream()).findFirst();
  }

  private List<State> states() {
    return study.statesToLookAtFor(contact.part());
  }

  /** States in which it is closed and a coil behind it shall be on. */
  List<State> closedStates() {
    return states().stream()
        .filter(s -> study.contact(contact, s).closed())
        .filter(s -> coils.stream().anyMatch(feed -> drives(feed, s)))
        .toList();
  }

  private boolean drives(CoilFeed feed, State state) {
    return feed.waysIn(state).anyMatch(way -> way.branches().contains(contact));
  }

  /** Current it carries while it is closed, everything nominal; most of all states. */
  double amps() {
    return closedStates().stream().mapToDouble(s -> amps(s, false)).max().orElse(0);
  }

  /**
   * What its coils draw through it, least of all states in which their supply holds its voltage;
   * lamps beside them do not count.
   */
  double leastAmps() {
    List<State> sound = soundStates();
    return (sound.isEmpty() ? closedStates() : sound)
        .stream().mapToDouble(s -> coilAmps(s, false)).min().orElse(0);
  }

  private List<State> soundStates() {
    return closedStates().stream()
        .filter(s -> coils.stream().allMatch(feed -> feed.isSound(s)))
        .toList();
  }

  /** True if the supply folds back whenever the contact is closed on a coil. */
  boolean supplyFolds() {
    return soundStates().isEmpty();
  }

  /** Current it makes, everything nominal; most of all states. */
  double makeAmps() {
    return closedStates().stream().mapToDouble(s -> amps(s, true)).max().orElse(0);
  }

  /**
   * Beside another closed contact it carries a part only, but it has to be able to carry all that
   * its coils draw: the other one may open first.
   */
  private double amps(State state, boolean making) {
    double sum = coilAmps(state, making);
    if (alsoLoads) {
      return sum;
    }
    ContactReading reading = study.contact(contact, state);
    return Math.max(sum, making ? reading.makeAmps() : reading.amps());
  }

  private double coilAmps(State state, boolean making) {
    return coils.stream()
        .filter(feed -> drives(feed, state))
        .map(feed -> study.coil(feed.relay(), state))
        .mapToDouble(reading -> Math.abs(making ? reading.pickUpAmps() : reading.amps()))
        .sum();
  }

  /** How much more than nominal flows at worst: supply high, and coil resistance low if known. */
  double worstFactor() {
    double most = 1;
    for (CoilFeed feed : coils) {
      for (State state : closedStates()) {
        CoilReading reading = study.coil(feed.relay(), state);
        if (reading.volts() != 0) {
          double ohms =
              feed.spec()
                  .resistance()
                  .map(Written::value)
                  .filter(r -> r.low() > 0)
                  .map(r -> r.nominal() / r.low())
                  .orElse(1.0);
          most = Math.max(most, reading.highest() / Math.abs(reading.volts()) * ohms);
        }
      }
    }
    return most;
  }

  /**
   * Voltage it switches, nominal: that of the source on the way to its coils; between two lines,
   * what is across it or its coils.
   */
  double volts() {
    List<Source> sources = sources();
    if (sources.size() == 1) {
      return sources.get(0).volts().map(Quantity::nominal).orElse(0.0);
    }
    double most = 0;
    for (State state : states()) {
      ContactReading reading = study.contact(contact, state);
      most = Math.max(most, reading.closed() ? 0 : reading.volts() / SourceVolts.rise(sources));
    }
    for (CoilFeed feed : coils) {
      for (State state : closedStates()) {
        most = Math.max(most, Math.abs(study.coil(feed.relay(), state).volts()));
      }
    }
    return most;
  }

  /**
   * What a rated voltage may be exceeded by because networks are named in round figures: the 230 V
   * of a 230/400 V network are 400 V divided by the square root of three. 1 elsewhere.
   */
  double roundName(Tables tables) {
    boolean threePhase =
        !isDirect()
            && study
                .circuit()
                .netlist()
                .site()
                .mains()
                .filter(mains -> mains.phases().value() == Site.Phases.THREE)
                .isPresent();
    return threePhase ? tables.figure("drive.round-name").value() : 1;
  }

  /** What its data sheet says. */
  ContactSheet sheet() {
    return new ContactSheet(study.circuit().netlist(), contact);
  }
}
