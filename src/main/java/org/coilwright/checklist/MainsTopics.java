package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.checklist.Bands.Reasoned;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.State;

/** What is done with the mains on. */
final class MainsTopics {
  private static final String ALL_OFF = "Every breaker, fuse and residual-current device off.";

  private final Anatomy anatomy;
  private final Bands bands;

  MainsTopics(Anatomy anatomy, Bands bands) {
    this.anatomy = anatomy;
    this.bands = bands;
  }

  /**
   * Where the control supply itself needs the mains, the mains is measured before it is let in:
   * nothing may be switched on at a voltage nobody has read.
   */
  List<Topic> beforeTheControlSupply() {
    return anatomy.mains().isEmpty() || anatomy.inputs().isEmpty()
        ? List.of()
        : List.of(
            new Topic(
                Section.Stage.ELV,
                "the mains that the control supply needs",
                ALL_OFF,
                incoming(new Volts(bands, anatomy.mains().get()))));
  }

  List<Topic> topics() {
    Optional<Site.MainsSupply> mains = anatomy.mains();
    if (mains.isEmpty()) {
      return List.of();
    }
    Volts volts = new Volts(bands, mains.get());
    List<Topic> topics = new ArrayList<>();
    if (anatomy.inputs().isEmpty()) {
      topics.add(topic("incoming supply", ALL_OFF, incoming(volts)));
    }
    topics.add(
        topic("protection", "Loads off.", new ProtectionRows(anatomy, bands).rows(mains.get())));
    for (Part.Relay relay : anatomy.parts(Part.Relay.class)) {
      if (anatomy.mainsCoil(relay)) {
        List<Row> rows = new ControlTopics(anatomy).coil(relay, true);
        topics.add(topic("coil of " + relay.name(), loadsOff(), rows));
      }
    }
    for (Part load : anatomy.loads()) {
      LoadRows rows = new LoadRows(anatomy, bands, volts, load);
      anatomy
          .stateWithOff(load.name())
          .ifPresent(s -> topics.add(topic(load.name() + " off", standing(s), rows.off())));
      anatomy
          .stateWithOn(load.name())
          .ifPresent(s -> topics.add(topic(load.name() + " on", standing(s), rows.on(s))));
      topics.add(
          topic(
              load.name() + ", one contact after another",
              "All as for " + load.name() + " on; put each contact back before the next row.",
              rows.oneByOne()));
    }
    return topics;
  }

  private static Topic topic(String title, String beginWith, List<Row> rows) {
    return new Topic(Section.Stage.MAINS, title, beginWith, rows);
  }

  private String loadsOff() {
    var only = anatomy.loadOnlyProtection();
    return only.isEmpty() ? "Loads disconnected." : String.join(", ", only) + " still locked off.";
  }

  private List<Row> incoming(Volts volts) {
    List<Row> rows = new ArrayList<>();
    for (Part.Mains part : anatomy.parts(Part.Mains.class)) {
      List<String> lines = part.pins().stream().filter(p -> p.startsWith("L")).toList();
      for (String line : lines) {
        rows.add(voltage(part.name(), line, "N", volts.toNeutral(), volts.grounds()));
      }
      for (int i = 0; i < lines.size(); i++) {
        for (int j = i + 1; j < lines.size(); j++) {
          rows.add(
              voltage(
                  part.name(), lines.get(i), lines.get(j), volts.acrossLines(), volts.grounds()));
        }
      }
      Reasoned off = bands.off(volts.toEarth(), "V AC");
      rows.add(
          Row.dead(
                  Names.of(part.name(), "neutral-to-earth"),
                  "Measure the neutral of " + part.name() + " against earth",
                  "between " + part.name() + ".N and " + part.name() + ".PE",
                  off.band(),
                  "switch off; line and neutral may be crossed, or the neutral is open.",
                  off.grounds())
              .live(true));
    }
    return rows;
  }

  private static Row voltage(String part, String from, String to, Quantity volts, Grounds grounds) {
    return Row.dead(
            Names.of(part, "voltage", from, to),
            "Measure the supply at " + part,
            "between " + part + "." + from + " and " + part + "." + to,
            Volts.band(volts, 0),
            "switch off; wrong line, lost neutral or a supply outside its range.",
            grounds)
        .live(true);
  }

  private String standing(State state) {
    return "Every protective device on. " + anatomy.inWords(state) + ".";
  }
}
