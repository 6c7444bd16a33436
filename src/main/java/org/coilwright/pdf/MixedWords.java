package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;

/**
 * A line that begins in bold and goes on in regular letters.
 *
 * @param bold may be empty
 * @param plain may be empty
 * @param at where the regular letters begin, from the left edge
 */
record MixedWords(String bold, String plain, double at) implements Item {
  static List<Item> of(Cell.Said said, double width, Faces faces) {
    List<String> heads = Wrapping.lines(said.bold(), faces.bold(), Type.BODY, width);
    List<Item> items = new ArrayList<>();
    heads.subList(0, heads.size() - 1).forEach(line -> items.add(new MixedWords(line, "", 0)));
    String last = heads.get(heads.size() - 1);
    double gap = faces.regular().width(" ", Type.BODY);
    double at = faces.bold().width(last, Type.BODY) + 2 * gap;
    // as much of it as fits behind the bold words, the rest under them
    List<String> words = List.of(faces.regular().printable(said.plain()).split(" ", -1));
    int taken = 0;
    StringBuilder first = new StringBuilder();
    while (taken < words.size()) {
      String longer = first.isEmpty() ? words.get(taken) : first + " " + words.get(taken);
      boolean fits =
          at + faces.regular().width(longer, Type.BODY) <= width
              && last.length() + 2 + longer.length() <= Wrapping.MOST_CHARACTERS;
      if (!fits) {
        break;
      }
      first.setLength(0);
      first.append(longer);
      taken++;
    }
    items.add(new MixedWords(last, first.toString(), at));
    if (taken < words.size()) {
      String rest = String.join(" ", words.subList(taken, words.size()));
      for (String line : Wrapping.lines(rest, faces.regular(), Type.BODY, width)) {
        items.add(new MixedWords("", line, 0));
      }
    }
    return items;
  }

  @Override
  public double height() {
    return Type.leading(Type.BODY);
  }

  @Override
  public void draw(Sheet sheet, double x, double y, Tag tag) {
    Item.write(sheet, x, y, Face.BOLD, bold, tag);
    Item.write(sheet, x + at, y, Face.REGULAR, plain, tag);
  }
}
