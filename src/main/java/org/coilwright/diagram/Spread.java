package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.coilwright.diagram.Unit.Port;

/** Where columns, levels and tracks lie, so that nothing stands on anything else. */
final class Spread {
  private static final double LEAST = 11;
  private static final double CLEAR = 4;

  private final Plan plan;
  private final Extent extent;
  private final Channels channels;
  private final ConductorTexts texts;
  private final Tables tables;
  private final Map<Column, Double> x = new HashMap<>();
  private final double[] tops;
  private final double[] channelTops;
  private final double[] heights;
  private double width;
  private double height;

  /** Something that takes room between two columns. */
  private record Block(Column first, Column last, double left, double right) {}

  Spread(Plan plan, Extent extent, Channels channels, ConductorTexts texts, Tables tables) {
    this.plan = plan;
    this.extent = extent;
    this.channels = channels;
    this.texts = texts;
    this.tables = tables;
    this.tops = new double[plan.depth()];
    this.heights = new double[plan.depth()];
    this.channelTops = new double[plan.depth() + 1];
    rows();
    across();
  }

  private void rows() {
    double y = 0;
    for (int level = 0; level < plan.depth(); level++) {
      channelTops[level] = y;
      y += channels.height(level);
      tops[level] = y;
      for (Unit unit : plan.places().keySet()) {
        if (plan.level(unit) == level) {
          heights[level] = Math.max(heights[level], extent.height(unit));
        }
      }
      y += heights[level];
    }
    channelTops[plan.depth()] = y;
    y += channels.height(plan.depth());
    height = y + tables.height();
  }

  private void across() {
    Map<String, List<Block>> bands = new TreeMap<>();
    for (Map.Entry<Unit, List<Column>> place : plan.places().entrySet()) {
      Unit unit = place.getKey();
      List<Column> columns = place.getValue();
      int last = columns.size() - 1;
      add(
          bands,
          "level " + plan.level(unit),
          new Block(
              columns.get(0), columns.get(last), extent.left(unit), extent.right(unit, last)));
      if (tables.has(unit)) {
        add(bands, "table", new Block(columns.get(0), columns.get(0), 2, tables.width(unit)));
      }
    }
    for (Column column : plan.columns()) {
      column
          .cells()
          .forEach(
              (level, by) -> {
                if (!(by instanceof Unit)) {
                  add(bands, "level " + level, new Block(column, column, 1, 1));
                }
              });
    }
    channels
        .verticals()
        .forEach(
            (zone, columns) ->
                columns.forEach(
                    c -> add(bands, zone, new Block(c, c, 1, 1 + texts.labelWidth(zone, c)))));
    for (Route route : plan.routes().values()) {
      if (route.isBetweenBars(plan)) {
        int channel = plan.channel(route.upper());
        double text = route.isAcross() ? 0 : texts.acrossWidth(route);
        add(
            bands,
            "across " + channel,
            new Block(route.column(), route.secondColumn(), 1, 1 + text));
        channels
            .verticals(channel)
            .forEach(c -> add(bands, "across " + channel, new Block(c, c, 1, 1)));
      }
    }
    List<Block> blocks = new ArrayList<>();
    for (List<Block> band : bands.values()) {
      band.sort(Comparator.comparingInt(b -> b.first().position()));
    }
    bands.values().forEach(blocks::addAll);
    solve(bands);
    for (Block block : blocks) {
      width = Math.max(width, at(block.last()) + block.right());
    }
  }

  private static void add(Map<String, List<Block>> bands, String band, Block block) {
    bands.computeIfAbsent(band, b -> new ArrayList<>()).add(block);
  }

  private void solve(Map<String, List<Block>> bands) {
    double before = 0;
    for (Column column : plan.columns()) {
      double least = column.position() == 0 ? 0 : before + LEAST;
      for (List<Block> band : bands.values()) {
        Block previous = null;
        for (Block block : band) {
          if (block.first() == column) {
            double edge = previous == null ? 0 : at(previous.last()) + previous.right() + CLEAR;
            least = Math.max(least, edge + block.left());
          }
          if (block.last().position() < column.position()) {
            previous = furthest(previous, block);
          }
        }
      }
      x.put(column, Math.max(least, inside(column)));
      before = at(column);
    }
  }

  private Block furthest(@org.jspecify.annotations.Nullable Block a, Block b) {
    return a != null && at(a.last()) + a.right() >= at(b.last()) + b.right() ? a : b;
  }

  /** Where a column must lie because of one to its left that belongs to the same thing. */
  private double inside(Column column) {
    double least = 0;
    for (Map.Entry<Unit, List<Column>> place : plan.places().entrySet()) {
      int slot = place.getValue().indexOf(column);
      if (slot > 0) {
        Column before = place.getValue().get(slot - 1);
        least = Math.max(least, at(before) + extent.pitch(place.getKey(), slot - 1));
      }
    }
    for (Route route : plan.routes().values()) {
      if (route.second() == column) {
        least = Math.max(least, at(route.column()) + texts.acrossWidth(route) + 8);
      }
    }
    return least;
  }

  double at(Column column) {
    return x.getOrDefault(column, 0.0);
  }

  double x(Port port) {
    return at(plan.column(port));
  }

  /** Upper edge of a level. */
  double top(int level) {
    return tops[level];
  }

  double height(int level) {
    return heights[level];
  }

  /** Where a port is. */
  double y(Port port) {
    int level = plan.level(port.unit());
    return port.isTop() ? tops[level] : tops[level] + heights[level];
  }

  double channelTop(int channel) {
    return channelTops[channel];
  }

  double width() {
    return width;
  }

  double height() {
    return height;
  }

  /** Upper edge of the tables beneath the coils. */
  double tableTop() {
    return height - tables.height();
  }
}
