package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.checklist.Bands.Reasoned;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;

/** Insulation resistance: loads and mains wiring to earth, the control side to both. */
final class InsulationRows {
  private static final double MEGOHM = 1e6;
  private static final String FAILS = "part the circuit until the weak piece is found; mend it.";

  private final Anatomy anatomy;
  private final Bands bands;

  InsulationRows(Anatomy anatomy, Bands bands) {
    this.anatomy = anatomy;
    this.bands = bands;
  }

  List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    anatomy.loads().forEach(load -> rows.add(load(load)));
    anatomy.parts(Part.Relay.class).stream()
        .filter(anatomy::mainsCoil)
        .forEach(relay -> rows.add(mainsCoil(relay)));
    for (Part.Relay relay : anatomy.parts(Part.Relay.class)) {
      between(relay).ifPresent(rows::add);
    }
    for (Branch.Source source : anatomy.directSources()) {
      if (anatomy.mains().isPresent() && !anatomy.onMains(source.to())) {
        rows.add(controlToEarth(source));
      }
    }
    return rows;
  }

  private Row load(Part load) {
    Reasoned expected = mains();
    return Row.dead(
            Names.of(load.name(), "insulation"),
            "Measure the insulation of " + load.name(),
            "between "
                + String.join(", ", anatomy.livePins(load))
                + " of "
                + load.name()
                + ", joined, and PE",
            expected.band(),
            "dry the element or replace it; damp ends are the usual cause.",
            expected.grounds())
        .when(at("checklist.insulation-volts-mains"));
  }

  private Row mainsCoil(Part.Relay relay) {
    Reasoned expected = mains();
    return Row.dead(
            Names.of(relay.name(), "coil-insulation"),
            "Measure the insulation of the coil wires of " + relay.name(),
            "between "
                + relay.name()
                + "."
                + relay.coil().first()
                + " and "
                + relay.coil().second()
                + ", joined, and PE",
            expected.band(),
            FAILS,
            expected.grounds())
        .when(at("checklist.insulation-volts-mains"));
  }

  /** Coil side against contact side of a relay that stands between the two. */
  private Optional<Row> between(Part.Relay relay) {
    List<String> onMains =
        relay.contacts().stream()
            .flatMap(c -> java.util.stream.Stream.of(c.from(), c.to()))
            .distinct()
            .filter(p -> anatomy.node(relay.name(), p).filter(anatomy::onMains).isPresent())
            .toList();
    if (!anatomy.elvCoil(relay) || onMains.isEmpty()) {
      return Optional.empty();
    }
    Reasoned expected =
        bands.atLeast(
            "checklist.insulation-ohms-between",
            MEGOHM,
            "MΩ",
            "control side against mains at the test voltage of the mains");
    return Optional.of(
        Row.dead(
                Names.of(relay.name(), "separation"),
                "Measure the separation at " + relay.name(),
                "between "
                    + relay.coil().first()
                    + " and "
                    + relay.coil().second()
                    + ", joined, and "
                    + String.join(", ", onMains)
                    + ", joined",
                expected.band(),
                "nothing is switched on; find where the two sides touch.",
                expected.grounds())
            .when(at("checklist.insulation-volts-mains")));
  }

  private Row controlToEarth(Branch.Source source) {
    Reasoned expected =
        bands.atLeast(
            "checklist.insulation-ohms-elv", MEGOHM, "MΩ", "extra-low voltage against earth");
    return Row.dead(
            Names.of(source.part(), "control-insulation"),
            "Measure the insulation of the control wires of " + source.part(),
            "between the wires lifted at "
                + source.to()
                + " and "
                + source.from()
                + ", joined, and PE",
            expected.band(),
            FAILS,
            expected.grounds())
        .when(at("checklist.insulation-volts-elv"));
  }

  private Reasoned mains() {
    return bands.atLeast(
        "checklist.insulation-ohms-mains", MEGOHM, "MΩ", "live conductors against earth");
  }

  private String at(String name) {
    return "Test voltage " + Printed.given(bands.figure(name).value(), Dimension.VOLTAGE) + " DC.";
  }
}
