package org.coilwright.sizing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.CopperLaw;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * Heat that the devices of a circuit give off in their box, and how warm it gets at the top, by the
 * method of IEC TR 60890 for small boxes without vents.
 *
 * @param watts all losses together
 * @param area effective cooling surface, m²
 * @param rise at the top, K
 * @param inside air at the top, °C
 * @param words how it comes about, so that it can be redone
 */
public record BoxHeat(
    double watts, double area, double rise, double inside, String words, List<Cited<?>> cited) {
  private static final double COIL_REFERENCE = 20;

  /** What decides where the method ends. */
  private static final String INSIDE = "site.enclosure-air";

  private static final String MEASURE =
      "Measure the air inside in use and write it: enclosure-air, under site.";

  /** Something that gives off heat. */
  record Source(String part, double watts) {}

  /**
   * The warmth inside for air outside at its hottest.
   *
   * @param coilAir °C the direct-current coils are taken to be at
   */
  public static Found<BoxHeat> of(PowerSide side, double coilAir, Tables tables) {
    Site site = side.circuit().netlist().site();
    Optional<Site.Enclosure> box = site.enclosure();
    if (box.isEmpty() || site.ambient().isEmpty()) {
      return new Found.Unknown<>(
          box.isEmpty() ? "site.enclosure" : "site.ambient", "The box or its room is not written.");
    }
    List<Cited<?>> cited = new ArrayList<>();
    Found<List<Source>> sources = sources(side, coilAir, tables, cited);
    if (sources instanceof Found.Unknown<List<Source>> u) {
      return new Found.Unknown<>(u.missing(), u.why());
    }
    double watts = sources.known().orElse(List.of()).stream().mapToDouble(Source::watts).sum();
    return warmth(box.get(), site.ambient().get().value(), watts, tables, cited);
  }

  /** The rise at the top of a box of these measures, K; see {@link #of}. */
  private static Found<BoxHeat> warmth(
      Site.Enclosure box, Quantity room, double watts, Tables tables, List<Cited<?>> cited) {
    if (box.width().isEmpty() || box.height().isEmpty() || box.depth().isEmpty()) {
      return new Found.Unknown<>(
          "site.enclosure."
              + (box.width().isEmpty() ? "width" : box.height().isEmpty() ? "height" : "depth"),
          "Width, height and depth are not all written.");
    }
    if (box.mounting().isEmpty()) {
      return new Found.Unknown<>(
          "site.enclosure.mounting", "Which sides of the box give off heat is not written.");
    }
    if (box.vents().map(Written::value).filter(Site.Vents.PRESENT::equals).isPresent()) {
      return new Found.Unknown<>(
          INSIDE, "The figures of the method for boxes with vents were not to be had.", MEASURE);
    }
    double width = box.width().get().value().nominal();
    double height = box.height().get().value().nominal();
    double depth = box.depth().get().value().nominal();
    double area = area(box.mounting().get().value(), width, height, depth, tables, cited);
    Optional<Cited<Double>> k = tables.lookup("enclosure-small", Map.of(), area, "k");
    Optional<Cited<Double>> c = tables.lookup("enclosure-top", Map.of(), height / width, "c");
    String measures = "effective surface %s m²".formatted(plain(area));
    if (k.isEmpty() || c.isEmpty()) {
      return new Found.Unknown<>(
          INSIDE,
          "The tables hold effective surfaces of 0.08 to 0.5 m² and boxes half to twice as high as wide; this one has %s m² and is %s times as high as wide."
              .formatted(plain(area), plain(height / width)),
          MEASURE);
    }
    Cited<Double> exponent = tables.figure("sizing.enclosure-exponent");
    cited.add(k.get());
    cited.add(c.get());
    cited.add(exponent);
    double rise = c.get().value() * k.get().value() * Math.pow(watts, exponent.value());
    double inside = room.high() + rise;
    return new Found.Known<>(
        new BoxHeat(
            watts,
            area,
            rise,
            inside,
            "%s, %s: %s (top) × %s × %s^%s = %s K above %s"
                .formatted(
                    Printed.of(watts, Dimension.POWER),
                    measures,
                    plain(c.get().value()),
                    plain(k.get().value()),
                    plain(watts),
                    exponent.value(),
                    plain(rise),
                    Printed.of(room.high(), Dimension.TEMPERATURE)),
            List.copyOf(cited)));
  }

  /** Effective cooling surface, m²: each face times its factor. */
  public static double area(
      Site.BoxMounting mounting, double width, double height, double depth, Tables tables) {
    return area(mounting, width, height, depth, tables, new ArrayList<>());
  }

  private static double area(
      Site.BoxMounting mounting,
      double width,
      double height,
      double depth,
      Tables tables,
      List<Cited<?>> cited) {
    boolean recessed = mounting == Site.BoxMounting.RECESSED;
    String back = mounting == Site.BoxMounting.FREE_STANDING ? "exposed-side" : "covered-side";
    return face(recessed ? "top-covered" : "top", tables, cited) * width * depth
        + face("exposed-side", tables, cited) * width * height
        + face(back, tables, cited) * width * height
        + 2 * face(recessed ? "covered-side" : "exposed-side", tables, cited) * depth * height;
  }

  private static double face(String surface, Tables tables, List<Cited<?>> cited) {
    Cited<Double> b =
        tables.lookup("enclosure-surface", Map.of("surface", surface), "b").orElseThrow();
    cited.add(b);
    return b.value();
  }

  private static Found<List<Source>> sources(
      PowerSide side, double coilAir, Tables tables, List<Cited<?>> cited) {
    List<Source> sources = new ArrayList<>();
    for (Part part : side.circuit().netlist().parts().values()) {
      if (part instanceof Part.Relay relay) {
        Found<Double> coil = coil(side, relay, coilAir, tables, cited);
        if (coil instanceof Found.Unknown<Double> u) {
          return new Found.Unknown<>(u.missing(), u.why());
        }
        sources.add(new Source(part.name(), coil.known().orElse(0.0)));
      }
    }
    for (Contact contact : side.circuit().branches(Contact.class)) {
      Optional<Part> open =
          side.loadsThrough(contact).stream()
              .filter(l -> side.current(l).isEmpty() || LoadCurrent.isByShaft(l))
              .findFirst();
      if (open.isPresent()) {
        return new Found.Unknown<>(
            LoadCurrent.missing(open.get()),
            "What %s takes is not written.".formatted(open.get().name()));
      }
      double amps = side.demand(contact).map(PowerSide.Demand::worst).orElse(0.0);
      if (amps > 0) {
        sources.add(new Source(contact.part(), pole(side, contact, amps, tables, cited)));
      }
    }
    return new Found.Known<>(sources);
  }

  private static Found<Double> coil(
      PowerSide side, Part.Relay relay, double air, Tables tables, List<Cited<?>> cited) {
    Part.CoilSpec coil = relay.coil();
    boolean ever =
        side.study().statesFor(relay.name()).stream().anyMatch(s -> s.isIn(relay.name()));
    if (!ever) {
      return new Found.Known<>(0.0);
    }
    Optional<Double> written = coil.holdPower().or(coil::power).map(p -> p.value().nominal());
    if (side.study().coilKind(relay.name()) == CurrentKind.DC && coil.resistance().isPresent()) {
      CopperLaw copper = CopperLaw.from(tables);
      cited.add(copper.constant());
      double ohms = copper.at(coil.resistance().get().value().nominal(), COIL_REFERENCE, air);
      double volts = coil.voltage().value().nominal();
      return new Found.Known<>(volts * volts / ohms);
    }
    if (written.isPresent()) {
      return new Found.Known<>(written.get());
    }
    if (coil.hold().isPresent()) {
      Cited<Double> factor = tables.figure("coil.hold-power-factor");
      cited.add(factor);
      return new Found.Known<>(coil.hold().get().value().nominal() * factor.value());
    }
    return new Found.Unknown<>(
        "coil.hold-power of " + relay.name(), "What its coil gives off is not written.");
  }

  /** Loss of a pole goes with the square of its current. */
  private static double pole(
      PowerSide side, Contact contact, double amps, Tables tables, List<Cited<?>> cited) {
    Part part = side.circuit().netlist().parts().get(contact.part());
    if (part instanceof Part.Relay relay && relay.loss().isPresent()) {
      double rated =
          Optional.ofNullable(relay.ratings().byCategory().get("AC-1"))
              .map(r -> r.value().amount().nominal())
              .orElse(amps);
      double loss = relay.loss().get().value().amount().nominal();
      double poles =
          relay.loss().get().value().perPole()
              ? 1
              : Math.max(1, relay.contacts().stream().filter(Part.ContactSpec::pole).count());
      return loss / poles * square(amps / rated);
    }
    if (part instanceof Part.Relay) {
      Cited<Double> ohms = tables.figure("coil.pole-resistance");
      cited.add(ohms);
      return ohms.value() * square(amps);
    }
    Optional<Double> rating =
        part instanceof Part.Protective p
            ? p.rating().map(r -> r.value().nominal())
            : part instanceof Part.Fuse f
                ? f.rating().map(r -> r.value().nominal())
                : Optional.empty();
    if (rating.isEmpty()) {
      return 0;
    }
    Cited<Double> loss = tables.figure("sizing.breaker-pole-loss");
    cited.add(loss);
    return loss.value() * square(amps / rating.get());
  }

  private static double square(double x) {
    return x * x;
  }

  private static String plain(double number) {
    return Printed.of(number, Dimension.COUNT);
  }
}
