// Over 250 lines: one kind of reading on a dead part after the other.
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
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.solve.Probing;

/** What an ohmmeter reads on parts that have not been on. */
final class ColdRows {
  private final Anatomy anatomy;
  private final Bands bands;
  private final DeadReadings readings;
  private final Texts texts;
  private final DeadState state;

  ColdRows(DeadTests tests) {
    this.anatomy = tests.anatomy();
    this.bands = tests.bands();
    this.readings = tests.readings();
    this.texts = tests.texts();
    this.state = tests.state();
  }

  /**
   * The protective conductor to each load that has a pin for one, off the load: as long as it is
   * on, vessel and pipes may be a second way to earth.
   */
  List<Row> protective() {
    return protective("protective-conductor", true);
  }

  /** The same once it is back on the load. */
  List<Row> protectiveAgain() {
    return protective("protective-conductor-back", false);
  }

  private List<Row> protective(String kind, boolean off) {
    List<Row> rows = new ArrayList<>();
    for (Part.Mains mains : anatomy.parts(Part.Mains.class)) {
      Optional<Node> origin = anatomy.node(mains.name(), Anatomy.PE);
      for (Part load : anatomy.loads()) {
        Optional<Node> end = anatomy.node(load.name(), Anatomy.PE);
        boolean here = off || anatomy.wired(load.name(), Anatomy.PE);
        if (origin.isPresent() && end.isPresent() && here) {
          Reasoned expected = path(origin.get(), end.get());
          Terminal from = new Terminal(mains.name(), Anatomy.PE);
          Terminal to = new Terminal(load.name(), Anatomy.PE);
          Probing on = state.still(Probing.ohms(from, to));
          Probing probing = off ? DeadState.without(on, Set.of(load.name())) : on;
          Row row =
              Row.of(
                  texts,
                  kind,
                  Names.of(load.name(), kind),
                  expected.band(),
                  expected.grounds(),
                  load.name(),
                  origin.get(),
                  end.get());
          rows.add(readings.reading(row, probing));
        }
      }
    }
    return rows;
  }

  private Reasoned path(Node from, Node to) {
    Optional<Reasoned> computed =
        anatomy
            .circuit()
            .path(from, to, b -> b instanceof Branch.Conductor)
            .flatMap(
                p -> bands.series(p.branches().stream().map(Branch.Conductor.class::cast).toList()))
            .map(
                r ->
                    new Reasoned(Expected.Band.atMost(r.band().max().orElse(0), "Ω"), r.grounds()));
    return computed.orElseGet(
        () ->
            Bands.reasoned(
                Expected.Band.atMost(bands.figure("checklist.protective-ohms").value(), "Ω"),
                texts.of("how.length-unknown"),
                bands.figure("checklist.protective-ohms")));
  }

  List<Row> coils() {
    List<Row> rows = new ArrayList<>();
    for (Part.Relay relay : anatomy.parts(Part.Relay.class)) {
      Optional<Reasoned> expected = bands.coil(relay.coil());
      Optional<Branch.Coil> coil = anatomy.coil(relay);
      if (expected.isPresent() && coil.isPresent()) {
        rows.add(coil(relay, expected.get()));
      }
    }
    return rows;
  }

  /** Wires are lifted only where something beside the coil could be read along with it. */
  private Row coil(Part.Relay relay, Reasoned expected) {
    Terminal plus = new Terminal(relay.name(), plus(relay));
    boolean first = plus.pin().equals(relay.coil().first());
    Terminal minus =
        new Terminal(relay.name(), first ? relay.coil().second() : relay.coil().first());
    List<Set<Terminal>> ways = List.of(Set.of(), Set.of(plus), Set.of(minus, plus));
    Probing plain = state.still(Probing.ohms(plus, minus));
    Probing leads = anatomy.elvCoil(relay) ? plain.toward() : plain;
    Probing probing =
        ways.stream()
            .map(leads::lifting)
            .filter(p -> readings.fits(p, expected.band()))
            .findFirst()
            .orElse(leads.lifting(Set.of(minus, plus)));
    String lifted =
        probing.lifted().isEmpty()
            ? ""
            : texts.of(
                "when.lifted",
                probing.lifted().stream()
                    .map(Terminal::toString)
                    .sorted()
                    .collect(Collectors.joining(", ")));
    return readings.reading(
        Row.of(
                texts,
                anatomy.elvCoil(relay) ? "coil-resistance-plus" : "coil-resistance",
                Names.of(relay.name(), "coil-resistance"),
                expected.band(),
                expected.grounds(),
                relay.name(),
                plus,
                minus)
            .when(
                Stream.of(Optional.of(lifted), byTemperature(relay))
                    .flatMap(Optional::stream)
                    .filter(text -> !text.isEmpty())
                    .collect(Collectors.joining(" "))),
        probing);
  }

  private Optional<String> byTemperature(Part.Relay relay) {
    return bands
        .coilByTemperature(relay.coil())
        .map(windows -> texts.of("when.by-temperature", windows));
  }

  /** Where an ohmmeter's positive lead goes so that a suppressor diode blocks. */
  private String plus(Part.Relay relay) {
    boolean turned =
        anatomy
            .stateWith(relay.name(), true)
            .map(s -> anatomy.study().coil(relay.name(), s).volts() < 0)
            .orElse(false);
    return turned ? relay.coil().second() : relay.coil().first();
  }

  /** Which way round each diode is, with its wires off one end. */
  List<Row> diodes() {
    List<Row> rows = new ArrayList<>();
    for (Part.Diode diode : anatomy.parts(Part.Diode.class)) {
      Terminal anode = new Terminal(diode.name(), "A");
      Terminal cathode = new Terminal(diode.name(), "K");
      if (!anatomy.wired(diode.name(), "A") || !anatomy.wired(diode.name(), "K")) {
        continue;
      }
      Reasoned expected =
          Bands.reasoned(
              Expected.Band.between(
                  bands.figure("checklist.diode-volts-low").value(),
                  bands.figure("checklist.diode-volts-high").value(),
                  "V"),
              texts.of("how.diode"),
              bands.figure("checklist.diode-volts-high"));
      rows.add(
          readings.reading(
              Row.of(
                  texts,
                  "diode-direction",
                  Names.of(diode.name(), "direction"),
                  expected.band(),
                  expected.grounds(),
                  diode.name(),
                  anode,
                  cathode,
                  farEnd(anode)),
              state.still(
                  new Probing(
                      Probing.Method.DIODE,
                      List.of(anode),
                      List.of(cathode),
                      Set.of(cathode),
                      Set.of(),
                      Map.of(),
                      true))));
    }
    return rows;
  }

  /** Where the lead of a diode goes: that tells its ends apart, not the ring on it. */
  private String farEnd(Terminal pin) {
    List<Wire> wires = anatomy.circuit().wiresAt(pin);
    return wires.isEmpty() ? "" : wires.get(0).farEnd(pin).value().toString();
  }

  List<Row> elements() {
    List<Row> rows = new ArrayList<>();
    for (Part.Heater heater : anatomy.parts(Part.Heater.class)) {
      for (ElementOhms.Pair pair : ElementOhms.pairs(heater)) {
        Reasoned expected = bands.element(pair.ohms());
        rows.add(
            readings
                .reading(
                    Row.of(
                        texts,
                        "element-resistance",
                        Names.of(heater.name(), "resistance", pair.from(), pair.to()),
                        expected.band(),
                        expected.grounds(),
                        heater.name(),
                        pair.from(),
                        pair.to()),
                    state.still(
                        Probing.ohms(
                            new Terminal(heater.name(), pair.from()),
                            new Terminal(heater.name(), pair.to()))))
                .inLine(heater.name() + ".resistance", pair.from() + "–" + pair.to()));
      }
    }
    return rows;
  }

  List<Row> thermals() {
    List<Row> rows = new ArrayList<>();
    for (Part.Thermal thermal : anatomy.parts(Part.Thermal.class)) {
      if (thermal.form() != Part.ContactForm.NC) {
        continue;
      }
      for (Part.Pole pole : thermal.poles()) {
        rows.add(
            readings
                .reading(
                    Row.of(
                        texts,
                        thermal.isCutOut() ? "cut-out-resistance" : "thermostat-resistance",
                        Names.of(thermal.name(), "contact-resistance", pole.from(), pole.to()),
                        Expected.Band.atMost(
                            bands.figure("checklist.closed-contact-ohms").value(), "Ω"),
                        Reasons.of(
                            texts.of("how.closed-contact"),
                            bands.figure("checklist.closed-contact-ohms")),
                        thermal.name(),
                        pole.from(),
                        pole.to()),
                    state.still(
                        Probing.ohms(
                            new Terminal(thermal.name(), pole.from()),
                            new Terminal(thermal.name(), pole.to()))))
                .inLine(thermal.name() + ".contact-resistance", pole.from() + "–" + pole.to()));
      }
    }
    return rows;
  }
}
