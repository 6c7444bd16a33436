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
  private final ConductorTexts texts;
  private final Map<Integer, Tracks> barsAbove = new HashMap<>();
  private final Map<Integer, Tracks> barsBelow = new HashMap<>();
  private final Map<Integer, Tracks> across = new HashMap<>();
  private final Set<Integer> withText = new LinkedHashSet<>();
  private final Map<String, Set<Column>> verticals = new TreeMap<>();

  Channels(Plan plan, ConductorTexts texts) {
    this.plan = plan;
    this.texts = texts;
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

  /** Every column on which something runs down in a channel. */
  Set<Column> verticals(int channel) {
    Set<Column> all = new LinkedHashSet<>(verticals.getOrDefault(zone(channel, true), Set.of()));
    all.addAll(verticals.getOrDefault(zone(channel, false), Set.of()));
    return all;
  }

  Map<String, Set<Column>> verticals() {
    return verticals;
  }

  private double pitch(int channel) {
    return withText.contains(channel) ? ACROSS_WITH_TEXT : ACROSS;
  }

  double height(int channel) {
    double tracks =
        BAR * (bars(channel, true).count() + bars(channel, false).count())
            + pitch(channel) * across(channel).count();
    double height =
        texts.zoneHeight(channel, true)
            + texts.zoneHeight(channel, false)
            + tracks
            + (tracks > 0 ? 2 * PAD : 0);
    return Math.max(height, LEAST);
  }

  /** Where a zone begins below the upper edge of its channel. */
  double zoneTop(int channel, boolean upper) {
    return upper ? 0 : height(channel) - texts.zoneHeight(channel, false);
  }

  /** Where a bar lies below the upper edge of its channel. */
  double barY(Port port) {
    int channel = plan.channel(port);
    double y = texts.zoneHeight(channel, true) + PAD + BAR / 2;
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
    return texts.zoneHeight(channel, true)
        + PAD
        + BAR * bars(channel, true).count()
        + pitch * across(channel).of(new End(route, upper))
        + (withText.contains(channel) ? pitch - 4 : pitch / 2);
  }
}
