package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.checklist.Bands.Reasoned;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;

/** What an ohmmeter reads on parts that have not been on. */
final class ColdRows {
  private final Anatomy anatomy;
  private final Bands bands;

  ColdRows(Anatomy anatomy, Bands bands) {
    this.anatomy = anatomy;
    this.bands = bands;
  }

  List<Row> protective() {
    List<Row> rows = new ArrayList<>();
    for (Part.Mains mains : anatomy.parts(Part.Mains.class)) {
      Optional<Node> origin = anatomy.node(mains.name(), "PE");
      for (Part load : anatomy.loads()) {
        Optional<Node> end = anatomy.node(load.name(), "PE");
        if (origin.isPresent() && end.isPresent() && anatomy.wired(load.name(), "PE")) {
          Reasoned expected = path(origin.get(), end.get());
          rows.add(
              Row.dead(
                  Names.of(load.name(), "protective-conductor"),
                  "Measure the protective conductor to " + load.name(),
                  "between " + origin.get() + " and " + end.get(),
                  expected.band(),
                  "mend the protective conductor; nothing is switched on without it.",
                  expected.grounds()));
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
                "length or size is not stated",
                bands.figure("checklist.protective-ohms")));
  }

  List<Row> coils() {
    List<Row> rows = new ArrayList<>();
    for (Part.Relay relay : anatomy.parts(Part.Relay.class)) {
      Optional<Reasoned> expected = bands.coil(relay.coil());
      Optional<Branch.Coil> coil = anatomy.coil(relay);
      if (expected.isPresent() && coil.isPresent()) {
        rows.add(
            Row.dead(
                    Names.of(relay.name(), "coil-resistance"),
                    "Measure the coil of " + relay.name(),
                    "between " + coil.get().from() + " and " + coil.get().to(),
                    expected.get().band(),
                    "read the marking of "
                        + relay.name()
                        + "; a coil for another voltage or a"
                        + " damaged one.",
                    expected.get().grounds())
                .when(
                    anatomy.elvCoil(relay)
                        ? "One wire lifted, positive lead at " + plus(relay) + "."
                        : "One wire lifted."));
      }
    }
    return rows;
  }

  /** Where an ohmmeter's positive lead goes so that a suppressor diode blocks. */
  private String plus(Part.Relay relay) {
    boolean turned =
        anatomy
            .stateWith(relay.name(), true)
            .map(s -> anatomy.study().coil(relay.name(), s).volts() < 0)
            .orElse(false);
    return relay.name() + "." + (turned ? relay.coil().second() : relay.coil().first());
  }

  /** Two cores of one run between the same two parts, joined at the far end. */
  List<Row> loops() {
    List<Row> rows = new ArrayList<>();
    List<Branch.Conductor> wires = anatomy.circuit().branches(Branch.Conductor.class);
    for (int i = 0; i < wires.size(); i++) {
      Branch.Conductor first = wires.get(i);
      for (int j = i + 1; j < wires.size(); j++) {
        Branch.Conductor second = wires.get(j);
        if (first.run().isPresent()
            && first.run().equals(second.run())
            && anatomy.carries(first.from()).equals("ELV")
            && Ends.of(first, second).isPresent()) {
          bands.series(List.of(first, second)).ifPresent(e -> rows.add(loop(first, second, e)));
          break;
        }
      }
    }
    return rows;
  }

  private static Row loop(Branch.Conductor first, Branch.Conductor second, Reasoned expected) {
    Ends ends = Ends.of(first, second).orElseThrow();
    return Row.dead(
            Names.of(
                first.run().orElseThrow().name(),
                "loop-resistance",
                first.wire().from().value().part(),
                first.wire().to().value().part()),
            "Measure the loop of " + first.run().orElseThrow().name(),
            "between the lifted ends at " + ends.near(),
            expected.band(),
            "look for a loose clamp, a wrong core or a wrong size.",
            expected.grounds())
        .when("Cores joined at " + ends.far() + ".");
  }

  /** Where two wires begin and end together. */
  private record Ends(String near, String far) {
    static Optional<Ends> of(Branch.Conductor first, Branch.Conductor second) {
      Terminal a = first.wire().from().value();
      Terminal b = first.wire().to().value();
      Terminal c = second.wire().from().value();
      Terminal d = second.wire().to().value();
      if (a.part().equals(c.part()) && b.part().equals(d.part())) {
        return Optional.of(new Ends(a + " and " + c, b + " and " + d));
      }
      if (a.part().equals(d.part()) && b.part().equals(c.part())) {
        return Optional.of(new Ends(a + " and " + d, b + " and " + c));
      }
      return Optional.empty();
    }
  }

  List<Row> elements() {
    List<Row> rows = new ArrayList<>();
    for (Part.Heater heater : anatomy.parts(Part.Heater.class)) {
      for (ElementOhms.Pair pair : ElementOhms.pairs(heater)) {
        Reasoned expected = bands.element(pair.ohms());
        rows.add(
            Row.dead(
                    Names.of(heater.name(), "resistance", pair.from(), pair.to()),
                    "Measure the element of " + heater.name(),
                    "between "
                        + heater.name()
                        + "."
                        + pair.from()
                        + " and "
                        + heater.name()
                        + "."
                        + pair.to(),
                    expected.band(),
                    "read the plate of " + heater.name() + "; open, shorted or of another power.",
                    expected.grounds())
                .when("Contacts before it open."));
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
            Row.dead(
                Names.of(thermal.name(), "contact-resistance", pole.from(), pole.to()),
                "Measure the contact of " + thermal.name(),
                "between "
                    + thermal.name()
                    + "."
                    + pole.from()
                    + " and "
                    + thermal.name()
                    + "."
                    + pole.to(),
                Expected.Band.atMost(bands.figure("checklist.closed-contact-ohms").value(), "Ω"),
                thermal.isCutOut()
                    ? "find out why it has tripped before it is reset."
                    : "set it above the water's temperature; if still open, replace it.",
                Reasons.of("closed contact", bands.figure("checklist.closed-contact-ohms"))));
      }
    }
    return rows;
  }
}
