package org.coilwright.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.quantity.Printed;
import org.coilwright.solve.CoilReading;
import org.coilwright.solve.State;
import org.coilwright.solve.StateTable;
import org.coilwright.solve.Study;
import org.coilwright.solve.Trouble;
import org.coilwright.solve.TurnOff;

/** What the switching table says, before it is laid out as text or JSON. */
final class StatesView {
  private final Study study;
  private final Map<String, Actuator> actuators = new LinkedHashMap<>();

  StatesView(Study study) {
    this.study = study;
    study.circuit().independentActuators().forEach(a -> actuators.put(a.name(), a));
  }

  Study study() {
    return study;
  }

  /** Designations of relays and contactors, in the order of the netlist. */
  List<String> relays() {
    return study.circuit().branches(Branch.Coil.class).stream()
        .map(Branch.Coil::part)
        .distinct()
        .toList();
  }

  /** Designations of loads, in the order of the netlist. */
  List<String> loads() {
    return study.circuit().branches(Branch.LoadElement.class).stream()
        .map(Branch.LoadElement::part)
        .distinct()
        .toList();
  }

  /**
   * One table for each circuit that switches something or in which something is odd; the whole
   * circuit is one where all of it acts on one another.
   */
  List<StateTable> tables() {
    List<Oddity> odd = oddities();
    List<StateTable> telling =
        study.tables().stream()
            .filter(
                t ->
                    !t.relays().isEmpty()
                        || !t.loads().isEmpty()
                        || odd.stream().anyMatch(o -> o.isOf(t)))
            .toList();
    return telling.isEmpty() ? study.tables() : telling;
  }

  /**
   * {@code open} or {@code closed}; {@code operated} or {@code at rest} where one actuator moves
   * both kinds of contact.
   */
  String position(String column, State state) {
    boolean operated = state.positions().getOrDefault(column, false);
    Actuator actuator = actuators.get(column);
    List<Branch.Contact> contacts =
        actuator == null ? List.of() : study.circuit().contactsOf(actuator);
    long closed = contacts.stream().filter(c -> study.contact(c, state).closed()).count();
    if (contacts.isEmpty() || (closed > 0 && closed < contacts.size())) {
      return operated ? "operated" : "at rest";
    }
    return closed > 0 ? "closed" : "open";
  }

  /**
   * Everything odd, each with the positions it is seen in, worst kind first as the study has it.
   */
  List<Oddity> oddities() {
    Map<String, Oddity> odd = new LinkedHashMap<>();
    for (Trouble trouble : study.troubles()) {
      add(odd, TroubleText.kind(trouble), TroubleText.of(trouble), trouble.positions());
    }
    for (String relay : relays()) {
      hanging(relay).ifPresent(oddity -> odd.put(oddity.sentence(), oddity));
    }
    return List.copyOf(odd.values());
  }

  private static void add(
      Map<String, Oddity> odd, String kind, String sentence, Map<String, Boolean> positions) {
    odd.computeIfAbsent(sentence, s -> new Oddity(kind, s, new ArrayList<>()))
        .positions()
        .add(positions);
  }

  /** One note for a coil that hangs in between, however many states it does so in. */
  private Optional<Oddity> hanging(String relay) {
    List<Range> ranges = new ArrayList<>();
    List<Map<String, Boolean>> positions = new ArrayList<>();
    List<String> columns =
        study.tables().stream()
            .filter(t -> t.relays().contains(relay))
            .flatMap(t -> t.columns().stream())
            .toList();
    for (State state : study.statesToLookAtFor(relay)) {
      between(relay, state)
          .ifPresent(
              range -> {
                ranges.add(range);
                positions.add(own(state, columns));
              });
    }
    return study
        .limits(relay)
        .filter(limits -> !ranges.isEmpty())
        .map(
            limits ->
                new Oddity(
                    "half-pulled",
                    "%s may hang in between: its coil gets %s; it surely pulls in from %s and surely lets go below %s."
                        .formatted(
                            relay,
                            Range.united(ranges).stream()
                                .map(Range::inWords)
                                .collect(Collectors.joining(" or ")),
                            Printed.volts(limits.operate().value()),
                            Printed.volts(limits.release().value())),
                    positions));
  }

  /** Positions of some contacts alone; of all if there are none. */
  private static Map<String, Boolean> own(State state, List<String> columns) {
    Map<String, Boolean> own = new LinkedHashMap<>();
    columns.forEach(c -> own.put(c, state.isOperated(c)));
    return own.isEmpty() ? state.positions() : own;
  }

  /** True if a coil's voltage may lie between letting go and pulling in. */
  boolean isHalfPulled(String relay, State state) {
    return between(relay, state).isPresent();
  }

  private Optional<Range> between(String relay, State state) {
    CoilReading reading = study.coil(relay, state);
    double low = Math.abs(reading.lowest());
    double high = Math.abs(reading.highest());
    Range range = new Range(Math.min(low, high), Math.max(low, high));
    return study
        .limits(relay)
        .filter(l -> range.high() > l.release().value() && range.low() < l.operate().value())
        .map(l -> range);
  }

  /** Volts from the lowest to the highest. */
  private record Range(double low, double high) {
    /** Ranges with less of a gap than this, relative, are told as one. */
    private static final double NEAR = 0.1;

    String inWords() {
      String least = Printed.volts(low);
      String most = Printed.volts(high);
      return least.equals(most) ? least : least + " to " + most;
    }

    /** The same volts in as few ranges as can be, the lowest first. */
    static List<Range> united(List<Range> ranges) {
      List<Range> united = new ArrayList<>();
      for (Range range : ranges.stream().sorted(Comparator.comparingDouble(Range::low)).toList()) {
        Range last = united.isEmpty() ? range : united.get(united.size() - 1);
        boolean joins = !united.isEmpty() && range.low <= last.high * (1 + NEAR);
        if (joins) {
          united.set(united.size() - 1, new Range(last.low, Math.max(last.high, range.high)));
        } else {
          united.add(range);
        }
      }
      return united;
    }
  }

  /** What is known of how each direct-current coil is switched off, in the order of the netlist. */
  List<TurnOff> turnOffs() {
    return relays().stream().flatMap(relay -> study.turnOff(relay).stream()).toList();
  }

  /**
   * Something odd.
   *
   * @param kind one word for programs
   * @param positions every set of contact positions it is seen in
   */
  record Oddity(String kind, String sentence, List<Map<String, Boolean>> positions) {
    /** True if it is told by contacts of this table. */
    boolean isOf(StateTable table) {
      return positions.stream()
          .anyMatch(seen -> table.columns().stream().anyMatch(seen::containsKey));
    }

    /** True if it is seen in a state of a table; what contacts of others do makes no difference. */
    boolean seenIn(StateTable table, State state) {
      return positions.stream()
          .anyMatch(
              seen ->
                  seen.isEmpty()
                      || (table.columns().stream().anyMatch(seen::containsKey)
                          && table.columns().stream()
                              .allMatch(
                                  c ->
                                      seen.getOrDefault(c, state.isOperated(c))
                                          == state.isOperated(c))));
    }
  }
}
