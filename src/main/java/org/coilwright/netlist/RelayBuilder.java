package org.coilwright.netlist;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Part.CoilSpec;
import org.coilwright.netlist.Part.ContactForm;
import org.coilwright.netlist.Part.ContactSpec;
import org.coilwright.netlist.Part.Head;
import org.coilwright.netlist.Part.InsulationSpec;
import org.coilwright.netlist.Part.Ratings;
import org.coilwright.netlist.Value.Many;
import org.coilwright.netlist.Value.Section;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Rating;

/** Relays and contactors. */
final class RelayBuilder {
  /** s; magnets stay below some tenths, textbook windings without resistance below this. */
  private static final double LONGEST_TIME_CONSTANT = 90;

  private final Problems problems;
  private final PinUses pins;
  private final Set<String> names = new HashSet<>();

  RelayBuilder(Problems problems) {
    this.problems = problems;
    this.pins = new PinUses(problems);
  }

  Part relay(Head head, Section section) {
    CoilSpec coil = coil(section.mustSection("coil"));
    Ratings ratings = ratings(section);
    List<ContactSpec> contacts = new ArrayList<>();
    for (Value item : section.items("poles")) {
      List<Written<String>> pole = ((Many) item).items().stream().map(Value::word).toList();
      contacts.add(pole(pole, ratings));
    }
    // a contactor's ratings are those of its poles; a relay without poles has them for its contacts
    Ratings usual = contacts.isEmpty() ? ratings : new Ratings(Optional.empty(), Map.of());
    for (Value item : section.items("contacts")) {
      contacts.addAll(contacts((Section) item, usual));
    }
    if (contacts.isEmpty()) {
      problems.add(
          head.mark(),
          head.name() + " has neither contacts nor poles",
          "add contacts: [{pins: [11, 14], form: NO}], or poles: [[1, 2]]");
    }
    return new Part.Relay(
        head,
        pins.pins(),
        coil,
        List.copyOf(contacts),
        ratings,
        section.choice("mounting", Mounting.class),
        section.quantity("rated-air"),
        section.section("insulation").map(RelayBuilder::insulation),
        rated(section, "life"),
        section.rating("loss"),
        backup(section));
  }

  /** The ratings of a section. */
  static Ratings ratings(Section section) {
    return new Ratings(section.markOf("ratings"), rated(section, "ratings"));
  }

  private static Map<String, Written<Rating>> rated(Section section, String key) {
    Map<String, Written<Rating>> ratings = new LinkedHashMap<>();
    section
        .members(key)
        .forEach(
            (name, member) -> {
              if (member.value() instanceof Value.One one) {
                ratings.put(name, Value.as(one.written(), Rating.class));
              }
            });
    return DeviceBuilder.ordered(ratings);
  }

  private static Map<String, Written<Quantity>> backup(Section section) {
    Map<String, Written<Quantity>> backup = new LinkedHashMap<>();
    section
        .section("backup")
        .ifPresent(
            b -> b.shape().names().forEach(n -> b.quantity(n).ifPresent(q -> backup.put(n, q))));
    return DeviceBuilder.ordered(backup);
  }

  private ContactSpec pole(List<Written<String>> written, Ratings ratings) {
    pins.contact(written);
    return new ContactSpec(
        written.get(0).mark(),
        name(written.get(0), written.get(1)),
        written.get(0).value(),
        written.get(1).value(),
        ContactForm.NO,
        true,
        ratings,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private List<ContactSpec> contacts(Section section, Ratings usual) {
    Optional<Written<String>> common = section.text("common");
    if (common.isEmpty()) {
      List<Written<String>> two = section.mustWords("pins");
      pins.contact(two);
      ContactForm form = ContactForm.valueOf(section.mustText("form").value());
      return List.of(contact(section, two.get(0), two.get(1), form, usual));
    }
    Written<String> closed = section.mustText("NC");
    Written<String> open = section.mustText("NO");
    pins.contact(List.of(common.get(), closed));
    pins.contact(List.of(common.get(), open));
    pins.contact(List.of(closed, open));
    return List.of(
        contact(section, common.get(), closed, ContactForm.NC, usual),
        contact(section, common.get(), open, ContactForm.NO, usual));
  }

  private ContactSpec contact(
      Section section, Written<String> from, Written<String> to, ContactForm form, Ratings usual) {
    Ratings own = ratings(section);
    return new ContactSpec(
        from.mark(),
        name(from, to),
        from.value(),
        to.value(),
        form,
        false,
        own.byCategory().isEmpty() ? usual : own,
        section.rating("least-load"),
        section.quantity("leakage"),
        section.flag("mirror"));
  }

  private String name(Written<String> from, Written<String> to) {
    String name = from.value() + "-" + to.value();
    boolean repeated = !names.add(name) || names.contains(to.value() + "-" + from.value());
    if (repeated && !from.value().equals(to.value())) {
      problems.add(to.mark(), "the contact " + name + " is written twice", "keep one of the two");
    }
    return name;
  }

  private CoilSpec coil(Section section) {
    List<Written<String>> two = section.mustWords("pins");
    pins.only("the coil", two);
    Written<Quantity> voltage = section.quantity("voltage").orElseThrow(Value.Incomplete::new);
    checkPolarity(section, two);
    if (voltage.value().kind() == CurrentKind.AC) {
      refuseActivePower(section, "pick-up");
      refuseActivePower(section, "hold");
    }
    section
        .quantity("time-constant")
        .filter(t -> t.value().high() > LONGEST_TIME_CONSTANT)
        .ifPresent(
            t ->
                problems.add(
                    t.mark(),
                    "no coil of a relay or contactor has a time constant of " + t.text(),
                    "L/R is some milliseconds to tenths of a second: write it in ms"));
    return new CoilSpec(
        section.mark(),
        two.get(0).value(),
        two.get(1).value(),
        voltage,
        section.quantity("resistance"),
        section.quantity("power"),
        section.quantity("range"),
        section.rating("operate"),
        section.quantity("release"),
        section.text("polarity"),
        section.text("suppression"),
        section.quantity("time-constant"),
        section.quantity("pick-up"),
        section.quantity("hold"),
        section.quantity("hold-power"),
        section.quantity("operate-time"),
        section.quantity("release-time"),
        section.quantity("clamping-voltage"));
  }

  private void checkPolarity(Section section, List<Written<String>> two) {
    section
        .text("polarity")
        .filter(polarity -> !polarity.value().equals("none"))
        .ifPresent(
            polarity -> {
              String pin = polarity.value().split(" ", 2)[0];
              if (two.stream().noneMatch(written -> written.value().equals(pin))) {
                problems.add(
                    polarity.mark(),
                    "the coil has no pin " + pin,
                    "write none, or the pin that must be plus: " + two.get(0).value() + " plus");
              }
            });
  }

  private void refuseActivePower(Section section, String key) {
    section
        .quantity(key)
        .filter(power -> power.value().dimension() == Dimension.POWER)
        .ifPresent(
            power ->
                problems.add(
                    power.mark(),
                    "the " + key + " power of an AC coil is apparent power, in VA",
                    "write VA; active power while held goes to hold-power"));
  }

  /** What is written of the insulation of a device that has no coil. */
  static Optional<InsulationSpec> poleInsulation(Section device) {
    return device
        .section("insulation")
        .map(
            s ->
                new InsulationSpec(
                    s.mark(),
                    Optional.empty(),
                    s.text("between-poles"),
                    s.quantity("test"),
                    s.quantity("clearance"),
                    s.quantity("creepage"),
                    Optional.empty()));
  }

  private static InsulationSpec insulation(Section section) {
    return new InsulationSpec(
        section.mark(),
        section.text("coil-to-contacts"),
        section.text("between-poles"),
        section.quantity("test"),
        section.quantity("clearance"),
        section.quantity("creepage"),
        section.quantity("voltage"));
  }
}
