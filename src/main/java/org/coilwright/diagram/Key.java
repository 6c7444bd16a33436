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
  private static final double BETWEEN = 14;
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

  /** Over the whole width if there is room, in two columns otherwise. */
  private List<Item> placed(List<Integer> numbers, double from, double to) {
    double whole = width - 2 * LEFT;
    double height = height(numbers, whole);
    if (!numbers.isEmpty() && from + height <= to) {
      left.removeAll(numbers);
      return entries(numbers, LEFT, whole, to - height - 4);
    }
    double half = (whole - BETWEEN) / 2;
    int first = 0;
    while (first < numbers.size()
        && height(numbers.subList(0, first), half)
            < height(numbers.subList(first, numbers.size()), half)) {
      first++;
    }
    List<Integer> one = numbers.subList(0, first);
    List<Integer> two = numbers.subList(first, numbers.size());
    double higher = Math.max(height(one, half), height(two, half));
    if (one.isEmpty() || from + higher > to) {
      return List.of();
    }
    List<Item> items = new ArrayList<>(entries(one, LEFT, half, to - higher - 4));
    items.addAll(entries(two, LEFT + half + BETWEEN, half, to - higher - 4));
    left.removeAll(numbers);
    return items;
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
      double whole = width - 2 * LEFT;
      double y = from + 24;
      while (!left.isEmpty() && (here.isEmpty() || y + height(left.get(0), whole) < to)) {
        y += height(left.get(0), whole);
        here.add(left.remove(0));
      }
      items.addAll(entries(here, LEFT, whole, from + 24));
      sheets.add(items);
    }
    return sheets;
  }

  private double height(List<Integer> numbers, double wide) {
    return numbers.stream().mapToDouble(n -> height(n, wide)).sum();
  }

  private double height(int number, double wide) {
    return lines(number, wide).size() * Type.LEADING + 1;
  }

  private List<String> lines(int number, double wide) {
    String text = findings.get(number - 1).headline();
    if (!notes.isPlaced(number)) {
      text += " " + notes.words().of("diagram.not-here");
    }
    return extent.wrapped(text, wide - NUMBER - WEIGHT);
  }

  private List<Item> entries(List<Integer> numbers, double from, double wide, double top) {
    List<Item> items = new ArrayList<>();
    double y = top;
    for (int number : numbers) {
      double base = y + 10;
      Pen pen =
          new Pen()
              .text(from, base, Integer.toString(number), Anchor.START)
              .text(from + NUMBER, base, findings.get(number - 1).weight(), Anchor.START);
      for (String line : lines(number, wide)) {
        pen.text(from + NUMBER + WEIGHT, base, line, Anchor.START);
        base += Type.LEADING;
      }
      items.add(new Item(Kind.FRAME, KEY + number, pen.shapes()));
      y += height(number, wide);
    }
    return items;
  }
}
