package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.checklist.Bands.Reasoned;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Node;
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
  private final DeadState state;

  InsulationRows(DeadTests tests) {
    this.anatomy = tests.anatomy();
    this.bands = tests.bands();
    this.readings = tests.readings();
    this.texts = tests.texts();
    this.state = tests.state();
  }

  List<Row> rows() {
    List<Row> rows = new ArrayList<>(mainsWiring());
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

  /**
   * Every conductor of the mains against earth: one reading with all contacts held in, and one for
   * whatever that does not reach.
   */
  private List<Row> mainsWiring() {
    List<Row> rows = new ArrayList<>();
    Set<Node> reached = new HashSet<>();
    for (Part.Mains mains : anatomy.parts(Part.Mains.class)) {
      List<String> pins =
          mains.pins().stream()
              .filter(pin -> !pin.equals(Anatomy.PE) && anatomy.wired(mains.name(), pin))
              .toList();
      if (!pins.isEmpty()) {
        List<Terminal> joined = pins(mains, pins);
        joined.forEach(pin -> reached.addAll(reach(pin)));
        rows.add(
            wiring(
                "mains-insulation",
                Names.of(mains.name(), "insulation"),
                joined,
                mains.name(),
                String.join(", ", pins)));
      }
    }
    for (Branch.Conductor wire : anatomy.circuit().branches(Branch.Conductor.class)) {
      Terminal pin = wire.wire().from().value();
      boolean mains =
          anatomy.onMains(wire.from()) && !anatomy.carries(wire.from()).equals(Anatomy.PE);
      if (mains && !rows.isEmpty() && !reached.contains(wire.from())) {
        reached.addAll(reach(pin));
        String name = Names.of(Names.wire(wire.wire()), "insulation");
        rows.add(wiring("rest-insulation", name, List.of(pin), pin));
      }
    }
    return rows;
  }

  /** What a test voltage at a pin reaches, everything that can be held in held in. */
  private Set<Node> reach(Terminal pin) {
    Map<String, Boolean> held = state.heldIn();
    return anatomy
        .circuit()
        .find(pin)
        .map(node -> anatomy.circuit().reach(node, branch -> conducts(branch, held)))
        .orElse(Set.of());
  }

  private static boolean conducts(Branch branch, Map<String, Boolean> held) {
    if (branch instanceof Branch.Contact contact) {
      boolean rest = contact.actuator().atRest(contact.form() == Part.ContactForm.NC);
      return contact.conductsWhen(held.getOrDefault(contact.actuator().name(), rest));
    }
    return branch instanceof Branch.Conductor
        || branch instanceof Branch.Coil
        || branch instanceof Branch.LoadElement;
  }

  private Row wiring(String kind, String name, List<Terminal> joined, Object... arguments) {
    Reasoned expected =
        bands.atLeast(
            "checklist.insulation-ohms-mains", MEGOHM, "MΩ", texts.of("how.insulation-mains"));
    Row row = Row.of(texts, kind, name, expected.band(), expected.grounds(), arguments);
    return toEarth(row, "checklist.insulation-volts-mains", joined);
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

  private Row against(Row row, String testVolts, List<Terminal> joined, List<Terminal> other) {
    Probing probing =
        state
            .still(
                new Probing(
                    Probing.Method.INSULATION,
                    joined,
                    other,
                    Set.of(),
                    electronics(),
                    Map.of(),
                    false))
            .operating(state.heldIn());
    return readings.reading(row.when(at(testVolts)), probing);
  }

  /** What the test voltage would destroy. */
  private Set<String> electronics() {
    return anatomy.netlist().parts().values().stream()
        .filter(p -> p instanceof Part.Controller || p instanceof Part.DcSupply)
        .map(Part::name)
        .collect(Collectors.toSet());
  }

  private String at(String name) {
    return texts.of(
        "when.test-voltage",
        texts.figure(Printed.given(bands.figure(name).value(), Dimension.VOLTAGE)));
  }
}
