package org.coilwright.solve;

import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.netlist.Terminal;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;

/** Reads off a state what a coil, a load, a contact or a source does in it. */
final class Readings {
  /** A load that takes less than this share of its rated power is off. */
  private static final double ON = 0.01;

  /** Volts and amperes below these are the rest of a computation. */
  private static final double NOTHING_VOLTS = 1e-6;

  private static final double NOTHING_AMPS = 1e-9;

  /** Zones with more coils and loads than this are not solved once for each of them alone. */
  private static final int MOST_ALONE = 64;

  private final Grid grid;
  private final Map<Zone, Group> groupOf;
  private final Map<String, CoilModel> coils;
  private final Air air;
  private final Map<Situation, Map<String, Double>> highest = new HashMap<>();

  Readings(Grid grid, Map<Zone, Group> groupOf, Map<String, CoilModel> coils, Air air) {
    this.grid = grid;
    this.groupOf = groupOf;
    this.coils = coils;
    this.air = air;
  }

  Situation situation(Zone zone, State state) {
    Group group = groupOf.get(zone);
    if (group == null) {
      throw new IllegalStateException("zone " + zone.number + " is in no group");
    }
    return situation(group, state);
  }

  private Situation situation(Group group, State state) {
    return group.situation(bits(group, state));
  }

  /** A group's own part of a state. */
  BitSet bits(Group group, State state) {
    BitSet bits = new BitSet();
    for (int slot = 0; slot < group.firstSource(); slot++) {
      int variable = group.variables.get(slot);
      Boolean is =
          variable < grid.variables.firstRelay()
              ? state.positions().get(grid.variables.columns().get(variable))
              : state
                  .pulledIn()
                  .get(grid.variables.relays().get(variable - grid.variables.firstRelay()));
      bits.set(slot, Boolean.TRUE.equals(is));
    }
    return bits;
  }

  private Zone zoneOf(Branch branch) {
    return grid.zoneOf(branch)
        .orElseThrow(() -> new IllegalArgumentException("not of this circuit: " + branch.id()));
  }

  private static Element elementOf(Zone zone, Branch branch) {
    return zone.element(branch).orElseThrow();
  }

  CoilReading coil(String relay, State state) {
    Branch.Coil coil =
        grid.circuit.branchesOf(relay).stream()
            .filter(Branch.Coil.class::isInstance)
            .map(Branch.Coil.class::cast)
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no relay " + relay));
    Zone zone = zoneOf(coil);
    Element element = elementOf(zone, coil);
    Situation situation = situation(zone, state);
    ZoneFlow nominal = situation.flow(zone, Corner.NOMINAL);
    ZoneFlow low = situation.flow(zone, Corner.LOWEST);
    double direct = nominal.directVolts(element);
    double alternating = nominal.alternatingVolts(element);
    CurrentKind kind =
        Math.max(Math.abs(direct), alternating) < NOTHING_VOLTS
            ? CurrentKind.UNSTATED
            : Math.abs(direct) >= alternating ? CurrentKind.DC : CurrentKind.AC;
    Optional<Source> source = sourceOf(nominal, element, kind);
    double lowSupply =
        source
            .map(s -> grid.sources.volts(s, Level.LOW) * situation.share(s, Corner.LOWEST))
            .orElse(0.0);
    double highSupply = source.map(s -> grid.sources.volts(s, Level.HIGH)).orElse(0.0);
    ZoneFlow pickUp = situation.flow(zone, Corner.PICK_UP);
    boolean in = Boolean.TRUE.equals(state.pulledIn().get(relay));
    return new CoilReading(
        kind == CurrentKind.DC ? direct : alternating < NOTHING_VOLTS ? 0 : alternating,
        clean(low.volts(element)),
        lowestCorner(lowSupply, coilModel(relay), source.isPresent()),
        clean(highestVolts(situation, zone, element)),
        highestCorner(highSupply, source.isPresent()),
        kind,
        amps(nominal, element),
        amps(pickUp, element),
        in,
        source.map(Source::part),
        lowSupply);
  }

  private CoilModel coilModel(String relay) {
    return Objects.requireNonNull(coils.get(relay));
  }

  private static double clean(double volts) {
    return volts < NOTHING_VOLTS ? 0 : volts;
  }

  /** A device that only measures is not to be seen drawing current. */
  private static double amps(ZoneFlow flow, Element element) {
    Optional<Impedance> z = element.on().at(Level.NOMINAL, flow.zone().island.hasDirect(), false);
    double amps = flow.amps(element);
    boolean meter = z.filter(i -> i.size() >= Values.METER).isPresent();
    return meter || amps < NOTHING_AMPS ? 0 : amps;
  }

  private String lowestCorner(double supply, CoilModel coil, boolean fed) {
    if (!fed) {
      return "not fed";
    }
    String draws =
        coil.kind == CurrentKind.AC ? "coils pulling in" : "coil cold, when it draws most";
    return "supply at "
        + Printed.volts(supply)
        + ", line at "
        + Printed.of(air.hottest().value(), Dimension.TEMPERATURE)
        + ", "
        + draws;
  }

  private String highestCorner(double supply, boolean fed) {
    return fed
        ? "supply at "
            + Printed.volts(supply)
            + ", line at "
            + Printed.of(air.coldest().value(), Dimension.TEMPERATURE)
            + ", no other load"
        : "not fed";
  }

  /** The highest a coil can get: alone on its line, unless it lives on what others let through. */
  private double highestVolts(Situation situation, Zone zone, Element element) {
    return highest
        .computeIfAbsent(situation, s -> new HashMap<>())
        .computeIfAbsent(
            zone.number + "." + element.number(),
            e -> {
              double together = situation.flow(zone, Corner.HIGHEST).volts(element);
              long others = zone.elements.stream().filter(Element::isConsumer).count();
              if (others < 2 || others > MOST_ALONE) {
                return together;
              }
              ZoneFlow alone =
                  zone.solve(
                      Corner.HIGHEST,
                      situation.settings(Corner.HIGHEST),
                      other -> !other.isConsumer() || other.number() == element.number());
              return Math.max(together, alone.volts(element));
            });
  }

  private static Optional<Source> sourceOf(ZoneFlow flow, Element element, CurrentKind kind) {
    Ways ways = Ways.withPassives(flow);
    return java.util.stream.Stream.of(element.from(), element.to())
        .flatMap(end -> ways.sourcesAt(end).stream())
        .filter(s -> kind == CurrentKind.UNSTATED || s.isDirect() == (kind == CurrentKind.DC))
        .findFirst();
  }

  LoadReading load(String load, State state) {
    double watts = 0;
    double rated = 0;
    Map<String, double[]> sums = new LinkedHashMap<>();
    Map<String, List<String>> linesAt = new LinkedHashMap<>();
    for (Branch branch : grid.circuit.branchesOf(load)) {
      if (!(branch instanceof Branch.LoadElement element)) {
        continue;
      }
      rated += element.ratedWatts().orElse(0);
      Zone zone = zoneOf(branch);
      ZoneFlow flow = situation(zone, state).flow(zone, Corner.NOMINAL);
      Element e = elementOf(zone, branch);
      if (amps(flow, e) == 0) {
        continue;
      }
      watts += flow.watts(e);
      Ways ways = Ways.withPassives(flow);
      add(sums, linesAt, load, element.from(), e.from(), ways, flow, e, 1);
      add(sums, linesAt, load, element.to(), e.to(), ways, flow, e, -1);
    }
    Map<String, Double> amps = new LinkedHashMap<>();
    sums.forEach(
        (pin, sum) -> {
          double size = Math.hypot(sum[0], Math.hypot(sum[1], sum[2]));
          if (size > NOTHING_AMPS) {
            amps.put(pin, size);
          }
        });
    List<String> lines =
        amps.keySet().stream()
            .flatMap(pin -> linesAt.getOrDefault(pin, List.of()).stream())
            .distinct()
            .sorted()
            .toList();
    return new LoadReading(watts > 0 && watts >= ON * rated, watts, amps, lines);
  }

  private static void add(
      Map<String, double[]> sums,
      Map<String, List<String>> linesAt,
      String load,
      org.coilwright.circuit.Node node,
      int index,
      Ways ways,
      ZoneFlow flow,
      Element e,
      int sign) {
    for (Terminal terminal : node.terminals()) {
      if (terminal.part().equals(load)) {
        double[] sum = sums.computeIfAbsent(terminal.pin(), p -> new double[3]);
        sum[0] += sign * flow.direct().iRe[e.number()];
        sum[1] += sign * flow.alternating().iRe[e.number()];
        sum[2] += sign * flow.alternating().iIm[e.number()];
        linesAt.put(terminal.pin(), ways.linesAt(index));
      }
    }
  }

  ContactReading contact(Contact contact, State state) {
    Zone zone = zoneOf(contact);
    Element element = elementOf(zone, contact);
    Situation situation = situation(zone, state);
    ZoneFlow nominal = situation.flow(zone, Corner.NOMINAL);
    boolean closed = nominal.conducts().get(element.number());
    ZoneFlow shown = closed ? nominal : situation.flow(zone, Corner.HIGHEST);
    CurrentKind kind =
        zone.island.hasMains()
            ? zone.island.hasDirect()
                ? Math.abs(shown.directVolts(element)) > shown.alternatingVolts(element)
                    ? CurrentKind.DC
                    : CurrentKind.AC
                : CurrentKind.AC
            : zone.island.hasDirect() ? CurrentKind.DC : CurrentKind.UNSTATED;
    return new ContactReading(
        closed,
        floor(nominal.amps(element)),
        floor(situation.flow(zone, Corner.PICK_UP).amps(element)),
        closed ? 0 : clean(openVolts(shown, element)),
        kind);
  }

  private static double floor(double amps) {
    return amps < NOTHING_AMPS ? 0 : amps;
  }

  /** A side that hangs on nothing counts as joined to the reference. */
  private static double openVolts(ZoneFlow flow, Element e) {
    double direct = side(flow.direct(), e.from(), true) - side(flow.direct(), e.to(), true);
    double re = side(flow.alternating(), e.from(), true) - side(flow.alternating(), e.to(), true);
    double im = side(flow.alternating(), e.from(), false) - side(flow.alternating(), e.to(), false);
    return Math.hypot(direct, Math.hypot(re, im));
  }

  private static double side(Network.Flow flow, int node, boolean real) {
    return flow.grounded[node] ? (real ? flow.vRe[node] : flow.vIm[node]) : 0;
  }

  SupplyReading supply(Source source, State state) {
    double[] steady = new double[3];
    double[] pickUp = new double[3];
    double watts = 0;
    for (Group group : new java.util.LinkedHashSet<>(groupOf.values())) {
      if (group.zones.stream().noneMatch(z -> Groups.feeds(source, z))) {
        continue;
      }
      Situation situation = situation(group, state);
      add(steady, situation.amps(source, Corner.NOMINAL));
      add(pickUp, situation.amps(source, Corner.PICK_UP));
      watts += watts(source, situation);
    }
    return new SupplyReading(size(steady), size(pickUp), watts);
  }

  /** What one group asks of a source, as if that had no limit. */
  SupplyReading asked(Source source, Situation situation) {
    if (situation.group.zones.stream().noneMatch(z -> Groups.feeds(source, z))) {
      return new SupplyReading(0, 0, 0);
    }
    double[] amps = situation.asked(source, Corner.NOMINAL);
    double re = grid.sources.re(source, Level.NOMINAL);
    double im = grid.sources.im(source, Level.NOMINAL);
    return new SupplyReading(
        size(amps),
        size(situation.asked(source, Corner.PICK_UP)),
        source.isDirect() ? re * amps[0] : re * amps[1] + im * amps[2]);
  }

  private double watts(Source source, Situation situation) {
    double[] amps = situation.amps(source, Corner.NOMINAL);
    Settings settings = situation.settings(Corner.NOMINAL);
    double re = settings.re(source, Corner.NOMINAL);
    double im = settings.im(source, Corner.NOMINAL);
    return source.isDirect() ? re * amps[0] : re * amps[1] + im * amps[2];
  }

  private static void add(double[] sum, double[] more) {
    for (int i = 0; i < sum.length; i++) {
      sum[i] += more[i];
    }
  }

  private static double size(double[] amps) {
    return floor(Math.hypot(amps[0], Math.hypot(amps[1], amps[2])));
  }
}
