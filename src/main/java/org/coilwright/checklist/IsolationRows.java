package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.checklist.Bands.Reasoned;
import org.coilwright.checklist.Expected.Seen;
import org.coilwright.checklist.Expected.State;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Quantity;

/** Making the circuit dead, and showing that it is. */
final class IsolationRows {
  private final Anatomy anatomy;
  private final Bands bands;

  IsolationRows(Anatomy anatomy, Bands bands) {
    this.anatomy = anatomy;
    this.bands = bands;
  }

  List<Row> rows() {
    Grounds order = bands.published("the order in which a circuit is made dead", "en-50110-1");
    List<Row> rows = new ArrayList<>();
    List<Part.Mains> mains = anatomy.parts(Part.Mains.class);
    for (Part.Mains incoming : mains) {
      rows.add(
          Row.dead(
              Names.of(incoming.name(), "locked-off"),
              "Lock off " + incoming.name(),
              "at the isolator that feeds " + incoming.name(),
              new Seen(State.LOCKED_OFF),
              "no work on the circuit until it can be locked off.",
              order));
    }
    if (Condition.BATTERY_PLANT.holds(anatomy)) {
      rows.add(
          Row.dead(
              Names.of("inverter", "locked-off"),
              "Lock off the inverter's supply of this circuit",
              "at the inverter's AC isolator",
              new Seen(State.LOCKED_OFF),
              "no work on the circuit until it can be locked off.",
              order));
    }
    rows.add(prove("before", order));
    for (Part.Mains incoming : mains) {
      double volts = anatomy.mains().map(Volts::toEarth).orElse(0.0);
      if (volts > 0) {
        Reasoned off = bands.off(volts, "V AC");
        rows.add(
            Row.dead(
                Names.of(incoming.name(), "proved-dead"),
                "Measure every pair at " + incoming.name(),
                "between each two of " + String.join(", ", incoming.pins()) + "; write the highest",
                off.band(),
                "find what feeds it; it is live.",
                off.grounds()));
      }
    }
    for (Branch.Source source : anatomy.directSources()) {
      double volts = source.volts().map(Quantity::nominal).orElse(0.0);
      if (volts > 0) {
        Reasoned off = bands.off(volts, "V DC");
        rows.add(
            Row.dead(
                Names.of(source.part(), "proved-dead"),
                "Measure the output of " + source.part(),
                "between " + source.to() + " and " + source.from(),
                off.band(),
                "find what feeds it; wait for its capacitors.",
                off.grounds()));
      }
    }
    rows.add(prove("after", order));
    return rows;
  }

  private static Row prove(String when, Grounds grounds) {
    return Row.dead(
        Names.of("voltage-tester", "proved", when),
        "Prove the voltage tester " + when,
        "on a known live source",
        new Seen(State.SHOWS_A_KNOWN_SOURCE),
        "take another tester and repeat every reading of this section.",
        grounds);
  }
}
