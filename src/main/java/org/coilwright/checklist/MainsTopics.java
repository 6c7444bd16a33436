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
  private final Anatomy anatomy;
  private final Bands bands;
  private final Texts texts;

  MainsTopics(Anatomy anatomy, Bands bands, Texts texts) {
    this.anatomy = anatomy;
    this.bands = bands;
    this.texts = texts;
  }

  /**
   * Where the control supply itself needs the mains, the mains is measured before it is let in:
   * nothing may be switched on at a voltage nobody has read.
   */
  List<Topic> beforeTheControlSupply() {
    return anatomy.mains().isEmpty() || anatomy.inputs().isEmpty()
        ? List.of()
        : List.of(
            Topic.of(
                "incoming",
                Section.Stage.INCOMING,
                texts.of("section.incoming"),
                texts.of("begin.all-off"),
                incoming(new Volts(bands, anatomy.mains().get(), texts))));
  }

  List<Topic> topics() {
    Optional<Site.MainsSupply> mains = anatomy.mains();
    if (mains.isEmpty()) {
      return List.of();
    }
    Volts volts = new Volts(bands, mains.get(), texts);
    List<Topic> topics = new ArrayList<>();
    if (anatomy.inputs().isEmpty()) {
      topics.add(
          topic(
              "incoming",
              texts.of("section.incoming"),
              texts.of("begin.all-off"),
              incoming(volts)));
    }
    topics.add(
        topic(
            "protection",
            texts.of("section.protection"),
            texts.of("begin.loads-off"),
            new ProtectionRows(anatomy, bands, texts).rows(mains.get())));
    for (Part.Relay relay : anatomy.parts(Part.Relay.class)) {
      if (anatomy.mainsCoil(relay)) {
        List<Row> rows = new ControlTopics(anatomy, texts).coil(relay, true);
        topics.add(
            topic("mains-coil", texts.of("section.coil-of", relay.name()), loadsOff(), rows));
      }
    }
    for (Part load : anatomy.loads()) {
      LoadRows rows = new LoadRows(anatomy, bands, volts, load, texts);
      anatomy
          .stateWithOff(load.name())
          .ifPresent(
              s ->
                  topics.add(
                      topic(
                          "load-off",
                          texts.of("section.load-off", load.name()),
                          standing(s),
                          rows.off())));
      anatomy
          .stateWithOn(load.name())
          .ifPresent(
              s ->
                  topics.add(
                      topic(
                          "load-on",
                          texts.of("section.load-on", load.name()),
                          standing(s),
                          rows.on(s))));
      topics.add(
          topic(
              "one-by-one",
              texts.of("section.one-by-one", load.name()),
              texts.of("begin.one-by-one", load.name()),
              rows.oneByOne()));
      topics.add(
          topic(
              "after-an-hour",
              texts.of("section.after-an-hour", load.name()),
              texts.of("begin.after-an-hour", load.name()),
              anatomy.stateWithOn(load.name()).isEmpty()
                  ? List.of()
                  : new WarmRows(anatomy, bands, texts).rows(load)));
    }
    topics.addAll(new IslandTopic(anatomy, bands, texts).topics());
    return topics;
  }

  private static Topic topic(String key, String title, String beginWith, List<Row> rows) {
    return Topic.of(key, Section.Stage.MAINS, title, beginWith, rows);
  }

  private String loadsOff() {
    var only = anatomy.loadOnlyProtection();
    return only.isEmpty()
        ? texts.of("begin.loads-disconnected")
        : texts.of("begin.still-locked-off", String.join(", ", only));
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
          Row.of(
                  texts,
                  "neutral-to-earth",
                  Names.of(part.name(), "neutral-to-earth"),
                  off.band(),
                  off.grounds(),
                  part.name())
              .live(true));
    }
    return rows;
  }

  private Row voltage(String part, String from, String to, Quantity volts, Grounds grounds) {
    return Row.of(
            texts,
            "mains-voltage",
            Names.of(part, "voltage", from, to),
            Volts.band(volts, 0),
            grounds,
            part,
            from,
            to)
        .live(true);
  }

  private String standing(State state) {
    return texts.of("begin.all-on", new StateWords(anatomy, texts).of(state));
  }
}
