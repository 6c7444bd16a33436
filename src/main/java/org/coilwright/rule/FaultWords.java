package org.coilwright.rule;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.coilwright.circuit.Actuator;
import org.coilwright.quantity.Printed;
import org.coilwright.solve.Crossing;
import org.coilwright.solve.Fault;
import org.coilwright.solve.FaultCase;
import org.coilwright.solve.FaultClass;
import org.coilwright.solve.LoadEffect;

/** What breaks, what happens then and what still stops it, in the words of a table. */
public final class FaultWords {
  /** More faults than this that behave alike are counted, not named. */
  private static final int NAMED = 4;

  private FaultWords() {}

  /** What breaks; faults that behave alike together. */
  public static String what(FaultClass alike) {
    List<String> names = alike.faults().stream().map(FaultWords::remarked).distinct().toList();
    if (names.size() <= NAMED + 1) {
      return String.join("; ", names);
    }
    return String.join("; ", names.subList(0, NAMED))
        + "; and %s more like these".formatted(names.size() - NAMED);
  }

  private static String remarked(Fault fault) {
    return fault.remark().isEmpty()
        ? fault.inWords()
        : "%s (%s)".formatted(fault.inWords(), fault.remark());
  }

  /** How bad it is: the heading over all that are as bad. */
  public static String title(FaultCase.Harm harm) {
    return switch (harm) {
      case CROSSES -> "Mains reaches the extra-low-voltage side";
      case STAYS_ON -> "A load stays on or starts, and nothing stops it by itself";
      case STAYS_ON_LIMITED -> "A load stays on or starts, until a thermostat or cut-out opens";
      case UNKNOWN -> "What follows was not computed";
      case SHORT_CIRCUIT -> "A short-circuit: the protective device has to open";
      case STAYS_LIVE -> "A load is off, but a line stays on it";
      case FAILS -> "A load does not work as it should";
      case HIDDEN -> "No load behaves differently, and nobody notices until something else breaks";
    };
  }

  /** What still stops it, for a table: {@code nothing} where mains crosses over. */
  public static String stoppedBy(FaultCase one) {
    if (one.harm() == FaultCase.Harm.CROSSES) {
      return "nothing";
    }
    String stops = stops(one);
    return stops.isEmpty() ? "–" : stops;
  }

  /** What follows. */
  public static String then(FaultCase one) {
    List<String> parts = new ArrayList<>();
    one.crossing().map(FaultWords::crossing).ifPresent(parts::add);
    one.shorted().forEach(s -> parts.add("%s is short-circuited".formatted(s)));
    List<LoadEffect> told = one.effects().stream().filter(e -> !isSaid(e, one.effects())).toList();
    boolean differ = told.stream().map(LoadEffect::positions).distinct().count() > 1;
    told.stream()
        .map(e -> effect(e) + (differ ? inPositions(e) : ""))
        .distinct()
        .forEach(parts::add);
    if (!one.explored()) {
      parts.add(
          "what the loads do was not computed: too many contacts act together, or which diodes"
              + " conduct cannot be settled");
    }
    return parts.isEmpty()
        ? "no load behaves differently, and nobody notices"
        : String.join("; ", parts);
  }

  /** In how many positions of the contacts it shows; nothing where it does in all. */
  private static String inPositions(LoadEffect e) {
    int shown = e.positions().size();
    long all = e.positions().stream().findFirst().map(p -> 1L << p.size()).orElse(0L);
    return shown == all ? "" : " (in %s of %s positions)".formatted(shown, all);
  }

  /** A load that cannot be turned off need not be said to start as well. */
  private static boolean isSaid(LoadEffect e, List<LoadEffect> all) {
    return e.effect() == LoadEffect.Effect.STARTS_BY_ITSELF
        && all.stream()
            .anyMatch(o -> o.effect() == LoadEffect.Effect.STAYS_ON && o.load().equals(e.load()));
  }

  /** What alone still stops a load that stays on or starts; empty if none does. */
  public static String stops(FaultCase one) {
    List<LoadEffect> on =
        one.effects().stream()
            .filter(LoadEffect::isUnasked)
            .filter(e -> !isSaid(e, one.effects()))
            .toList();
    return on.stream().map(FaultWords::stops).distinct().collect(Collectors.joining("; "));
  }

  /** What alone still stops a load that stays on: {@code B1 (thermostat) or F1 (by hand)}. */
  public static String stops(LoadEffect on) {
    return on.stoppedBy().isEmpty()
        ? "nothing"
        : on.stoppedBy().stream().map(FaultWords::named).collect(Collectors.joining(" or "));
  }

  /** What reaches which pins. */
  public static String crossing(Crossing crossing) {
    String pins = String.join(", ", crossing.pins());
    return crossing.volts() > 0
        ? "%s of mains reaches %s".formatted(Printed.volts(crossing.volts()), pins)
        : "the neutral of the mains reaches %s".formatted(pins);
  }

  private static String effect(LoadEffect e) {
    String load = e.load();
    return switch (e.effect()) {
      case STAYS_ON ->
          load
              + (e.onlyHolds()
                  ? " may stay on when it should go off"
                  : " is on when it should be off");
      case STARTS_BY_ITSELF -> load + " starts by itself, with nobody asking for it";
      case STRONGER -> load + " takes more than it should";
      case UNSETTLED -> load + " goes on and off by itself";
      case STAYS_LIVE -> load + " is off, but a line stays on it";
      case WEAKER -> load + " takes less than it should";
      case STAYS_OFF -> load + " stays off";
      case LETS_GO -> load + " no longer holds: it goes off when it should stay on";
    };
  }

  private static String named(Actuator a) {
    return switch (a.kind()) {
      case THERMOSTAT -> a.name() + " (thermostat)";
      case CUT_OUT -> a.name() + " (cut-out)";
      case PROTECTIVE -> a.name() + " (by hand)";
      case OUTPUT, SWITCH, COIL -> a.name();
    };
  }
}
