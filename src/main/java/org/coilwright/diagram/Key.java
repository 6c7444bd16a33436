package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.diagram.Diagram.Finding;
import org.coilwright.diagram.Item.Kind;
import org.coilwright.drawing.Shape.Anchor;

/** What the numbers of the findings mean: on their own sheet if there is room, else at the end. */
final class Key {
  private static final String KEY = "key ";
  private static final double LEFT = 6;
  private static final double NUMBER = 22;
  private static final double WEIGHT = 36;

  private final Extent extent;
  private final List<Finding> findings;
  private final Notes notes;
  private final double width;
  private final List<Integer> left = new ArrayList<>();

  Key(Extent extent, List<Finding> findings, Notes notes, double width) {
    this.extent = extent;
    this.findings = findings;
    this.notes = notes;
    this.width = width;
    for (int number = 1; number <= findings.size(); number++) {
      left.add(number);
    }
  }

  /** The key to the markers among these items, if it fits between. */
  List<Item> under(List<Item> items, double from, double to) {
    List<Integer> here =
        items.stream()
            .filter(i -> i.kind() == Kind.MARKER)
            .map(i -> Integer.valueOf(i.of()))
            .distinct()
            .filter(left::contains)
            .sorted()
            .toList();
    return placed(here, from, to);
  }

  /** Everything that was not told yet, if it fits between. */
  List<Item> remaining(double from, double to) {
    return placed(List.copyOf(left), from, to);
  }

  private List<Item> placed(List<Integer> numbers, double from, double to) {
    double height = numbers.stream().mapToDouble(this::height).sum();
    if (numbers.isEmpty() || from + height > to) {
      return List.of();
    }
    left.removeAll(numbers);
    return entries(numbers, to - height - 4);
  }

  /** Where the key among these items begins, or {@code otherwise} if there is none. */
  static double top(List<Item> items, double otherwise) {
    return items.stream()
        .filter(i -> i.of().startsWith(KEY))
        .flatMap(i -> i.shapes().stream())
        .mapToDouble(s -> ((org.coilwright.drawing.Shape.Label) s).at().y() - Type.LEADING)
        .min()
        .orElse(otherwise);
  }

  /** Sheets of everything that was not told yet. */
  List<List<Item>> rest(double from, double to) {
    List<List<Item>> sheets = new ArrayList<>();
    while (!left.isEmpty()) {
      List<Item> items = new ArrayList<>();
      items.add(
          new Item(
              Kind.FRAME,
              "heading",
              new Pen()
                  .text(
                      LEFT,
                      from + 12,
                      notes.words().of("diagram.findings"),
                      Anchor.START,
                      Type.TITLE)
                  .shapes()));
      List<Integer> here = new ArrayList<>();
      double y = from + 24;
      while (!left.isEmpty() && (here.isEmpty() || y + height(left.get(0)) < to)) {
        y += height(left.get(0));
        here.add(left.remove(0));
      }
      items.addAll(entries(here, from + 24));
      sheets.add(items);
    }
    return sheets;
  }

  private double height(int number) {
    return lines(number).size() * Type.LEADING + 1;
  }

  private List<String> lines(int number) {
    String text = findings.get(number - 1).headline();
    if (!notes.isPlaced(number)) {
      text += " " + notes.words().of("diagram.not-here");
    }
    return extent.wrapped(text, width - 2 * LEFT - NUMBER - WEIGHT);
  }

  private List<Item> entries(List<Integer> numbers, double from) {
    List<Item> items = new ArrayList<>();
    double y = from;
    for (int number : numbers) {
      double base = y + 10;
      Pen pen =
          new Pen()
              .text(LEFT, base, Integer.toString(number), Anchor.START)
              .text(LEFT + NUMBER, base, findings.get(number - 1).weight(), Anchor.START);
      for (String line : lines(number)) {
        pen.text(LEFT + NUMBER + WEIGHT, base, line, Anchor.START);
        base += Type.LEADING;
      }
      items.add(new Item(Kind.FRAME, KEY + number, pen.shapes()));
      y += height(number);
    }
    return items;
  }
}
