package org.coilwright.solve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;

/**
 * The least and the most that a coil or load gets, and the corner that decides. An element that is
 * alone on its line has its corners by the divider rule; wherever other coils, loads or resistors
 * share the current, every combination of hot and cold, worn and new, drawing most and least is
 * tried.
 */
final class Extremes {
  /** Zones with more elements than this are held to the divider rule's corners. */
  private static final int MOST_ELEMENTS = 150;

  /** Volts below this are the rest of a computation. */
  static final double NOTHING = 1e-6;

  private static final List<Level> ENDS = List.of(Level.LOW, Level.HIGH);

  private final Air air;
  private final Map<List<ZoneInState>, Map<Integer, Range>> known = new HashMap<>();

  Extremes(Air air) {
    this.air = air;
  }

  /**
   * A voltage at one end.
   *
   * @param alone true if no other coil or load was on
   */
  record Extreme(double volts, Corner corner, boolean alone) {}

  /** Both ends. */
  record Range(Extreme lowest, Extreme highest) {}

  /**
   * The range of what an element gets.
   *
   * @param low the zone as it stands when it gets least
   * @param high likewise when it gets most; mostly the same
   */
  Range of(ZoneInState low, ZoneInState high, Element element) {
    return known
        .computeIfAbsent(List.of(low, high), s -> new HashMap<>())
        .computeIfAbsent(element.number(), k -> find(low, high, element));
  }

  private Range find(ZoneInState lower, ZoneInState upper, Element element) {
    Zone zone = lower.zone;
    double low = lower.flow(Corner.LOWEST).volts(element);
    double high = upper.flow(Corner.HIGHEST).volts(element);
    Extreme lowest = new Extreme(low, Corner.LOWEST, false);
    Extreme highest = new Extreme(high, Corner.HIGHEST, !isShared(zone, element));
    boolean dead = low < NOTHING && high < NOTHING;
    if (dead || highest.alone()) {
      return new Range(lowest, highest);
    }
    boolean all = zone.elements.size() <= MOST_ELEMENTS;
    for (Corner corner : all ? corners(zone, Corner.LOWEST) : List.<Corner>of()) {
      double volts = lower.solve(corner, e -> true).volts(element);
      if (volts < lowest.volts() * (1 - NOTHING)) {
        lowest = new Extreme(volts, corner, false);
      }
    }
    Predicate<Element> alone = e -> !e.isConsumer() || e.number() == element.number();
    for (Corner corner : all ? corners(zone, Corner.HIGHEST) : List.of(Corner.HIGHEST)) {
      double together = upper.solve(corner, e -> true).volts(element);
      if (together > highest.volts() * (1 + NOTHING)) {
        highest = new Extreme(together, corner, false);
      }
      double only = upper.solve(corner, alone).volts(element);
      if (only > highest.volts() * (1 + NOTHING)) {
        highest = new Extreme(only, corner, true);
      }
    }
    return new Range(lowest, highest);
  }

  private static boolean isShared(Zone zone, Element element) {
    return zone.elements.stream()
        .anyMatch(
            e ->
                e.number() != element.number()
                    && (e.isConsumer()
                        || e.kind() == Element.Kind.PASSIVE
                        || e.kind() == Element.Kind.SOURCE));
  }

  /** Every combination of what the zone holds, with supply and armatures as in {@code base}. */
  private static List<Corner> corners(Zone zone, Corner base) {
    List<Level> passives = endsIf(zone, Element.Kind.PASSIVE);
    List<Level> loads = endsIf(zone, Element.Kind.LOAD);
    List<Level> coils = endsIf(zone, Element.Kind.COIL);
    List<Level> supplies = zone.sources().size() > 1 ? ENDS : List.of(base.supply());
    List<Corner> corners = new ArrayList<>();
    for (Level supply : supplies) {
      for (Level line : ENDS) {
        for (Level contact : ENDS) {
          for (Level coil : coils) {
            for (Level load : loads) {
              for (Level passive : passives) {
                corners.add(new Corner(supply, line, contact, coil, load, passive, base.pulling()));
              }
            }
          }
        }
      }
    }
    return corners;
  }

  private static List<Level> endsIf(Zone zone, Element.Kind kind) {
    return zone.elements.stream().anyMatch(e -> e.kind() == kind) ? ENDS : List.of(Level.LOW);
  }

  /** The lowest corner in words. */
  String lowestInWords(Extreme extreme, double supply, CurrentKind kind) {
    Corner c = extreme.corner();
    StringBuilder words = new StringBuilder(supplyAndLine(c, supply));
    if (c.contact() == Level.LOW) {
      words.append(", contacts new");
    }
    if (kind == CurrentKind.AC) {
      words.append(", coils pulling in");
    } else if (c.coil() == Level.LOW) {
      words.append(", coil cold, when it draws most");
    } else {
      words.append(", coil hot, when it draws least");
    }
    return words.toString();
  }

  /** The highest corner in words. */
  String highestInWords(Extreme extreme, double supply) {
    Corner c = extreme.corner();
    return supplyAndLine(c, supply)
        + (c.contact() == Level.HIGH ? ", contacts worn" : "")
        + (extreme.alone() ? ", no other load" : ", other loads on");
  }

  private String supplyAndLine(Corner corner, double supply) {
    double celsius = corner.line() == Level.HIGH ? air.hottest().value() : air.coldest().value();
    return "supply at "
        + Printed.volts(supply)
        + ", line at "
        + Printed.of(celsius, Dimension.TEMPERATURE);
  }
}
