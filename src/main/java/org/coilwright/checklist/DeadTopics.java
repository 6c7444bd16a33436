package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.coilwright.checklist.Bands.Reasoned;
import org.coilwright.checklist.Expected.Seen;
import org.coilwright.checklist.Expected.Setting;
import org.coilwright.checklist.Expected.State;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;

/** What is done before anything is switched on: isolation, markings, resistances. */
final class DeadTopics {
  private static final String BEGIN = "Every supply locked off and proved dead.";

  private final Anatomy anatomy;
  private final Bands bands;

  DeadTopics(Anatomy anatomy, Bands bands) {
    this.anatomy = anatomy;
    this.bands = bands;
  }

  List<Topic> topics() {
    return List.of(
        topic(
            "isolate and prove dead",
            "Nothing of this circuit has been switched on yet.",
            isolation()),
        topic("parts are the ones listed", BEGIN, markings()),
        topic("protective conductor", BEGIN, protective()),
        topic("coils", BEGIN, coils()),
        topic("control lines", BEGIN, loops()),
        topic("loads", BEGIN, elements()),
        topic("thermostats and cut-outs", BEGIN + " Vessel cold.", thermals()),
        topic(
            "insulation",
            BEGIN + " Controllers, supply units and suppressors disconnected or joined out.",
            new InsulationRows(anatomy, bands).rows()));
  }

  private static Topic topic(String title, String beginWith, List<Row> rows) {
    return new Topic(Section.Stage.DEAD, title, beginWith, rows);
  }

  private List<Row> isolation() {
    Grounds order = bands.published("the order in which a circuit is made dead", "en-50110-1");
    List<Row> rows = new ArrayList<>();
    List<Part.Mains> mains = anatomy.parts(Part.Mains.class);
    for (Part.Mains incoming : mains) {
      rows.add(
          Row.dead(
              "Lock off " + incoming.name(),
              "at the isolator that feeds " + incoming.name(),
              new Seen(State.LOCKED_OFF),
              "no work on the circuit until it can be locked off.",
              order));
    }
    if (anatomy.conditions().contains(Condition.BATTERY_PLANT)) {
      rows.add(
          Row.dead(
              "Lock off the inverter's supply of this circuit",
              "at the inverter's AC isolator",
              new Seen(State.LOCKED_OFF),
              "no work on the circuit until it can be locked off.",
              order));
    }
    rows.add(prove("before", order));
    for (Part.Mains incoming : mains) {
      double volts = anatomy.mains().map(DeadTopics::toEarth).orElse(0.0);
      if (volts > 0) {
        Reasoned off = bands.off(volts, "V AC");
        rows.add(
            Row.dead(
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
        "Prove the voltage tester " + when,
        "on a known live source",
        new Seen(State.SHOWS_A_KNOWN_SOURCE),
        "take another tester and repeat every reading of this section.",
        grounds);
  }

  private List<Row> markings() {
    List<Row> rows = new ArrayList<>();
    for (Part part : anatomy.netlist().parts().values()) {
      String marking = marking(part);
      if (!marking.isEmpty()) {
        rows.add(
            Row.dead(
                "Read the marking of " + part.name(),
                part.head().label().map(l -> "(" + l + ")").orElse(""),
                new Setting(marking),
                "fit the part listed, or check the netlist again with the one that is there.",
                Reasons.ofNetlist("as written in the netlist")));
      }
    }
    return rows;
  }

  private static String marking(Part part) {
    if (part instanceof Part.Relay relay) {
      return "coil " + relay.coil().voltage().text();
    }
    if (part instanceof Part.Protective device) {
      String kind =
          device.isRcd() ? "type " + text(device.kind()) : "curve " + text(device.curve());
      return joined(kind, text(device.rating()), text(device.trip()), poles(device));
    }
    if (part instanceof Part.Fuse fuse) {
      return text(fuse.rating());
    }
    if (part instanceof Part.Heater heater) {
      String connection =
          heater.connection().value() == Part.Connection.SINGLE
              ? ""
              : heater.connection().value().name().toLowerCase(Locale.ROOT).replace('_', ' ');
      return joined(text(heater.power()), text(heater.voltage()), connection);
    }
    if (part instanceof Part.OtherLoad load) {
      return joined(text(load.power()), text(load.current()), text(load.voltage()));
    }
    if (part instanceof Part.DcSupply supply) {
      return text(supply.output().voltage());
    }
    return "";
  }

  private static String poles(Part.Protective device) {
    long lines = device.poles().stream().filter(p -> !p.neutral()).count();
    String words = lines + (lines == 1 ? " pole" : " poles");
    return lines == device.poles().size() ? words : words + " and N";
  }

  private static String text(Optional<? extends Written<?>> written) {
    return written.map(Written::text).orElse("");
  }

  private static String joined(String... parts) {
    return java.util.Arrays.stream(parts)
        .filter(p -> !p.isBlank() && !p.equals("curve ") && !p.equals("type "))
        .collect(Collectors.joining(", "));
  }

  private List<Row> protective() {
    List<Row> rows = new ArrayList<>();
    for (Part.Mains mains : anatomy.parts(Part.Mains.class)) {
      Optional<Node> origin = anatomy.node(mains.name(), "PE");
      for (Part load : anatomy.loads()) {
        Optional<Node> end = anatomy.node(load.name(), "PE");
        if (origin.isPresent() && end.isPresent() && anatomy.wired(load.name(), "PE")) {
          Reasoned expected = path(origin.get(), end.get());
          rows.add(
              Row.dead(
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

  private List<Row> coils() {
    List<Row> rows = new ArrayList<>();
    for (Part.Relay relay : anatomy.parts(Part.Relay.class)) {
      Optional<Reasoned> expected = bands.coil(relay.coil());
      Optional<Branch.Coil> coil = anatomy.coil(relay);
      if (expected.isPresent() && coil.isPresent()) {
        rows.add(
            Row.dead(
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
  private List<Row> loops() {
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
      var a = first.wire().from().value();
      var b = first.wire().to().value();
      var c = second.wire().from().value();
      var d = second.wire().to().value();
      if (a.part().equals(c.part()) && b.part().equals(d.part())) {
        return Optional.of(new Ends(a + " and " + c, b + " and " + d));
      }
      if (a.part().equals(d.part()) && b.part().equals(c.part())) {
        return Optional.of(new Ends(a + " and " + d, b + " and " + c));
      }
      return Optional.empty();
    }
  }

  private List<Row> elements() {
    List<Row> rows = new ArrayList<>();
    for (Part.Heater heater : anatomy.parts(Part.Heater.class)) {
      for (ElementOhms.Pair pair : ElementOhms.pairs(heater)) {
        Reasoned expected = bands.element(pair.ohms());
        rows.add(
            Row.dead(
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

  private List<Row> thermals() {
    List<Row> rows = new ArrayList<>();
    for (Part.Thermal thermal : anatomy.parts(Part.Thermal.class)) {
      if (thermal.form() != Part.ContactForm.NC) {
        continue;
      }
      for (Part.Pole pole : thermal.poles()) {
        rows.add(
            Row.dead(
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

  /** The nominal voltage of the mains between line and earth. */
  static double toEarth(Site.MainsSupply mains) {
    double volts = mains.voltage().value().nominal();
    return switch (mains.phases().value()) {
      case ONE -> volts;
      case SPLIT -> volts / 2;
      case THREE -> volts / Math.sqrt(3);
    };
  }
}
