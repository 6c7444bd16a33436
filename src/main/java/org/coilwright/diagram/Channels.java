package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.coilwright.diagram.Unit.Port;

/**
 * The room between levels. From above: a zone where conductors that come from above have their
 * text, bars of the terminals above, conductors that run across, bars of the terminals below, a
 * zone for the text of conductors that go on downwards.
 */
final class Channels {
  private static final double BAR = 8;
  private static final double ACROSS = 8;
  private static final double ACROSS_WITH_TEXT = 16;
  private static final double PAD = 4;
  private static final double LEAST = 8;

  private final Plan plan;
  private final Extent extent;
  private final Notes notes;
  private final Map<Integer, Tracks> barsAbove = new HashMap<>();
  private final Map<Integer, Tracks> barsBelow = new HashMap<>();
  private final Map<Integer, Tracks> across = new HashMap<>();
  private final Set<Integer> withText = new LinkedHashSet<>();
  private final Map<String, Set<Column>> verticals = new TreeMap<>();
  private final Map<String, Map<Column, Double>> labels = new TreeMap<>();
  private final Map<String, Double> zoneHeights = new HashMap<>();
  private final Map<Joint, Place> places = new HashMap<>();

  /** Where the text of a conductor stands. */
  record Place(int channel, boolean upper, Column column) {
    String zone() {
      return Channels.zone(channel, upper);
    }
  }

  Channels(Plan plan, Extent extent, Notes notes) {
    this.plan = plan;
    this.extent = extent;
    this.notes = notes;
    for (int channel = 0; channel <= plan.depth(); channel++) {
      barsAbove.put(channel, new Tracks());
      barsBelow.put(channel, new Tracks());
      across.put(channel, new Tracks());
    }
    stretches();
    for (int channel = 0; channel <= plan.depth(); channel++) {
      bars(channel, true).lay();
      bars(channel, false).lay();
      across(channel).lay();
    }
    vertical();
    text();
  }

  private Tracks bars(int channel, boolean above) {
    return (above ? barsAbove : barsBelow).getOrDefault(channel, new Tracks());
  }

  private Tracks across(int channel) {
    return across.getOrDefault(channel, new Tracks());
  }

  static String zone(int channel, boolean upper) {
    return "channel " + channel + (upper ? " upper" : " lower");
  }

  /** A conductor's stretch across at one of its ends. */
  record End(Route route, boolean upper) {
    @Override
    public int hashCode() {
      return 2 * route.joint().hashCode() + (upper ? 1 : 0);
    }
  }

  private void stretches() {
    for (Unit unit : plan.places().keySet()) {
      for (Port port : unit.ports()) {
        if (plan.fabric().isBar(port)) {
          int from = plan.column(port).position();
          int to = from;
          for (Column column : landings(port)) {
            from = Math.min(from, column.position());
            to = Math.max(to, column.position());
          }
          bars(plan.channel(port), !port.isTop()).add(port, from, to);
        }
      }
    }
    for (Route route : plan.routes().values()) {
      int upper = plan.channel(route.upper());
      int lower = plan.channel(route.lower());
      if (route.isBetweenBars(plan)) {
        across(upper)
            .add(new End(route, true), route.column().position(), route.secondColumn().position());
        withText.add(upper);
        continue;
      }
      if (runsAcross(route, true)) {
        across(upper)
            .add(
                new End(route, true),
                plan.column(route.upper()).position(),
                route.column().position());
      }
      if (runsAcross(route, false)) {
        across(lower)
            .add(
                new End(route, false),
                plan.column(route.lower()).position(),
                route.column().position());
      }
    }
  }

  /** True if a conductor runs across before it comes to its upper or lower end. */
  boolean runsAcross(Route route, boolean upper) {
    Port end = upper ? route.upper() : route.lower();
    return !route.isAcross() && !plan.fabric().isBar(end) && plan.column(end) != route.column();
  }

  /** Columns on which conductors come to a bar. */
  List<Column> landings(Port bar) {
    List<Column> landings = new ArrayList<>();
    for (Joint joint : plan.fabric().at(bar)) {
      plan.route(joint)
          .ifPresent(
              r -> {
                if (r.upper() == bar) {
                  landings.add(r.column());
                }
                if (r.lower() == bar) {
                  landings.add(r.secondColumn());
                }
              });
    }
    return landings;
  }

  private void vertical() {
    for (Unit unit : plan.places().keySet()) {
      int level = plan.level(unit);
      for (Port port : unit.ports()) {
        Column column = plan.column(port);
        add(port.isTop() ? level : level + 1, !port.isTop(), column);
        if (plan.isFarBar(port)) {
          for (int channel = level + 1; channel <= plan.channel(port); channel++) {
            add(channel, true, column);
            if (channel < plan.channel(port)) {
              add(channel, false, column);
            }
          }
        }
      }
    }
    for (Route route : plan.routes().values()) {
      int from = plan.channel(route.upper());
      int to = plan.channel(route.lower());
      for (int channel = from; channel <= to; channel++) {
        if (channel > from) {
          add(channel, true, route.column());
        }
        if (channel < to) {
          add(channel, false, route.column());
        }
      }
    }
  }

  private void add(int channel, boolean upper, Column column) {
    verticals.computeIfAbsent(zone(channel, upper), z -> new LinkedHashSet<>()).add(column);
  }

  private void text() {
    List<Route> free = new ArrayList<>();
    for (Route route : plan.routes().values()) {
      if (route.isBetweenBars(plan) || route.joint().number() == Fabric.SAME_TERMINAL) {
        continue;
      }
      List<Place> candidates = candidates(route);
      if (candidates.size() == 1) {
        put(route, candidates.get(0));
      } else {
        free.add(route);
      }
    }
    for (Route route : free) {
      double needed = labelHeight(route.joint());
      Place best = null;
      double least = Double.MAX_VALUE;
      for (Place place : candidates(route)) {
        double cost = Math.max(0, needed - zoneHeights.getOrDefault(place.zone(), 0.0));
        if (cost < least) {
          least = cost;
          best = place;
        }
      }
      if (best != null) {
        put(route, best);
      }
    }
  }

  private void put(Route route, Place place) {
    Joint joint = route.joint();
    places.put(joint, place);
    zoneHeights.merge(place.zone(), labelHeight(joint), Math::max);
    labels
        .computeIfAbsent(place.zone(), z -> new HashMap<>())
        .merge(place.column(), labelWidth(joint), Math::max);
  }

  /** Stretches of a conductor, along a column, that nothing else shares. */
  private List<Place> candidates(Route route) {
    List<Place> candidates = new ArrayList<>();
    int from = plan.channel(route.upper());
    int to = plan.channel(route.lower());
    if (!plan.fabric().isBar(route.lower())) {
      candidates.add(new Place(to, !route.lower().isTop(), plan.column(route.lower())));
    }
    if (!plan.fabric().isBar(route.upper())) {
      candidates.add(new Place(from, !route.upper().isTop(), plan.column(route.upper())));
    }
    for (int channel = from; channel <= to; channel++) {
      if (channel > from) {
        candidates.add(new Place(channel, true, route.column()));
      }
      if (channel < to) {
        candidates.add(new Place(channel, false, route.column()));
      }
    }
    return candidates.stream().distinct().toList();
  }

  private double labelHeight(Joint joint) {
    int rows = joint.lines().size() + Extent.markerRows(notes.markers(joint).size());
    return rows * Type.LEADING + PAD;
  }

  double labelWidth(Joint joint) {
    double width = 0;
    for (String line : joint.lines()) {
      width = Math.max(width, extent.text(line));
    }
    for (List<Integer> row : Extent.rows(notes.markers(joint))) {
      width = Math.max(width, extent.markers(row));
    }
    return width + Extent.GAP;
  }

  double labelWidth(String zone, Column column) {
    return labels.getOrDefault(zone, Map.of()).getOrDefault(column, 0.0);
  }

  /** Every column on which something runs down in a channel. */
  Set<Column> verticals(int channel) {
    Set<Column> all = new LinkedHashSet<>(verticals.getOrDefault(zone(channel, true), Set.of()));
    all.addAll(verticals.getOrDefault(zone(channel, false), Set.of()));
    return all;
  }

  /** Text of a conductor that runs across is one line. */
  double acrossWidth(Route route) {
    double markers = extent.markers(notes.markers(route.joint()));
    return extent.text(String.join(" ", route.joint().lines())) + markers + 4;
  }

  Map<String, Set<Column>> verticals() {
    return verticals;
  }

  java.util.Optional<Place> place(Joint joint) {
    return java.util.Optional.ofNullable(places.get(joint));
  }

  private double zoneHeight(int channel, boolean upper) {
    return zoneHeights.getOrDefault(zone(channel, upper), 0.0);
  }

  private double pitch(int channel) {
    return withText.contains(channel) ? ACROSS_WITH_TEXT : ACROSS;
  }

  double height(int channel) {
    double tracks =
        BAR * (bars(channel, true).count() + bars(channel, false).count())
            + pitch(channel) * across(channel).count();
    double height =
        zoneHeight(channel, true)
            + zoneHeight(channel, false)
            + tracks
            + (tracks > 0 ? 2 * PAD : 0);
    return Math.max(height, LEAST);
  }

  /** Where a zone begins below the upper edge of its channel. */
  double zoneTop(int channel, boolean upper) {
    return upper ? 0 : height(channel) - zoneHeight(channel, false);
  }

  /** Where a bar lies below the upper edge of its channel. */
  double barY(Port port) {
    int channel = plan.channel(port);
    double y = zoneHeight(channel, true) + PAD + BAR / 2;
    if (!port.isTop()) {
      return y + BAR * bars(channel, true).of(port);
    }
    return y
        + BAR * (bars(channel, true).count() + bars(channel, false).of(port))
        + pitch(channel) * across(channel).count();
  }

  /** Where a conductor runs across, likewise. */
  double acrossY(Route route, boolean upper) {
    int channel = plan.channel(upper ? route.upper() : route.lower());
    double pitch = pitch(channel);
    return zoneHeight(channel, true)
        + PAD
        + BAR * bars(channel, true).count()
        + pitch * across(channel).of(new End(route, upper))
        + (withText.contains(channel) ? pitch - 4 : pitch / 2);
  }
}
