// Over 250 lines: the text of a netlist, from its first line to its last.
package org.coilwright.draft;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Brief;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;

/** A circuit as the text of a netlist: an arrangement with every gap filled. */
final class Sketch {
  private static final double WITHIN_BOX = 0.5;
  private static final double TAIL = 0.3;

  private static final List<String> COLOURS_IEC = List.of("brown", "black", "grey", "blue");
  private static final List<String> COLOURS_NEC = List.of("black", "red", "blue", "white");

  /** Which kind of wire, and so which size and insulation. */
  private enum Use {
    LOAD,
    CONTROL,
    ELV
  }

  /** A run between two places. */
  private record Lane(String from, String to, Use use) {}

  private final Job job;
  private final Arrangement arrangement;
  private final Figures figures;
  private final Map<String, PartKind> kinds;
  private final Values values;
  private final Map<String, String> parts = new LinkedHashMap<>();
  private final Map<Lane, String> runs = new LinkedHashMap<>();
  private final List<String> wires = new ArrayList<>();
  private final List<String> fromLine = new ArrayList<>();
  private final List<String> toNeutral = new ArrayList<>();

  private Sketch(Job job, Arrangement arrangement, Figures figures, Map<String, PartKind> kinds) {
    this.job = job;
    this.arrangement = arrangement;
    this.figures = figures;
    this.kinds = kinds;
    this.values = new Values(job, arrangement, figures);
  }

  /** Writes one. */
  static Sketch of(Job job, Arrangement arrangement, Figures figures, Map<String, PartKind> kinds) {
    Sketch sketch = new Sketch(job, arrangement, figures, kinds);
    sketch.listParts();
    sketch.wireLoad();
    sketch.wireControl();
    sketch.wireElv();
    return sketch;
  }

  /** Designation to kind, the mains and the load included. */
  Map<String, String> parts() {
    return parts;
  }

  /** What to ask for, by designation; parts that are there are left out. */
  Map<String, String> shopping() {
    Map<String, String> all = new LinkedHashMap<>();
    parts.forEach(
        (name, kind) ->
            kind(kind)
                .buy()
                .ifPresent(
                    buy -> all.put(name, PartKind.filled(buy, gap -> values.of(name, gap)))));
    return all;
  }

  /** What a run is for, {@code load}, {@code control} or {@code elv}; empty if there is none. */
  Optional<String> useOf(String run) {
    return runs.entrySet().stream()
        .filter(e -> e.getValue().equals(run))
        .map(e -> e.getKey().use().name().toLowerCase(Locale.ROOT))
        .findFirst();
  }

  /** What a wire is for, by its number; empty if it lies in no run. */
  Optional<String> useOf(int wire) {
    if (wire < 1 || wire > wires.size()) {
      return Optional.empty();
    }
    return runs.values().stream()
        .filter(r -> wires.get(wire - 1).matches(".*(run: | in )" + r + "\\b.*"))
        .findFirst()
        .flatMap(this::useOf);
  }

  private PartKind kind(String name) {
    PartKind kind = kinds.get(name);
    if (kind == null) {
      throw new IllegalStateException("there is no part " + name);
    }
    return kind;
  }

  private void listParts() {
    parts.put("G0", "mains");
    if (hasRcd()) {
      parts.put("F0", job.brief().hasGroup("rcd") ? "rcd-there" : "rcd");
    }
    parts.put("F1", "load-breaker");
    if (arrangement.hasControl()) {
      parts.put("F2", "control-breaker");
      if (job.nec()) {
        parts.put("F4", "control-fuse");
      }
    }
    parts.put("U1", "controller");
    arrangement
        .parts()
        .forEach(
            (name, kind) -> {
              boolean there =
                  (kind.equals("thermostat") || kind.equals("cut-out"))
                      && job.brief().hasGroup(kind);
              parts.put(name, there ? kind + "-there" : kind);
            });
    parts.put("E1", "heater");
  }

  /** Outside North America every water heater gets one. */
  private boolean hasRcd() {
    return !job.nec() || job.brief().hasGroup("rcd");
  }

  // -- wires ---------------------------------------------------------------------------------

  private void wireLoad() {
    int conductors = job.lines() + (job.neutral() ? 1 : 0);
    for (int i = 1; i <= conductors; i++) {
      boolean neutral = i > job.lines();
      String at = "G0." + mainsPin(i, neutral);
      boolean supply = true;
      if (parts.containsKey("F0")) {
        at = through(at, "F0." + (neutral ? "N1" : 2 * i - 1), Use.LOAD, i, neutral, supply);
        at = "F0." + (neutral ? "N2" : 2 * i);
      }
      for (String token : arrangement.load()) {
        String part = token.split("\\.", 2)[0];
        String in = pin(token, part, i, neutral, true);
        if (!in.isEmpty()) {
          at = through(at, part + "." + in, Use.LOAD, i, neutral, at.startsWith("G0"));
          at = part + "." + pin(token, part, i, neutral, false);
        }
      }
    }
    wire("G0.PE", "E1.PE", Use.LOAD, job.nec() ? "green" : "green-yellow", "");
  }

  private String through(String from, String to, Use use, int i, boolean neutral, boolean supply) {
    boolean thick = supply && place("G0").equals(place(to.split("\\.", 2)[0]));
    wire(from, to, use, colour(i, neutral), thick ? "supply.size" : "");
    return to;
  }

  private String mainsPin(int i, boolean neutral) {
    return neutral ? "N" : job.phases().equals("1") ? "L" : "L" + i;
  }

  /** The pin of a part in the load's way; empty if this conductor passes it by. */
  private String pin(String token, String part, int i, boolean neutral, boolean in) {
    if (part.equals("E1")) {
      return neutral && job.isThree() ? "N" : Integer.toString(i);
    }
    if (token.contains(".")) {
      String[] pins = token.split("[./]", 3);
      return i == 1 ? pins[in ? 1 : 2] : "";
    }
    if (part.equals("F1")) {
      boolean has = !neutral || values.of("F1", "breaker-poles").endsWith("N");
      return !has ? "" : neutral ? (in ? "N1" : "N2") : Integer.toString(2 * i - (in ? 1 : 0));
    }
    int poles = part.startsWith("Q") ? values.contactorPoles() : cutPoles();
    return i > poles ? "" : Integer.toString(2 * i - (in ? 1 : 0));
  }

  private int cutPoles() {
    return job.brief().hasGroup("cut-out")
        ? job.brief().whole("cut-out.poles").map(w -> w.value()).orElse(1)
        : values.cutPoles();
  }

  private void wireControl() {
    if (!arrangement.hasControl()) {
      return;
    }
    String colour = colour(1, false);
    String before = hasRcd() ? "F0.2" : "G0." + mainsPin(1, false);
    wire(before, "F2.1", Use.CONTROL, colour, "");
    if (!job.nec()) {
      if (!job.neutral()) {
        wire("G0.N", "F0.N1", Use.LOAD, colour(0, true), "supply.size");
      }
      wire("F0.N2", "F2.N1", Use.CONTROL, colour(0, true), "");
    }
    String line = "F2.2";
    if (parts.containsKey("F4")) {
      wire("F2.2", "F4.1", Use.CONTROL, colour, "");
      line = "F4.2";
    }
    String neutral = job.nec() ? "G0.N" : "F2.N2";
    List<List<String>> ways = new ArrayList<>();
    for (String way : arrangement.control()) {
      ways.add(List.of(way.split(" ")));
    }
    for (List<String> way : ways) {
      follow(way, "L", "N", Use.CONTROL);
    }
    bring(line, fromLine, "X1", colour);
    bring(neutral, toNeutral, "X2", colour(0, true));
  }

  /** Takes a line or neutral to each who wants it, over bridged terminals if there are many. */
  private void bring(String from, List<String> to, String strip, String colour) {
    boolean many = to.size() > 2;
    if (many) {
      parts.put(strip, "terminals");
      wire(from, strip + ".1", Use.CONTROL, colour, "");
    }
    for (int i = 0; i < to.size(); i++) {
      wire(many ? strip + "." + (i + 2) : from, to.get(i), Use.CONTROL, colour, "");
    }
  }

  private void wireElv() {
    String by = arrangement.supply().map(part -> part + ".").orElse("U1.V");
    for (String way : arrangement.elv()) {
      List<String> named = new ArrayList<>();
      for (String token : way.split(" ", -1)) {
        named.add(token.equals("+") || token.equals("-") ? by + token : token);
      }
      follow(named, "", "", Use.ELV);
    }
  }

  /** Wires a way from token to token; its ends may be the line or the neutral. */
  private void follow(List<String> way, String line, String neutral, Use use) {
    boolean behindCoil = false;
    String at = "";
    for (String token : way) {
      if (token.equals(line)) {
        at = line;
        continue;
      }
      if (token.equals(neutral)) {
        toNeutral.add(at);
        continue;
      }
      String[] pins = token.split("[./]", 3);
      String in = pins[0] + "." + pins[1];
      if (at.equals(line) && !line.isEmpty()) {
        fromLine.add(in);
      } else if (!at.isEmpty()) {
        wire(at, in, use, colour(behindCoil ? 0 : 1, behindCoil), "");
      }
      at = pins[0] + "." + pins[pins.length - 1];
      behindCoil |= pins[1].equals("A1");
    }
  }

  private void wire(String from, String to, Use use, String colour, String size) {
    String a = place(from.split("\\.", 2)[0]);
    String b = place(to.split("\\.", 2)[0]);
    String ends = "from: %s, to: %s".formatted(from, to);
    String painted = use == Use.ELV ? "" : ", colour: " + colour;
    String sized = size.isEmpty() ? "" : ", size: " + figures.must(size);
    if (a.equals("load") && b.equals("load")) {
      wires.add(
          "{%s, length: %s, size: %s, insulation: %s%s}"
              .formatted(ends, length(TAIL), size(use), insulation(use), painted));
      return;
    }
    String run = runs.computeIfAbsent(lane(a, b, use), k -> "W" + (runs.size() + 1));
    wires.add(
        use == Use.ELV && sized.isEmpty()
            ? "%s to %s in %s".formatted(from, to, run)
            : "{%s, run: %s%s%s}".formatted(ends, run, sized, painted));
  }

  private static Lane lane(String a, String b, Use use) {
    return a.compareTo(b) <= 0 ? new Lane(a, b, use) : new Lane(b, a, use);
  }

  private String place(String part) {
    String kind = parts.get(part);
    return kind == null ? "box" : kind(kind).place();
  }

  private String colour(int i, boolean neutral) {
    List<String> colours = job.nec() ? COLOURS_NEC : COLOURS_IEC;
    return neutral ? colours.get(3) : colours.get(i - 1);
  }

  // -- text ----------------------------------------------------------------------------------

  private double metres(Lane lane) {
    if (lane.from().equals(lane.to())) {
      return WITHIN_BOX;
    }
    double sum = 0;
    for (String place : List.of(lane.from(), lane.to())) {
      sum +=
          switch (place) {
            case "board" -> job.boardToBox();
            case "load" -> job.boxToLoad();
            case "controller" -> job.controllerToBox();
            default -> 0;
          };
    }
    return Math.max(TAIL, sum);
  }

  private static String length(double metres) {
    return Printed.given(metres, Dimension.LENGTH);
  }

  private String size(Use use) {
    return figures.must(use.name().toLowerCase(Locale.ROOT) + ".size");
  }

  private String insulation(Use use) {
    return use == Use.ELV ? "300 V" : job.nec() ? "600 V" : "750 V";
  }

  /** The netlist. */
  String text(List<String> head, String switching) {
    StringBuilder out = new StringBuilder();
    out.append("# yaml-language-server: $schema=coilwright.schema.json\n");
    head.forEach(line -> out.append(line.isEmpty() ? "#\n" : "# " + line + "\n"));
    out.append("coilwright: 1\n\ncircuit:\n  title: ")
        .append(Brief.quoted(title()))
        .append("\n\nsite:\n  mains: ")
        .append(job.mains())
        .append('\n');
    job.island().ifPresent(i -> out.append("  island: ").append(i).append('\n'));
    out.append("  enclosure-air: ").append(Printed.of(job.air())).append('\n');
    job.brief()
        .quantity("room")
        .ifPresent(q -> out.append("  ambient: ").append(q.text()).append('\n'));
    job.brief()
        .quantity("altitude")
        .ifPresent(q -> out.append("  altitude: ").append(q.text()).append('\n'));
    out.append("  practice: ").append(job.nec() ? "nec" : "iec").append("\n\nparts:\n");
    Map<String, String> buy = shopping();
    parts.forEach(
        (name, kind) -> {
          if (buy.containsKey(name)) {
            out.append("  # buy: ").append(buy.get(name)).append('\n');
          }
          out.append(part(name, kind(kind)));
        });
    out.append("\nruns:\n");
    runs.forEach((lane, name) -> out.append(run(lane, name)));
    out.append("\nwires:\n");
    wires.forEach(wire -> out.append("  - ").append(wire).append('\n'));
    out.append("\nintent:\n  E1: ").append(intent()).append('\n');
    out.append(switching);
    return out.toString();
  }

  private String title() {
    return job.brief()
        .word("title")
        .map(w -> w.value())
        .orElse(
            "%s element, %s"
                .formatted(
                    Printed.given(job.power().nominal(), Dimension.POWER), arrangement.name()));
  }

  private String intent() {
    return arrangement.inCoil() ? "U1.heat and B1" : "U1.heat";
  }

  private String part(String name, PartKind kind) {
    String text = PartKind.filled(kind.netlist(), gap -> values.of(name, gap)).strip();
    if (text.startsWith("{")) {
      return "  %s: %s\n".formatted(name, text);
    }
    StringBuilder out = new StringBuilder("  " + name + ":\n");
    text.lines().filter(l -> !l.isBlank()).forEach(l -> out.append("    " + l + "\n"));
    return out.toString();
  }

  private String run(Lane lane, String name) {
    boolean inside = lane.from().equals(lane.to());
    return "  %s: {length: %s, size: %s, insulation: %s, installed: %s%s}  # %s, %s\n"
        .formatted(
            name,
            length(metres(lane)),
            size(lane.use()),
            insulation(lane.use()),
            inside ? "panel" : "B2",
            lane.use() == Use.ELV ? ", flexible: true" : "",
            inside ? "in the " + lane.from() : lane.from() + " to " + lane.to(),
            switch (lane.use()) {
              case LOAD -> "element";
              case CONTROL -> "control, mains";
              case ELV -> "control, extra-low voltage";
            });
  }
}
