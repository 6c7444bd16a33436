package org.coilwright.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.quantity.Printed;
import org.coilwright.solve.CoilLimits;
import org.coilwright.solve.CoilReading;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.solve.Trouble;

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
    for (State state : study.states()) {
      for (String relay : relays()) {
        halfPulled(relay, state)
            .ifPresent(sentence -> add(odd, "half-pulled", sentence, state.positions()));
      }
    }
    return List.copyOf(odd.values());
  }

  private static void add(
      Map<String, Oddity> odd, String kind, String sentence, Map<String, Boolean> positions) {
    odd.computeIfAbsent(sentence, s -> new Oddity(kind, s, new ArrayList<>()))
        .positions()
        .add(positions);
  }

  /** What to say about a coil whose voltage may lie between letting go and pulling in. */
  Optional<String> halfPulled(String relay, State state) {
    Optional<CoilLimits> limits = study.limits(relay);
    CoilReading reading = study.coil(relay, state);
    if (limits.isEmpty()) {
      return Optional.empty();
    }
    double release = limits.get().release().value();
    double operate = limits.get().operate().value();
    double low = Math.abs(reading.lowest());
    double high = Math.abs(reading.highest());
    boolean between = Math.max(low, high) > release && Math.min(low, high) < operate;
    if (!between) {
      return Optional.empty();
    }
    String least = Printed.volts(Math.min(low, high));
    String most = Printed.volts(Math.max(low, high));
    return Optional.of(
        "%s may hang in between: its coil gets %s; it surely pulls in from %s and surely lets go below %s."
            .formatted(
                relay,
                least.equals(most) ? least : least + " to " + most,
                Printed.volts(operate),
                Printed.volts(release)));
  }

  /**
   * Something odd.
   *
   * @param kind one word for programs
   * @param positions every set of contact positions it is seen in
   */
  record Oddity(String kind, String sentence, List<Map<String, Boolean>> positions) {
    /** True if it is seen in {@code state}. */
    boolean seenIn(State state) {
      return positions.stream()
          .anyMatch(seen -> state.positions().entrySet().containsAll(seen.entrySet()));
    }
  }
}
