package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Where the text of each conductor stands: beside a stretch that it shares with nothing. */
final class ConductorTexts {
  private static final double PAD = 4;

  private final Plan plan;
  private final Extent extent;
  private final Notes notes;
  private final Map<String, Map<Column, Double>> labels = new TreeMap<>();
  private final Map<String, Double> zoneHeights = new HashMap<>();
  private final Map<Joint, Place> places = new HashMap<>();

  /** Where the text of a conductor stands. */
  record Place(int channel, boolean upper, Column column) {
    String zone() {
      return Channels.zone(channel, upper);
    }
  }

  ConductorTexts(Plan plan, Extent extent, Notes notes) {
    this.plan = plan;
    this.extent = extent;
    this.notes = notes;
    text();
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

  /** Text of a conductor that runs across is one line. */
  double acrossWidth(Route route) {
    double markers = extent.markers(notes.markers(route.joint()));
    return extent.text(String.join(" ", route.joint().lines())) + markers + 4;
  }

  Optional<Place> place(Joint joint) {
    return Optional.ofNullable(places.get(joint));
  }

  double zoneHeight(int channel, boolean upper) {
    return zoneHeights.getOrDefault(Channels.zone(channel, upper), 0.0);
  }
}
