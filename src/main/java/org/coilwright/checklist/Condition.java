package org.coilwright.checklist;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Switching;

/** When a caution applies: the closed list of words that its front matter may use. */
enum Condition {
  ALWAYS,
  /** The mains is part of the circuit. */
  MAINS,
  /** A direct-voltage control circuit is part of it. */
  ELV,
  ELV_AND_MAINS,
  /**
   * A plant may make voltage here without the mains: one is described, or a controller acts, which
   * mostly follows one.
   */
  BATTERY_PLANT,
  /** A battery is described. */
  BATTERY,
  /** A source beside the mains is drawn, or one feeds the circuit alone. */
  SOURCE,
  /** A source feeds the circuit while the mains are off, or nobody says that none does. */
  ISLAND,
  /** More than one source, or a plant beside the mains. */
  SEVERAL_SUPPLIES,
  /** A device with its own mains input, a supply unit or a snubber: all keep a charge. */
  STORED_CHARGE,
  /** A controller's output starts the load. */
  OUTPUT,
  /** Controllers, supply units, diodes or varistors. */
  ELECTRONICS,
  /** The neutral is wired. */
  NEUTRAL,
  ONE_PHASE,
  SPLIT_PHASE,
  THREE_PHASE,
  RELAY,
  CONTACTOR,
  /** A coil on the mains. */
  AC_COIL,
  RCD,
  /** A load in a circuit that has relays. */
  SWITCHED_LOAD,
  /** A heater in water. */
  VESSEL,
  /** A vessel that is closed, or does not say that it is open. */
  CLOSED_VESSEL,
  IEC,
  NEC;

  boolean holds(Anatomy a) {
    return switch (this) {
      case ALWAYS -> true;
      case MAINS -> a.mains().isPresent();
      case ELV -> !a.directSources().isEmpty();
      case ELV_AND_MAINS -> MAINS.holds(a) && ELV.holds(a);
      case BATTERY_PLANT ->
          plant(a).isPresent() || OUTPUT.holds(a) || a.has(Part.Source.class, s -> true);
      case BATTERY ->
          plant(a).flatMap(Switching.Plant::battery).isPresent()
              || a.has(Part.Source.class, s -> !s.kind().value().equals("generator"));
      case SOURCE ->
          a.has(Part.Source.class, s -> true)
              || a.netlist().site().island().filter(Site.Island::exists).isPresent();
      case ISLAND ->
          MAINS.holds(a)
              && a.netlist().site().island().map(Site.Island::exists).orElse(OUTPUT.holds(a));
      case SEVERAL_SUPPLIES -> BATTERY_PLANT.holds(a) || ELV_AND_MAINS.holds(a);
      case STORED_CHARGE ->
          !a.inputs().isEmpty()
              || a.has(Part.DcSupply.class, p -> true)
              || a.has(Part.Snubber.class, p -> true);
      case OUTPUT -> a.has(Part.Controller.class, c -> !c.outputs().isEmpty());
      case ELECTRONICS ->
          OUTPUT.holds(a)
              || !a.inputs().isEmpty()
              || a.has(Part.DcSupply.class, p -> true)
              || a.has(Part.Diode.class, p -> true)
              || a.has(Part.Varistor.class, p -> true);
      case NEUTRAL -> a.has(Part.Mains.class, m -> a.wired(m.name(), "N"));
      case ONE_PHASE -> a.hasPhases(Site.Phases.ONE);
      case SPLIT_PHASE -> a.hasPhases(Site.Phases.SPLIT);
      case THREE_PHASE -> a.hasPhases(Site.Phases.THREE);
      case RELAY -> a.has(Part.Relay.class, r -> true);
      case CONTACTOR -> a.has(Part.Relay.class, Part.Relay::isContactor);
      case AC_COIL -> a.has(Part.Relay.class, a::mainsCoil);
      case RCD -> a.has(Part.Protective.class, Part.Protective::isRcd);
      case SWITCHED_LOAD -> RELAY.holds(a) && !a.loads().isEmpty();
      case VESSEL -> a.has(Part.Heater.class, h -> h.vessel().isPresent());
      case CLOSED_VESSEL ->
          a.has(
              Part.Heater.class,
              h ->
                  h.vessel().isPresent()
                      && h.vessel().get().closed().map(c -> c.value()).orElse(true));
      case IEC -> !a.isNec();
      case NEC -> a.isNec();
    };
  }

  private static Optional<Switching.Plant> plant(Anatomy a) {
    return a.netlist().switching().flatMap(Switching::plant);
  }

  /** Those that hold for a circuit. */
  static Set<Condition> of(Anatomy anatomy) {
    Set<Condition> holding = EnumSet.noneOf(Condition.class);
    Arrays.stream(values()).filter(c -> c.holds(anatomy)).forEach(holding::add);
    return holding;
  }
}
