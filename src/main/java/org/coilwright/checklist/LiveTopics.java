// Over 250 lines: the whole order of the work with a supply on.
package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.coilwright.checklist.Bands.Reasoned;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.checklist.Expected.Seen;
import org.coilwright.checklist.Expected.State;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Quantity;

/**
 * What is done with a supply on. No wire is taken off and none put on while one is; every supply
 * and breaker is switched in a row of its own.
 */
final class LiveTopics {
  private final Anatomy anatomy;
  private final Bands bands;
  private final Texts texts;

  LiveTopics(Anatomy anatomy, Bands bands, Texts texts) {
    this.anatomy = anatomy;
    this.bands = bands;
    this.texts = texts;
  }

  /** A row in which a supply or breaker is switched. */
  static Row switched(Texts texts, String kind, String name, State state, Object... arguments) {
    return Row.of(
            texts,
            kind,
            name,
            new Seen(state),
            Reasons.ofNetlist(texts.of("how.switching")),
            arguments)
        .answered(Manner.SWITCHED);
  }

  /** True if the loads have to come off, for nothing else keeps them off. */
  private boolean loadsComeOff() {
    return anatomy.mains().isPresent() && !anatomy.loadsStayOff();
  }

  private String loadPins() {
    return String.join(
        ", ",
        anatomy.loads().stream()
            .flatMap(load -> anatomy.livePins(load).stream().map(pin -> load.name() + "." + pin))
            .toList());
  }

  /** The last thing done dead: loads that nothing else keeps off come off. */
  List<Topic> beforeTheHold() {
    return !loadsComeOff()
        ? List.of()
        : List.of(
            Topic.of(
                "loads-off",
                Section.Stage.DEAD,
                texts.of("section.loads-off"),
                texts.of("begin.dead"),
                List.of(DeadTopics.done(texts, "loads-off", "loads", State.OFF, loadPins()))));
  }

  /** All that is done with the loads still off, in order. */
  List<Topic> withLoadsOff() {
    List<Topic> topics = new ArrayList<>();
    boolean ownSupply = anatomy.inputs().isEmpty();
    if (ownSupply) {
      topics.addAll(control(Section.Stage.ELV));
    }
    anatomy.mains().ifPresent(mains -> topics.add(incoming(mains)));
    if (!ownSupply) {
      topics.addAll(control(Section.Stage.CONTROL));
    } else if (anatomy.mains().isPresent()) {
      topics.addAll(mainsCoils());
    }
    if (loadsComeOff()) {
      topics.add(deadAgain());
    }
    return topics;
  }

  private Topic incoming(Site.MainsSupply mains) {
    Volts volts = new Volts(bands, mains, texts);
    ProtectionRows protection = new ProtectionRows(anatomy, bands, texts);
    List<Row> rows = new ArrayList<>();
    for (Part.Mains part : anatomy.parts(Part.Mains.class)) {
      rows.add(
          switched(
              texts, "supply-on", Names.of(part.name(), "switched-on"), State.ON, part.name()));
      rows.addAll(voltages(part, volts));
      rows.addAll(protection.incoming(mains, part));
    }
    rows.addAll(protection.sums(mains));
    rows.addAll(protection.devices(mains, false));
    return new Topic(
        List.of("incoming", "protection"),
        Section.Stage.INCOMING,
        texts.of("section.incoming"),
        texts.of("begin.all-off"),
        rows);
  }

  /** Nothing may be switched on at a voltage nobody has read. */
  private List<Row> voltages(Part.Mains part, Volts volts) {
    List<Row> rows = new ArrayList<>();
    List<String> lines = part.pins().stream().filter(p -> p.startsWith("L")).toList();
    for (String line : lines) {
      rows.add(
          voltage(part.name(), line, "N", volts.toNeutral(), volts.grounds())
              .inLine(part.name() + ".to-neutral", line + "–N"));
    }
    for (int i = 0; i < lines.size(); i++) {
      for (int j = i + 1; j < lines.size(); j++) {
        rows.add(
            voltage(part.name(), lines.get(i), lines.get(j), volts.acrossLines(), volts.grounds())
                .inLine(part.name() + ".lines", lines.get(i) + "–" + lines.get(j)));
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
    return rows;
  }

  private Row voltage(String part, String from, String to, Quantity volts, Grounds grounds) {
    Band band = Volts.band(volts, 0);
    String name = Names.of(part, "voltage", from, to);
    return Row.of(texts, "mains-voltage", name, band, grounds, part, from, to).live(true);
  }

  /** The control side; coils on the mains along with it where that is on by then. */
  private List<Topic> control(Section.Stage stage) {
    boolean fed = !anatomy.inputs().isEmpty();
    CoilRows coils = new CoilRows(anatomy, texts);
    List<Row> rows = new ArrayList<>(coils.supplies());
    List<String> keys = new ArrayList<>(List.of("control-supply", "elv-coil"));
    for (Part.Relay relay : anatomy.parts(Part.Relay.class)) {
      if (anatomy.elvCoil(relay)) {
        rows.addAll(coils.coil(relay, fed));
      }
    }
    if (fed && anatomy.mains().isPresent()) {
      keys.add("mains-coil");
      early().forEach(relay -> rows.addAll(coils.coil(relay, true)));
    }
    if (rows.isEmpty()) {
      return List.of();
    }
    Set<String> on = new LinkedHashSet<>(anatomy.controlProtection());
    if (fed) {
      early().forEach(relay -> on.addAll(protectionOf(relay)));
    }
    rows.add(0, switchOn("control-on", "control", on));
    return List.of(new Topic(keys, stage, texts.of("section.control"), beginWith(), rows));
  }

  private Row switchOn(String kind, String subject, Set<String> devices) {
    String which = devices.isEmpty() ? texts.of("all-of-it") : String.join(", ", devices);
    return switched(texts, kind, Names.of(subject, "switched-on"), State.ON, which);
  }

  /** Contactors whose coils are fed without the load's own device. */
  private List<Part.Relay> early() {
    Set<String> loadOnly = anatomy.loadOnlyProtection();
    return anatomy.parts(Part.Relay.class).stream()
        .filter(anatomy::mainsCoil)
        .filter(relay -> protectionOf(relay).stream().noneMatch(loadOnly::contains))
        .toList();
  }

  private Set<String> protectionOf(Part.Relay relay) {
    return anatomy.protectionOf(
        Stream.of(relay.coil().first(), relay.coil().second())
            .flatMap(pin -> anatomy.node(relay.name(), pin).stream())
            .toList());
  }

  private List<Topic> mainsCoils() {
    List<Row> rows = new ArrayList<>();
    Set<String> on = new LinkedHashSet<>();
    for (Part.Relay relay : early()) {
      rows.addAll(new CoilRows(anatomy, texts).coil(relay, true));
      on.addAll(protectionOf(relay));
    }
    if (rows.isEmpty()) {
      return List.of();
    }
    rows.add(0, switchOn("control-on", "mains-coils", on));
    return List.of(
        Topic.of(
            "mains-coil", Section.Stage.CONTROL, texts.of("section.control"), beginWith(), rows));
  }

  /** What is off, and what a person may touch by mistake because it is not. */
  private String beginWith() {
    Set<String> loadOnly = anatomy.loadOnlyProtection();
    List<String> loads = anatomy.loads().stream().map(Part::name).toList();
    List<String> parts = new ArrayList<>();
    if (!loads.isEmpty()) {
      parts.add(
          loadOnly.isEmpty()
              ? texts.of("begin.loads-lifted", String.join(", ", loads))
              : texts.of("begin.locked-off", String.join(", ", loadOnly)));
    }
    Set<String> live = anatomy.controlProtection();
    if (!anatomy.inputs().isEmpty()) {
      parts.add(
          live.isEmpty()
              ? texts.of("begin.mains-behind-isolator")
              : texts.of("begin.mains-behind", String.join(", ", live)));
    }
    return parts.isEmpty() ? texts.of("begin.control-only") : String.join(" ", parts);
  }

  /** Loads that came off go back on a circuit that is locked and proved dead once more. */
  private Topic deadAgain() {
    List<Row> rows = new ArrayList<>();
    double volts = anatomy.mains().map(Volts::toEarth).orElse(0.0);
    for (Part.Mains mains : anatomy.parts(Part.Mains.class)) {
      String name = mains.name();
      rows.add(
          switched(texts, "lock-again", Names.of(name, "locked-again"), State.LOCKED_OFF, name));
      Reasoned off = bands.off(volts, "V AC");
      rows.add(
          Row.of(
              texts,
              "dead-mains",
              Names.of(name, "proved-dead-again"),
              off.band(),
              off.grounds(),
              name,
              String.join(", ", mains.pins())));
    }
    rows.add(DeadTopics.done(texts, "loads-back", "loads", State.BACK, loadPins()));
    for (Part load : anatomy.loads()) {
      rows.add(
          Row.of(
                  texts,
                  "loads-again",
                  Names.of(load.name(), "wires-again"),
                  Band.atMost(bands.figure("checklist.short-wire-ohms").value(), "Ω"),
                  Reasons.of(
                      texts.of("how.loads-again"), bands.figure("checklist.short-wire-ohms")),
                  load.name())
              .answered(Manner.COMPARED));
    }
    return Topic.of(
        "loads-back",
        Section.Stage.AGAIN,
        texts.of("section.loads-back"),
        texts.of("begin.again"),
        rows);
  }

  /** The loads on the mains, and the whole plant feeding them without it. */
  List<Topic> loads() {
    Optional<Site.MainsSupply> mains = anatomy.mains();
    if (mains.isEmpty()) {
      return List.of();
    }
    List<Topic> topics = new ArrayList<>();
    Volts volts = new Volts(bands, mains.get(), texts);
    List<Row> first = new ArrayList<>();
    Set<String> loadOnly = anatomy.loadOnlyProtection();
    if (loadsComeOff()) {
      // locked off once more for the loads to go back
      for (Part.Mains part : anatomy.parts(Part.Mains.class)) {
        String again = Names.of(part.name(), "switched-on-again");
        first.add(switched(texts, "supply-on", again, State.ON, part.name()));
      }
    }
    first.add(switchOn("loads-on", "loads", loadOnly.isEmpty() ? devices() : loadOnly).live(true));
    first.addAll(new ProtectionRows(anatomy, bands, texts).devices(mains.get(), true));
    List<Part.Relay> early = early();
    for (Part.Relay relay : anatomy.parts(Part.Relay.class)) {
      if (anatomy.mainsCoil(relay) && !early.contains(relay)) {
        first.addAll(new CoilRows(anatomy, texts).coil(relay, true));
      }
    }
    for (Part load : anatomy.loads()) {
      LoadRows rows = new LoadRows(anatomy, bands, volts, load, texts);
      List<Row> all = new ArrayList<>(first);
      first.clear();
      anatomy.stateWithOff(load.name()).ifPresent(s -> all.addAll(standing(s, rows.off())));
      anatomy.stateWithOn(load.name()).ifPresent(s -> all.addAll(standing(s, rows.on(s))));
      all.addAll(rows.oneByOne());
      if (anatomy.stateWithOn(load.name()).isPresent()) {
        all.addAll(new WarmRows(anatomy, bands, texts).rows(load));
      }
      topics.add(
          new Topic(
              List.of("load-off", "load-on", "one-by-one", "after-an-hour", "mains-coil"),
              Section.Stage.MAINS,
              texts.of("section.load", load.name()),
              texts.of("begin.everything-on"),
              all.stream().map(row -> row.live(true)).toList()));
    }
    topics.addAll(new IslandTopic(anatomy, bands, texts).topics());
    return topics;
  }

  /** Breakers, fuses and residual-current devices by name. */
  private Set<String> devices() {
    Set<String> names = new LinkedHashSet<>();
    for (Part part : anatomy.netlist().parts().values()) {
      if (part instanceof Part.Protective || part instanceof Part.Fuse) {
        names.add(part.name());
      }
    }
    return names;
  }

  /** With the position of every contact before the first row of them. */
  private List<Row> standing(org.coilwright.solve.State state, List<Row> rows) {
    String words = new StateWords(anatomy, texts).of(state) + ".";
    List<Row> standing = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      boolean begins = i == 0 || !rows.get(i).continues(rows.get(i - 1));
      standing.add(begins ? rows.get(i).when(words) : rows.get(i));
    }
    return standing;
  }
}
