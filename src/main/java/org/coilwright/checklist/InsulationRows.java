package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.checklist.Bands.Reasoned;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.solve.Probing;

/** Insulation resistance: loads and mains wiring to earth, the control side to both. */
final class InsulationRows {
  private static final double MEGOHM = 1e6;

  private final Anatomy anatomy;
  private final Bands bands;
  private final DeadReadings readings;
  private final Texts texts;

  InsulationRows(DeadTests tests) {
    this.anatomy = tests.anatomy();
    this.bands = tests.bands();
    this.readings = tests.readings();
    this.texts = tests.texts();
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
    return toEarth(
        Row.of(
            texts,
            "load-insulation",
            Names.of(load.name(), "insulation"),
            expected.band(),
            expected.grounds(),
            load.name(),
            String.join(", ", anatomy.livePins(load))),
        "checklist.insulation-volts-mains",
        pins(load, anatomy.livePins(load)));
  }

  private Row mainsCoil(Part.Relay relay) {
    Reasoned expected = mains();
    return toEarth(
        Row.of(
            texts,
            "coil-insulation",
            Names.of(relay.name(), "coil-insulation"),
            expected.band(),
            expected.grounds(),
            relay.name(),
            relay.coil().first(),
            relay.coil().second()),
        "checklist.insulation-volts-mains",
        pins(relay, List.of(relay.coil().first(), relay.coil().second())));
  }

  /** Coil side against contact side of a relay that stands between the two. */
  private Optional<Row> between(Part.Relay relay) {
    List<String> onMains =
        relay.contacts().stream()
            .flatMap(c -> Stream.of(c.from(), c.to()))
            .distinct()
            .filter(p -> anatomy.node(relay.name(), p).filter(anatomy::onMains).isPresent())
            .toList();
    if (!anatomy.elvCoil(relay) || onMains.isEmpty()) {
      return Optional.empty();
    }
    Reasoned expected =
        bands.atLeast(
            "checklist.insulation-ohms-between", MEGOHM, "MΩ", texts.of("how.insulation-between"));
    return Optional.of(
        against(
            Row.of(
                texts,
                "separation",
                Names.of(relay.name(), "separation"),
                expected.band(),
                expected.grounds(),
                relay.name(),
                relay.coil().first(),
                relay.coil().second(),
                String.join(", ", onMains)),
            "checklist.insulation-volts-mains",
            pins(relay, List.of(relay.coil().first(), relay.coil().second())),
            pins(relay, onMains)));
  }

  private Row controlToEarth(Branch.Source source) {
    Reasoned expected =
        bands.atLeast(
            "checklist.insulation-ohms-elv", MEGOHM, "MΩ", texts.of("how.insulation-elv"));
    return toEarth(
        Row.of(
            texts,
            "control-insulation",
            Names.of(source.part(), "control-insulation"),
            expected.band(),
            expected.grounds(),
            source.part(),
            source.to(),
            source.from()),
        "checklist.insulation-volts-elv",
        Stream.of(source.to(), source.from())
            .flatMap(n -> n.terminals().stream().limit(1))
            .toList());
  }

  private static List<Terminal> pins(Part part, List<String> pins) {
    return pins.stream().map(pin -> new Terminal(part.name(), pin)).toList();
  }

  private Row toEarth(Row row, String testVolts, List<Terminal> joined) {
    List<Terminal> earth =
        anatomy.parts(Part.Mains.class).stream()
            .map(mains -> new Terminal(mains.name(), "PE"))
            .limit(1)
            .toList();
    return earth.isEmpty() ? row.when(at(testVolts)) : against(row, testVolts, joined, earth);
  }

  /** With the neutral off where it would bring the bond of the supply into the reading. */
  private Row against(Row row, String testVolts, List<Terminal> joined, List<Terminal> other) {
    Set<String> apart =
        anatomy.netlist().parts().values().stream()
            .filter(p -> p instanceof Part.Controller || p instanceof Part.DcSupply)
            .map(Part::name)
            .collect(Collectors.toSet());
    Probing probing =
        new Probing(Probing.Method.INSULATION, joined, other, Set.of(), apart, Map.of(), false);
    Row plain = readings.reading(row.when(at(testVolts)), probing);
    Set<Terminal> neutrals =
        anatomy.parts(Part.Mains.class).stream()
            .filter(mains -> mains.pins().contains("N"))
            .map(mains -> new Terminal(mains.name(), "N"))
            .collect(Collectors.toSet());
    if (plain.probing().isPresent() || neutrals.isEmpty()) {
      return plain;
    }
    Row lifted = readings.reading(row, probing.lifting(neutrals));
    return lifted.probing().isPresent()
        ? lifted.when(
            at(testVolts)
                + " "
                + texts.of(
                    "when.lifted",
                    neutrals.stream()
                        .map(Terminal::toString)
                        .sorted()
                        .collect(Collectors.joining(", "))))
        : plain;
  }

  private Reasoned mains() {
    return bands.atLeast(
        "checklist.insulation-ohms-mains", MEGOHM, "MΩ", texts.of("how.insulation-mains"));
  }

  private String at(String name) {
    return texts.of(
        "when.test-voltage",
        texts.figure(Printed.given(bands.figure(name).value(), Dimension.VOLTAGE)));
  }
}
