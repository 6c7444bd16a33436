// Over 250 lines: one wording after the other, each with what it is taken for.
package org.coilwright.draft;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * A contact's ratings in the words of its manual: {@code 1 A 30 V DC}, {@code B300/R300}, {@code 10
 * (4) A 250 V AC}. A figure without a word is resistive; a letter of pilot duty is for the kind of
 * current it stands for and for no other.
 */
final class ContactWords {
  /**
   * What was understood.
   *
   * @param ratings by utilization category, as a netlist has them
   * @param remarks how words were taken, one sentence each
   */
  record Understood(Map<String, String> ratings, List<String> remarks) {
    boolean has(String... categories) {
      return List.of(categories).stream().anyMatch(ratings::containsKey);
    }

    /** True if there is any for direct current. */
    boolean hasDirect() {
      return ratings.keySet().stream().anyMatch(c -> c.startsWith("DC"));
    }

    /** As a netlist has them. */
    String yaml() {
      StringBuilder text = new StringBuilder();
      ratings.forEach(
          (category, rating) ->
              text.append(text.isEmpty() ? "{" : ", ").append(category + ": " + rating));
      return text.append('}').toString();
    }
  }

  /** Words that say nothing usable: where they begin in the text, what is wrong, what to do. */
  static final class Unclear extends Exception {
    private static final long serialVersionUID = 1L;
    private final int offset;
    private final int length;
    private final String remedy;

    Unclear(int offset, int length, String what, String remedy) {
      super(what);
      this.offset = offset;
      this.length = length;
      this.remedy = remedy;
    }

    int offset() {
      return offset;
    }

    int length() {
      return length;
    }

    String what() {
      return String.valueOf(getMessage());
    }

    String remedy() {
      return remedy;
    }
  }

  private static final String NUMBER = "[0-9]+(?:[.][0-9]+)?";
  private static final String CATEGORY = "[AD]C-?[0-9]+[ab]?";
  private static final String WORD =
      "resistive|inductive|general use|GU|pilot duty|cos ?(?:φ|phi) ?=? ?0?[.][0-9]+";
  private static final String AT = "\\s*(?:at|@|,|/)?\\s*";
  private static final String VOLTS =
      "(?<volts>" + NUMBER + ")\\s*V\\s*(?<kind>(?:AC|DC|~)(?!-?[0-9]))?";

  private static final Pattern LETTER =
      Pattern.compile("(?<letter>[A-ENP-R])(?<most>150|300|600)\\b");
  private static final Pattern RATING =
      Pattern.compile(
          "(?:(?<first>"
              + CATEGORY
              + "|pilot duty)\\s*:?\\s*)?(?<amps>"
              + NUMBER
              + ")\\s*(?:\\((?<other>"
              + NUMBER
              + ")\\)\\s*)?(?<milli>m?)A\\b(?:\\s*\\(?(?<before>"
              + CATEGORY
              + "|"
              + WORD
              + ")\\)?)?(?:"
              + AT
              + VOLTS
              + ")?(?:\\s*\\(?(?<after>"
              + CATEGORY
              + "|"
              + WORD
              + ")\\)?)?",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern SOLID =
      Pattern.compile("open.collector|optocoupler|transistor|triac|solid.state|SSR", 2);
  private static final Pattern BETWEEN = Pattern.compile("(?:[\\s,;/]|and\\b|or\\b|volt-free\\b)+");

  private static final String HOW =
      "write it like 0.5 A at 30 V DC-13, or 1 A 30 V DC resistive, or B300/R300";

  private final Tables tables;
  private final double directVolts;
  private final double mainsVolts;
  private final Map<String, String> ratings = new LinkedHashMap<>();
  private final List<String> remarks = new ArrayList<>();

  private ContactWords(Tables tables, double directVolts, double mainsVolts) {
    this.tables = tables;
    this.directVolts = directVolts;
    this.mainsVolts = mainsVolts;
  }

  /**
   * Reads a manual's words.
   *
   * @param directVolts of the control circuit it would switch, V; where no voltage is written
   * @param mainsVolts of a mains coil, V; likewise
   */
  static Understood of(String text, double directVolts, double mainsVolts, Tables tables)
      throws Unclear {
    ContactWords words = new ContactWords(tables, directVolts, mainsVolts);
    words.read(text);
    return new Understood(words.ratings, words.remarks);
  }

  private void read(String text) throws Unclear {
    Matcher solid = SOLID.matcher(text);
    if (solid.find()) {
      throw new Unclear(
          solid.start(),
          solid.end() - solid.start(),
          "\"" + solid.group() + "\" is an electronic output and no contact",
          "put a relay of the output's own voltage behind it, and write that relay's contact here");
    }
    int at = 0;
    while (at < text.length()) {
      Matcher gap = BETWEEN.matcher(text).region(at, text.length());
      if (gap.lookingAt()) {
        at = gap.end();
        continue;
      }
      Matcher letter = LETTER.matcher(text).region(at, text.length());
      Matcher rating = RATING.matcher(text).region(at, text.length());
      if (letter.lookingAt()) {
        pilot(letter);
        at = letter.end();
      } else if (rating.lookingAt()) {
        rated(rating, at);
        at = rating.end();
      } else {
        throw new Unclear(
            at,
            text.length() - at,
            "\"" + text.substring(at) + "\" is no rating of a contact that is known here",
            HOW);
      }
    }
    if (ratings.isEmpty()) {
      throw new Unclear(0, Math.max(1, text.length()), "no rating of the contact is written", HOW);
    }
  }

  /** A letter of pilot duty: volt-amperes over the voltage, and never above the thermal current. */
  private void pilot(Matcher letter) {
    String name = letter.group("letter").toUpperCase(Locale.ROOT);
    double most = Double.parseDouble(letter.group("most"));
    boolean direct = "NPQR".contains(name);
    double volts = Math.min(most, direct ? directVolts : mainsVolts);
    double breaks = figure(name, "break");
    double amps = Math.min(breaks / volts, figure(name, "thermal"));
    String category = direct ? "DC-13" : "AC-15";
    put(category, amps, volts);
    remarks.add(
        "%s is pilot duty for %s current: %s %s at %s (%s ÷ %s, at most %s); it says nothing of %s current."
            .formatted(
                letter.group(),
                direct ? "direct" : "alternating",
                category,
                Printed.amps(amps),
                Printed.volts(volts),
                Printed.of(breaks, Dimension.APPARENT_POWER),
                Printed.volts(volts),
                Printed.amps(figure(name, "thermal")),
                direct ? "alternating" : "direct"));
  }

  private double figure(String letter, String column) {
    return tables
        .lookup("pilot-duty", Map.of("letter", letter), column)
        .map(Cited::value)
        .orElseThrow(() -> new IllegalStateException("no letter " + letter));
  }

  private void rated(Matcher m, int at) throws Unclear {
    double amps = Double.parseDouble(m.group("amps")) / (m.group("milli").isEmpty() ? 1 : 1000);
    Optional<String> word =
        Optional.ofNullable(m.group("first"))
            .or(() -> Optional.ofNullable(m.group("before")))
            .or(() -> Optional.ofNullable(m.group("after")));
    Optional<String> category = word.filter(w -> w.matches("(?i)" + CATEGORY)).map(this::hyphened);
    Optional<String> kind =
        Optional.ofNullable(m.group("kind")).map(k -> k.toUpperCase(Locale.ROOT));
    boolean direct =
        category.map(c -> c.startsWith("DC")).orElse(kind.filter("DC"::equals).isPresent());
    if (category.isEmpty() && kind.isEmpty()) {
      throw new Unclear(
          at,
          m.end() - at,
          "\"" + m.group().strip() + "\" does not say for which voltage, AC or DC",
          "write it as " + m.group().strip() + (m.group("volts") == null ? " at 30 V DC" : " DC"));
    }
    double volts =
        m.group("volts") != null
            ? Double.parseDouble(m.group("volts"))
            : direct ? directVolts : mainsVolts;
    String said = word.map(w -> w.toLowerCase(Locale.ROOT)).orElse("");
    String taken =
        category.orElse(
            direct
                ? said.equals("inductive") ? "DC-13" : "DC-1"
                : said.equals("pilot duty") ? "AC-15" : "AC-1");
    put(taken, amps, volts);
    if (m.group("volts") == null) {
      remarks.add(
          "%s is written without a voltage: taken at %s."
              .formatted(m.group().strip(), Printed.volts(volts)));
    }
    if (category.isEmpty() && !said.equals("pilot duty")) {
      remarks.add(
          said.startsWith("cos")
              ? "%s is tested at a better power factor than a coil has: only its resistive rating, %s, is used."
                  .formatted(m.group().strip(), taken)
              : "%s is taken as %s, %s%s."
                  .formatted(
                      m.group().strip(),
                      taken,
                      said.equals("inductive") ? "inductive" : "resistive",
                      said.isEmpty() ? ", since no word says otherwise" : ""));
    }
    if (m.group("other") != null) {
      remarks.add(
          "The figure in brackets, %s A, is for motors and no AC-15.".formatted(m.group("other")));
    }
  }

  private String hyphened(String category) {
    String upper = category.substring(0, 2).toUpperCase(Locale.ROOT);
    String rest = category.substring(2).replace("-", "").toLowerCase(Locale.ROOT);
    return upper + "-" + rest;
  }

  private void put(String category, double amps, double volts) {
    ratings.putIfAbsent(
        category,
        "%s at %s"
            .formatted(
                Printed.given(amps, Dimension.CURRENT), Printed.given(volts, Dimension.VOLTAGE)));
  }
}
