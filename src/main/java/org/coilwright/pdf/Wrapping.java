package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;

/** Breaks text into lines that fit a width. Nothing is cut off: a long word is broken. */
final class Wrapping {
  /** A line across the whole sheet; the eye finds the next one of few. */
  static final int MOST_CHARACTERS = 110;

  private Wrapping() {}

  /** At least one line, which may be empty. */
  static List<String> lines(String text, Lettering lettering, double size, double width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    double used = 0;
    double space = lettering.width(" ", size);
    for (String word : lettering.printable(text).split(" ", -1)) {
      double needed = lettering.width(word, size);
      boolean fits = line.length() + 1 + word.length() <= MOST_CHARACTERS;
      if (line.isEmpty() ? needed <= width : fits && used + space + needed <= width) {
        used += line.isEmpty() ? needed : space + needed;
        line.append(line.isEmpty() ? "" : " ").append(word);
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line.toString());
      }
      line.setLength(0);
      line.append(brokenInto(lines, word, lettering, size, width));
      used = lettering.width(line.toString(), size);
    }
    lines.add(line.toString());
    return lines;
  }

  /** Adds full lines of a word that may be too long, and returns what is left of it. */
  private static String brokenInto(
      List<String> lines, String word, Lettering lettering, double size, double width) {
    String rest = word;
    while (lettering.width(rest, size) > width) {
      int fit = fitting(rest, lettering, size, width);
      int cut = afterSeparator(rest, fit);
      lines.add(rest.substring(0, cut));
      rest = rest.substring(cut);
    }
    return rest;
  }

  /** How much of a word fits; at least one character, so that it always ends. */
  private static int fitting(String word, Lettering lettering, double size, double width) {
    int first = Character.charCount(word.codePointAt(0));
    int end = first;
    while (end < word.length()) {
      int next = end + Character.charCount(word.codePointAt(end));
      if (lettering.width(word.substring(0, next), size) > width) {
        break;
      }
      end = next;
    }
    return end;
  }

  /** Prefers to break behind a separator in the last half of what fits. */
  private static int afterSeparator(String word, int fit) {
    for (int i = fit; i > fit / 2; i--) {
      if (".-/_:,".indexOf(word.charAt(i - 1)) >= 0) {
        return i;
      }
    }
    return fit;
  }
}
