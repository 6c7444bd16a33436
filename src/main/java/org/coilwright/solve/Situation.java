// Over 250 lines: corners and levels belong to one table.
package org.coilwright.solve;

import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Source;
import org.jspecify.annotations.Nullable;

/** A group with everything in it set one way, and what follows. Solved when first asked. */
final class Situation {
  /** A source at its limit is found to within this share of it. */
  private static final double CLOSE = 1e-12;

  private static final int MOST_STEPS = 60;

  /** Less than this share of the mains and a device is not fed. */
  private static final double FED = 0.5;

  final Group group;
  final BitSet bits;
  private final Map<Corner, Solved> solved = new HashMap<>();
  private final Map<Corner, Map<Zone, ZoneFlow>> unfolded = new HashMap<>();
  private @Nullable Boolean mayFold;

  Situation(Group group, BitSet bits) {
    this.group = group;
    this.bits = bits;
  }

  /** Flows at a corner, with the share of its voltage that each limited source keeps. */
  private record Solved(Map<Zone, ZoneFlow> flows, Map<Source, Double> shares) {}

  private final class At implements Settings {
    private final Map<Source, Double> shares;

    At(Map<Source, Double> shares) {
      this.shares = shares;
    }

    @Override
    public boolean is(int variable) {
      return value(variable);
    }

    @Override
    public boolean isLive(Source source) {
      int variable = group.all.ofSource(source);
      return variable < 0 || value(variable);
    }

    @Override
    public double re(Source source, Corner corner) {
      return grid().setup.sources.re(source, grid().alteration.level(source, corner))
          * shares.getOrDefault(source, 1.0);
    }

    @Override
    public double im(Source source, Corner corner) {
      return grid().setup.sources.im(source, grid().alteration.level(source, corner))
          * shares.getOrDefault(source, 1.0);
    }
  }

  private Grid grid() {
    return group.grid;
  }

  private boolean value(int variable) {
    int slot = group.slot(variable);
    return slot >= 0 && bits.get(slot);
  }

  /** How sources stand at a corner. */
  Settings settings(Corner corner) {
    return mayFold() ? new At(solved(corner).shares()) : new At(Map.of());
  }

  /** Solves one zone afresh, without the elements that {@code present} refuses. */
  ZoneFlow solve(Zone zone, Corner corner, Predicate<Element> present) {
    return zone.solve(corner, settings(corner), present);
  }

  /** True if some source comes to its limit when all draws most. */
  private boolean mayFold() {
    if (mayFold == null) {
      mayFold = group.limited.stream().anyMatch(s -> over(s, feeling(s, Corner.HEAVIEST.held())));
    }
    return mayFold;
  }

  ZoneFlow flow(Zone zone, Corner corner) {
    if (!group.holds(zone)) {
      throw new IllegalArgumentException("zone " + zone.number + " is not of this group");
    }
    return mayFold()
        ? Objects.requireNonNull(solved(corner).flows().get(zone))
        : unfolded(zone, corner);
  }

  /** Solved when first asked for, with every source at its own voltage. */
  private ZoneFlow unfolded(Zone zone, Corner corner) {
    return unfolded
        .computeIfAbsent(corner, c -> new HashMap<>())
        .computeIfAbsent(zone, z -> z.solve(corner, new At(Map.of())));
  }

  /** The zones in which a source is felt, with every source at its own voltage. */
  private Map<Zone, ZoneFlow> feeling(Source source, Corner corner) {
    Map<Zone, ZoneFlow> flows = new LinkedHashMap<>();
    for (Zone zone : group.zones) {
      if (zone.sources().contains(source)) {
        flows.put(zone, unfolded(zone, corner));
      }
    }
    return flows;
  }

  /** Share of its voltage that a source keeps: below one when it is at its current limit. */
  double share(Source source, Corner corner) {
    return !mayFold() ? 1.0 : solved(corner).shares().getOrDefault(source, 1.0);
  }

  private Solved solved(Corner corner) {
    Solved found = solved.get(corner);
    if (found == null) {
      found = solve(corner);
      solved.put(corner, found);
    }
    return found;
  }

  /**
   * A source at its limit folds back. For the short time that armatures move it is taken to keep
   * the voltage it has once they are in: what they ask of it meanwhile is a question of its own.
   */
  private Solved solve(Corner corner) {
    if (corner.pulling()) {
      Map<Source, Double> held = solved(corner.held()).shares();
      return new Solved(flows(corner, held), held);
    }
    Map<Source, Double> shares = new HashMap<>();
    Map<Zone, ZoneFlow> flows = flows(corner, shares);
    for (int sweep = 0; sweep < group.limited.size(); sweep++) {
      boolean folded = false;
      for (Source source : group.limited) {
        if (over(source, flows)) {
          folded = true;
          flows = fold(source, corner, shares, flows);
        }
      }
      if (!folded) {
        break;
      }
    }
    return new Solved(flows, shares);
  }

  private boolean over(Source source, Map<Zone, ZoneFlow> flows) {
    double limit = grid().alteration.limit(source).orElse(Double.POSITIVE_INFINITY);
    return amps(source, flows)[0] > limit * (1 + CLOSE);
  }

  /**
   * Lowers a source's voltage until it delivers its limit; to nothing if others drive more than
   * that through it even then.
   */
  private Map<Zone, ZoneFlow> fold(
      Source source, Corner corner, Map<Source, Double> shares, Map<Zone, ZoneFlow> atFull) {
    double limit = grid().alteration.limit(source).orElse(0);
    double low = 0;
    double lowAmps = 0;
    double high = shares.getOrDefault(source, 1.0);
    double highAmps = amps(source, atFull)[0];
    Map<Zone, ZoneFlow> flows = atFull;
    for (int step = 0; step < MOST_STEPS; step++) {
      double share =
          step % 8 == 7
              ? (low + high) / 2
              : low + (high - low) * (limit - lowAmps) / (highAmps - lowAmps);
      shares.put(source, share);
      flows = flows(corner, shares);
      double amps = amps(source, flows)[0];
      if (Math.abs(amps - limit) <= limit * CLOSE || high - low < CLOSE) {
        break;
      }
      if (amps > limit) {
        high = share;
        highAmps = amps;
      } else {
        low = share;
        lowAmps = amps;
      }
    }
    return flows;
  }

  private Map<Zone, ZoneFlow> flows(Corner corner, Map<Source, Double> shares) {
    Map<Zone, ZoneFlow> flows = new LinkedHashMap<>();
    Settings settings = new At(shares);
    for (Zone zone : group.zones) {
      flows.put(
          zone,
          shares.isEmpty()
              ? zone.solve(corner, settings)
              : zone.solve(corner, settings, e -> true));
    }
    return flows;
  }

  /** Current a source delivers into this group: direct, then the phasor. */
  double[] amps(Source source, Corner corner) {
    return amps(source, mayFold() ? solved(corner).flows() : feeling(source, corner));
  }

  /**
   * Current it would deliver if it kept its voltage whatever is asked of it: direct, then the
   * phasor. Only a source at its limit delivers less.
   */
  double[] asked(Source source, Corner corner) {
    return amps(source, feeling(source, corner));
  }

  private static double[] amps(Source source, Map<Zone, ZoneFlow> flows) {
    double[] sum = new double[3];
    flows.forEach(
        (zone, flow) -> {
          if (zone.sources().contains(source)) {
            flow.addDelivered(source, sum);
          }
        });
    return sum;
  }

  /** Which of the group's sources are fed, numbered from zero. */
  BitSet liveSources() {
    BitSet live = new BitSet();
    for (int slot = group.firstSource(); slot < group.variables.size(); slot++) {
      Source source = group.all.source(group.variables.get(slot));
      if (group.all.inputOf(source).filter(this::isFed).isPresent()) {
        live.set(slot - group.firstSource());
      }
    }
    return live;
  }

  private boolean isFed(Branch.Input input) {
    Zone zone = grid().zoneOf(input).orElse(null);
    if (zone == null) {
      return false;
    }
    ZoneFlow flow = flow(zone, Corner.NOMINAL);
    double volts = zone.element(input).map(flow::volts).orElse(0.0);
    double mains =
        zone.reference.sources().stream()
            .mapToDouble(s -> grid().setup.sources.volts(s, Level.NOMINAL))
            .min()
            .orElse(0);
    if (Math.abs(volts - FED * mains) < zone.sag) {
      group.delicate.add(zone);
    }
    return mains > 0 && volts > FED * mains;
  }

  /** Where an armature goes; out if its coil is broken. */
  boolean armature(String relay, boolean before) {
    if (grid().alteration.stuck().contains(relay)) {
      return true;
    }
    CoilModel model = grid().setup.coils.get(relay);
    Zone zone = group.zoneOfCoil(relay).orElse(null);
    Element coil = zone == null ? null : zone.coil(relay).orElse(null);
    if (model == null || zone == null || coil == null) {
      return false;
    }
    ZoneFlow flow = flow(zone, Corner.NOMINAL);
    double direct = flow.directVolts(coil);
    double alternating = flow.alternatingVolts(coil);
    boolean settles = model.settles(before, direct, alternating);
    if (zone.sag > 0
        && (settles != settles(model, before, direct, alternating, -zone.sag)
            || settles != settles(model, before, direct, alternating, zone.sag))) {
      group.delicate.add(zone);
    }
    return settles;
  }

  /** The same with so many volts more on the coil. */
  private static boolean settles(
      CoilModel model, boolean before, double direct, double alternating, double more) {
    return model.settles(
        before,
        Math.copySign(Math.max(0, Math.abs(direct) + more), direct),
        Math.max(0, alternating + more));
  }

  @Override
  public String toString() {
    return "situation " + bits + " of " + group.variables;
  }
}
