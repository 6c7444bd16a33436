package org.coilwright.netlist;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What is meant by words of the trade that the format has others for. */
final class Meant {
  private static final String LETTER = "[A-EN-R](150|300|600)";

  private static final Map<String, String> KINDS =
      Map.ofEntries(
          Map.entry("mcb", "breaker"),
          Map.entry("circuit-breaker", "breaker"),
          Map.entry("rccb", "rcd"),
          Map.entry("gfci", "rcd"),
          Map.entry("element", "heater"),
          Map.entry("boiler", "heater"),
          Map.entry("psu", "dc-supply"),
          Map.entry("power-supply", "dc-supply"),
          Map.entry("limiter", "cut-out"),
          Map.entry("high-limit", "cut-out"),
          Map.entry("push-button", "switch"),
          Map.entry("selector", "switch"),
          Map.entry("terminal", "terminals"));

  private Meant() {}

  /**
   * What to write in place of a word.
   *
   * @param words that may stand there
   */
  static Optional<String> by(String word, List<String> words) {
    String lower = word.toLowerCase(Locale.ROOT);
    String kind = KINDS.get(lower);
    if (kind != null && words.contains(kind)) {
      return Optional.of("write " + kind);
    }
    if (!words.contains("AC-15")) {
      return Optional.empty();
    }
    if (word.matches(LETTER)) {
      boolean direct = "NPQR".indexOf(word.charAt(0)) >= 0;
      return Optional.of(
          "it is a letter of pilot duty: write %s with the current that \"coilwright explain %s\" tells"
              .formatted(direct ? "DC-13" : "AC-15", word));
    }
    return switch (lower) {
      case "resistive" ->
          Optional.of("write AC-1 for alternating current, DC-1 for direct current");
      case "inductive", "pilot-duty", "pilot duty" ->
          Optional.of("write AC-15 for a coil on alternating current, DC-13 for one on direct");
      default -> Optional.empty();
    };
  }
}
