package org.coilwright.circuit;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** The colour of a core, from the words it is written in to the letters of IEC 60757. */
public final class CoreColour {
  private static final Pattern BETWEEN = Pattern.compile("\\s+and\\s+|[\\s/_-]+");

  private static final Map<String, String> LETTERS =
      Map.ofEntries(
          Map.entry("black", "BK"),
          Map.entry("brown", "BN"),
          Map.entry("red", "RD"),
          Map.entry("orange", "OG"),
          Map.entry("yellow", "YE"),
          Map.entry("green", "GN"),
          Map.entry("blue", "BU"),
          Map.entry("violet", "VT"),
          Map.entry("grey", "GY"),
          Map.entry("gray", "GY"),
          Map.entry("white", "WH"),
          Map.entry("pink", "PK"),
          Map.entry("turquoise", "TQ"),
          Map.entry("light-blue", "BU"),
          Map.entry("dark-blue", "BU"),
          Map.entry("bare", "bare"),
          Map.entry("green-yellow", "GNYE"),
          Map.entry("yellow-green", "GNYE"));

  private CoreColour() {}

  /**
   * The letters of a colour, {@code GNYE} for green-and-yellow, {@code bare} for a core without
   * insulation; empty for what is no colour of the trade.
   *
   * @param written a word such as {@code brown}, {@code green/yellow}, {@code light blue}, or the
   *     letters themselves
   */
  public static Optional<String> letters(String written) {
    String word = BETWEEN.matcher(written.strip().toLowerCase(Locale.ROOT)).replaceAll("-");
    return Optional.ofNullable(LETTERS.get(word))
        .or(() -> LETTERS.values().stream().filter(l -> l.equalsIgnoreCase(written)).findFirst());
  }

  /** True for a blue that is kept apart from the neutral's, as control circuits use it. */
  public static boolean isDark(String written) {
    return written.toLowerCase(Locale.ROOT).contains("dark");
  }

  /** The word for letters of IEC 60757, the first there is; the letters where there is none. */
  public static String word(String letters) {
    return LETTERS.entrySet().stream()
        .filter(e -> e.getValue().equals(letters))
        .map(Map.Entry::getKey)
        .filter(w -> !w.equals("gray") && !w.endsWith("-blue") && !w.startsWith("yellow-"))
        .findFirst()
        .orElse(letters);
  }
}
