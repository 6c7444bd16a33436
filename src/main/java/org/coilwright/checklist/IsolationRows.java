package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
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
  private final Texts texts;

  IsolationRows(Anatomy anatomy, Bands bands, Texts texts) {
    this.anatomy = anatomy;
    this.bands = bands;
    this.texts = texts;
  }

  List<Row> rows() {
    Grounds order = bands.published(texts.of("how.order-of-isolation"), "en-50110-1");
    List<Row> rows = new ArrayList<>();
    List<Part.Mains> mains = anatomy.parts(Part.Mains.class);
    for (Part.Mains incoming : mains) {
      String name = incoming.name();
      rows.add(row("lock-off", Names.of(name, "locked-off"), State.LOCKED_OFF, order, name));
    }
    List<Part.Source> sources = anatomy.parts(Part.Source.class);
    for (Part.Source source : sources) {
      String name = source.name();
      rows.add(row("lock-off", Names.of(name, "locked-off"), State.LOCKED_OFF, order, name));
    }
    if (sources.isEmpty() && Condition.BATTERY_PLANT.holds(anatomy)) {
      String name = Names.of("inverter", "locked-off");
      rows.add(row("lock-off-inverter", name, State.LOCKED_OFF, order));
    }
    if (Condition.ISLAND.holds(anatomy)) {
      String name = Names.of("backup-output", "locked-off");
      rows.add(row("lock-off-backup", name, State.LOCKED_OFF, order));
    }
    rows.add(row("hang-notice", Names.of("notice", "hung"), State.HUNG, order));
    rows.add(prove("before", order));
    for (Part incoming : Stream.concat(mains.stream(), sources.stream()).toList()) {
      double volts = anatomy.mains().map(Volts::toEarth).orElse(0.0);
      if (volts > 0) {
        Reasoned off = bands.off(volts, "V AC");
        rows.add(
            Row.of(
                texts,
                "dead-mains",
                Names.of(incoming.name(), "proved-dead"),
                off.band(),
                off.grounds(),
                incoming.name(),
                String.join(", ", incoming.pins())));
      }
    }
    for (Branch.Source source : anatomy.directSources()) {
      double volts = source.volts().map(Quantity::nominal).orElse(0.0);
      if (volts > 0) {
        Reasoned off = bands.off(volts, "V DC");
        rows.add(
            Row.of(
                texts,
                "dead-output",
                Names.of(source.part(), "proved-dead"),
                off.band(),
                off.grounds(),
                source.part(),
                source.to(),
                source.from()));
      }
    }
    rows.add(prove("after", order));
    rows.add(row("cover-neighbours", Names.of("live-parts", "covered"), State.COVERED, order));
    return rows;
  }

  private Row prove(String when, Grounds order) {
    String name = Names.of("voltage-tester", "proved", when);
    return row("prove-tester-" + when, name, State.SHOWS_A_KNOWN_SOURCE, order);
  }

  private Row row(String kind, String name, State state, Grounds grounds, Object... arguments) {
    Manner manner =
        switch (state) {
          case LOCKED_OFF -> Manner.SWITCHED;
          case HUNG, COVERED -> Manner.DONE;
          default -> Manner.SEEN;
        };
    return Row.of(texts, kind, name, new Seen(state), grounds, arguments).answered(manner);
  }
}
