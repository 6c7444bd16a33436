package org.coilwright.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.coilwright.netlist.Brief;

/**
 * What was typed for a draft, as the text of a brief: {@code 9 kW, 400 V, star} becomes the keys of
 * {@code load}. Values themselves are left to the reader of briefs, which says what is wrong with
 * them.
 */
final class DraftFlags {
  /** A piece of what was typed belongs nowhere. */
  static final class Refused extends Exception {
    private static final long serialVersionUID = 1L;

    Refused(String sentence) {
      super(sentence);
    }

    String sentence() {
      return String.valueOf(getMessage());
    }
  }

  /**
   * What a piece of a phrase may be.
   *
   * @param key it is written under; with a colon, key and value
   * @param pattern of the piece
   */
  private record Slot(String key, Pattern pattern) {
    static Slot of(String key, String regex) {
      return new Slot(key, Pattern.compile("(?i)" + regex));
    }
  }

  private static final String N = "[0-9][0-9. ±+%-]*?\\s*";

  private static final List<Slot> LOAD =
      List.of(
          Slot.of("power", N + "k?W.*"),
          Slot.of("voltage", N + "k?V.*"),
          Slot.of("connection", "single|star|star-with-neutral|delta"),
          Slot.of("kind", "metal-sheathed|carbide|ptc"),
          Slot.of("starts-per-day", "([0-9]+) starts( a day)?"));

  private static final List<Slot> VESSEL =
      List.of(
          Slot.of("litres", N + "(l|litres?|liters?)"),
          Slot.of("closed: true", "closed"),
          Slot.of("closed: false", "open"),
          Slot.of("open-vent: true", "vented|open vent"),
          Slot.of("relief", "(?:relief )?" + N + "°?C.*"),
          Slot.of("cistern", "metal|plastic"));

  private static final List<Slot> MAINS =
      List.of(
          Slot.of("phases: split", "split.*"),
          Slot.of("phases", "([13]) ?(?:phases?|lines?)"),
          Slot.of("voltage", "[0-9/. ]+V.*"),
          Slot.of("frequency", N + "Hz"),
          Slot.of("earthing", "TN-S|TN-C-S|TN-C|TT|IT"),
          Slot.of("fault-current", N + "k?A"),
          Slot.of("loop-impedance", N + "m?(?:Ω|ohm)"));

  private static final List<Slot> PLANT =
      List.of(
          Slot.of("pv-peak", "(?:peak |pv )(.*W)|(.*W) peak"),
          Slot.of("base-load", "base (.*W)"),
          Slot.of("largest-step", "step (.*W)"),
          Slot.of("battery.capacity", "battery (.*Wh)"),
          Slot.of("battery.discharge", "discharge (.*W)"),
          Slot.of("battery.charge", "charge (.*W)"),
          Slot.of("battery.settles-in", "settles(?: in)? (.*s)"),
          Slot.of("battery.floor", "floor (.*%)"));

  private static final List<Slot> SUPPLY =
      List.of(
          Slot.of("voltage", N + "V(?: [AD]C)?.*"),
          Slot.of("limit", N + "m?A"),
          Slot.of("isolation", "SELV|PELV"));

  private DraftFlags() {}

  /**
   * The brief.
   *
   * @param typed phrase by name of the option, without its dashes
   */
  static String brief(Map<String, String> typed) throws Refused {
    StringBuilder out = new StringBuilder("brief: 1\n");
    for (String key : List.of("title", "practice")) {
      text(out, key, typed);
    }
    group(out, "mains", MAINS, typed);
    text(out, "island", typed);
    group(out, "load", LOAD, typed);
    group(out, "vessel", VESSEL, typed);
    controller(out, typed);
    List<String> distances = new ArrayList<>();
    for (String key : List.of("board-to-box", "box-to-load", "controller-to-box")) {
      Optional.ofNullable(typed.get(key)).ifPresent(v -> distances.add(key + ": " + value(v)));
    }
    if (!distances.isEmpty()) {
      out.append("distances: {").append(String.join(", ", distances)).append("}\n");
    }
    for (String key : List.of("air", "room", "altitude")) {
      text(out, key, typed);
    }
    group(out, "plant", PLANT, typed);
    return out.toString();
  }

  private static void text(StringBuilder out, String key, Map<String, String> typed) {
    Optional.ofNullable(typed.get(key))
        .ifPresent(v -> out.append(key).append(": ").append(value(v)).append('\n'));
  }

  private static void group(
      StringBuilder out, String name, List<Slot> slots, Map<String, String> typed) throws Refused {
    String phrase = typed.get(name);
    if (phrase != null) {
      out.append(name).append(": ").append(braces(pieces(name, phrase, slots))).append('\n');
    }
  }

  private static void controller(StringBuilder out, Map<String, String> typed) throws Refused {
    String phrase = typed.get("controller");
    if (phrase == null) {
      return;
    }
    Map<String, String> keys = new LinkedHashMap<>();
    for (String part : phrase.split(";", -1)) {
      String words = part.strip();
      if (words.toLowerCase(java.util.Locale.ROOT).startsWith("contact")) {
        keys.put("contact", Brief.quoted(words.substring("contact".length()).strip()));
      } else if (words.matches("(?i)none|no supply|no auxiliary supply")) {
        keys.put("supply", "none");
      } else if (!words.isEmpty()) {
        keys.put("supply", braces(pieces("controller", supplyPieces(words), SUPPLY)));
      }
    }
    out.append("controller: ").append(braces(keys)).append('\n');
  }

  /** {@code 24 V DC 200 mA} has no comma between its two values. */
  private static String supplyPieces(String words) {
    return words.replaceAll("(?i)(V\\s*(?:DC|AC)?(?:\\s*±\\s*[0-9.]+\\s*%)?)\\s+(?=[0-9])", "$1, ");
  }

  private static Map<String, String> pieces(String name, String phrase, List<Slot> slots)
      throws Refused {
    Map<String, String> keys = new LinkedHashMap<>();
    for (String piece : phrase.split(",", -1)) {
      String word = piece.strip();
      Optional<Slot> slot =
          slots.stream().filter(s -> s.pattern().matcher(word).matches()).findFirst();
      if (slot.isEmpty()) {
        throw new Refused(
            "--%s: \"%s\" is none of what belongs there: %s."
                .formatted(
                    name,
                    word,
                    String.join(
                        ", ",
                        slots.stream().map(s -> s.key().split(":", 2)[0]).distinct().toList())));
      }
      String[] said = slot.get().key().split(": ", 2);
      String value = said.length == 2 ? said[1] : value(inner(slot.get().pattern().matcher(word)));
      if (keys.putIfAbsent(said[0], value) != null) {
        throw new Refused(
            "--%s names %s twice: %s and %s.".formatted(name, said[0], keys.get(said[0]), value));
      }
    }
    return keys;
  }

  /** What a pattern takes out of a piece: its first group, or all. */
  private static String inner(Matcher matcher) {
    if (!matcher.matches()) {
      throw new IllegalStateException("it matched before");
    }
    for (int i = 1; i <= matcher.groupCount(); i++) {
      String group = matcher.group(i);
      if (group != null && group.matches(".*[0-9].*")) {
        return group;
      }
    }
    return matcher.group().replaceFirst("(?i)^relief ", "");
  }

  /** A value as a brief has it: a blank before the unit, ° before C, ohm as Ω. */
  private static String value(String typed) {
    String spaced =
        Fahrenheit.asCelsius(typed)
            .strip()
            .replaceAll("(?i)(?<=[0-9])\\s*(?:l|litres?|liters?)$", "")
            .replaceAll("(?<=[0-9])\\s*°?C$", " °C")
            .replaceAll("(?<=[0-9])(?=[A-Za-zµΩ])", " ")
            .replaceAll("(?i)ohms?$", "Ω");
    return Brief.quoted(spaced);
  }

  private static String braces(Map<String, String> keys) {
    Map<String, Map<String, String>> inner = new LinkedHashMap<>();
    List<String> all = new ArrayList<>();
    keys.forEach(
        (key, value) -> {
          int dot = key.indexOf('.');
          if (dot < 0) {
            all.add(key + ": " + value);
          } else {
            inner
                .computeIfAbsent(key.substring(0, dot), k -> new LinkedHashMap<>())
                .put(key.substring(dot + 1), value);
          }
        });
    inner.forEach((key, group) -> all.add(key + ": " + braces(group)));
    return "{" + String.join(", ", all) + "}";
  }
}
