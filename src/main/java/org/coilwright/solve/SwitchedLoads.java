package org.coilwright.solve;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Words;

/**
 * The loads that an output switches, however many relays lie between.
 *
 * @param loads in the order of the netlist
 * @param watts most they take together at nominal figures; what wires cost a load is left out
 */
public record SwitchedLoads(List<Part> loads, double watts) {
  /** A load that takes less than twice as much with the output closed does not hang on it. */
  private static final double AT_LEAST = 2;

  /** Wires that are not far too thin leave a load this share of its rated power. */
  private static final double LOST_IN_WIRES = 0.9;

  /** What hangs on an output such as {@code U1.heat}. */
  public static SwitchedLoads of(Study study, String output) {
    List<Part> loads =
        study.circuit().netlist().parts().values().stream()
            .filter(p -> p instanceof Part.Heater || p instanceof Part.OtherLoad)
            .filter(p -> hangs(study, p.name(), output))
            .toList();
    double watts =
        study.states().stream()
            .filter(s -> s.isOperated(output))
            .mapToDouble(s -> loads.stream().mapToDouble(p -> watts(study, p, s)).sum())
            .max()
            .orElse(0);
    return new SwitchedLoads(loads, watts);
  }

  /** The rated power where the load gets about its rated voltage; otherwise what it then takes. */
  private static double watts(Study study, Part load, State state) {
    double reads = study.load(load.name(), state).watts();
    Optional<Written<Quantity>> power =
        load instanceof Part.Heater heater ? heater.power() : ((Part.OtherLoad) load).power();
    double rated =
        power
            .map(Written::value)
            .filter(q -> q.dimension() == Dimension.POWER)
            .map(Quantity::nominal)
            .orElse(reads);
    return reads > LOST_IN_WIRES * rated && reads <= rated ? rated : reads;
  }

  /**
   * The relays and contactors that an output, or a thermostat, can move by itself, in the order of
   * the netlist.
   */
  public static List<Part.Relay> relaysOf(Study study, String output) {
    return study.circuit().netlist().parts().values().stream()
        .filter(Part.Relay.class::isInstance)
        .map(Part.Relay.class::cast)
        .filter(r -> isMoved(study, r.name(), output))
        .toList();
  }

  /** True if nothing but the output changes, and the armature does as well. */
  private static boolean isMoved(Study study, String relay, String output) {
    Map<Map<String, Boolean>, Boolean> seen = new HashMap<>();
    for (State state : study.states()) {
      Map<String, Boolean> others = new HashMap<>(state.positions());
      others.remove(output);
      Boolean before = seen.putIfAbsent(others, state.isIn(relay));
      if (before != null && before != state.isIn(relay)) {
        return true;
      }
    }
    return false;
  }

  private static boolean hangs(Study study, String load, String output) {
    return most(study, load, output, true) > AT_LEAST * most(study, load, output, false);
  }

  private static double most(Study study, String load, String output, boolean closed) {
    return study.statesFor(load).stream()
        .filter(s -> s.isOperated(output) == closed)
        .mapToDouble(s -> study.load(load, s).watts())
        .max()
        .orElse(0);
  }

  /**
   * The first of them whose power from the mains cannot be known, as a key: {@code power of E1}.
   */
  public Optional<String> unknownPower() {
    return loads.stream()
        .flatMap(
            load -> {
              if (load instanceof Part.Heater h) {
                return missing(h.power().isPresent(), h.voltage().isPresent(), load.name());
              }
              Part.OtherLoad other = (Part.OtherLoad) load;
              if (other.isByShaft()) {
                return Stream.of("current of " + load.name());
              }
              boolean power = other.power().isPresent() || other.current().isPresent();
              return missing(power, other.voltage().isPresent(), load.name());
            })
        .findFirst();
  }

  private static Stream<String> missing(boolean power, boolean voltage, String load) {
    return Stream.of(power ? "" : "power of " + load, voltage ? "" : "voltage of " + load)
        .filter(key -> !key.isEmpty());
  }

  /** Their designations, as a sentence has them. */
  public String names() {
    return Words.all(loads.stream().map(Part::name).toList());
  }
}
