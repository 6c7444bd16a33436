package org.coilwright.sweep;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.coilwright.sweep.Mutant.Kind;

/** Every value of a circuit written wrongly: too much, too little, of another kind, not at all. */
final class ValueMutants {
  private static final Pattern SECTION = Pattern.compile("^([a-z]+):.*");
  private static final Pattern OWNER = Pattern.compile("^  ([A-Za-z][\\w-]*):.*");
  private static final Pattern WIRE = Pattern.compile("from: (\\S+), to: ([^,} ]+)");
  private static final Pattern PAIR =
      Pattern.compile("\\b([A-Za-z][A-Za-z0-9-]*): ([^,{}\\[\\]#\"&*]+?)(?=\\s*(?:[,}]|$|\\s#))");
  private static final Pattern GROUP = Pattern.compile("\\b([A-Za-z][A-Za-z0-9-]*): \\{");
  private static final Pattern NUMBER = Pattern.compile("(?<![\\w-])(?<![^.]\\.)\\d+(?:\\.\\d+)?");
  private static final Pattern TOLERANCE = Pattern.compile(" ± [0-9.]+ %");

  /** Sections with values in them. */
  private static final Set<String> SECTIONS =
      Set.of("site", "types", "parts", "runs", "wires", "switching", "intent");

  /** Values that come in steps. */
  private static final Map<String, List<String>> STEPS =
      Map.of(
          "rating", List.of("0.5", "1", "2", "4", "6", "10", "16", "20", "25", "32", "40", "63"),
          "size", List.of("0.14", "0.5", "0.75", "1", "1.5", "2.5", "4", "6", "10", "16"),
          "trip", List.of("10", "30", "100", "300", "500"));

  /** Words and what else may stand there. */
  private static final Map<String, List<String>> WORDS =
      Map.ofEntries(
          Map.entry("form", List.of("NO", "NC")),
          Map.entry("kind", List.of("AC", "A", "F", "B", "metal-sheathed", "carbide", "ptc")),
          Map.entry("curve", List.of("B", "C", "D")),
          Map.entry("earthing", List.of("TN-S", "TN-C-S", "TN-C", "TT", "IT")),
          Map.entry("isolation", List.of("SELV", "PELV", "none")),
          Map.entry("connection", List.of("single", "star", "star-with-neutral", "delta")),
          Map.entry("reset", List.of("manual", "automatic")),
          Map.entry("coil-to-contacts", List.of("functional", "basic", "double", "reinforced")),
          Map.entry("suppression", List.of("none", "diode", "varistor", "diode-with-zener")),
          Map.entry("polarity", List.of("none", "A1 plus", "A2 plus")),
          Map.entry("installed", List.of("A1", "A2", "B1", "B2", "C", "panel")),
          Map.entry("mounting", List.of("side-by-side", "spaced")),
          Map.entry("practice", List.of("iec", "nec")),
          Map.entry("phases", List.of("1", "split", "3")),
          Map.entry("poles", List.of("1", "1+N", "2", "3", "3+N", "4")),
          Map.entry("mirror", List.of("true", "false")),
          Map.entry("closed", List.of("true", "false")));

  private final Base base;
  private final List<Mutant> mutants = new ArrayList<>();
  private final Set<String> names = new LinkedHashSet<>();

  private ValueMutants(Base base) {
    this.base = base;
  }

  static List<Mutant> of(Base base) {
    ValueMutants all = new ValueMutants(base);
    String section = "";
    String owner = "";
    for (int i = 0; i < base.lines().size(); i++) {
      String line = base.lines().get(i);
      Matcher top = SECTION.matcher(line);
      Matcher part = OWNER.matcher(line);
      Matcher wire = WIRE.matcher(line);
      if (top.matches()) {
        section = top.group(1);
        owner = section;
      } else if (part.matches()) {
        owner = section.equals("parts") || section.equals("types") ? part.group(1) : section;
      }
      if (wire.find()) {
        owner = wire.group(1) + "-" + wire.group(2);
      }
      if (SECTIONS.contains(section) && !line.isBlank() && !line.trim().startsWith("#")) {
        all.line(i, section.equals("runs") && part.matches() ? part.group(1) : owner);
      }
    }
    return List.copyOf(all.mutants);
  }

  private void line(int at, String owner) {
    String line = base.lines().get(at);
    Matcher pair = PAIR.matcher(line);
    while (pair.find()) {
      String key = pair.group(1);
      String value = pair.group(2).trim();
      if (Set.of("from", "to", "run", "is", "type", "label", "colour", "number").contains(key)) {
        continue;
      }
      for (String other : others(key, value)) {
        String now = line.substring(0, pair.start(2)) + other + line.substring(pair.end(2));
        add(at, owner, key + " " + value + " -> " + other, now);
      }
      add(at, owner, key + " " + value + " left out", without(line, pair.start(), pair.end(2)));
    }
    Matcher group = GROUP.matcher(line);
    while (group.find()) {
      int end = closing(line, group.end() - 1);
      if (end > 0) {
        add(at, owner, group.group(1) + " left out", without(line, group.start(), end + 1));
      }
    }
  }

  private static int closing(String line, int open) {
    int depth = 0;
    for (int i = open; i < line.length(); i++) {
      depth += line.charAt(i) == '{' ? 1 : line.charAt(i) == '}' ? -1 : 0;
      if (depth == 0) {
        return i;
      }
    }
    return -1;
  }

  /** The line without what stands from {@code start} to {@code end}, and without its comma. */
  private static String without(String line, int start, int end) {
    String before = line.substring(0, start);
    String after = line.substring(end);
    if (after.startsWith(", ")) {
      return before + after.substring(2);
    }
    if (before.endsWith(", ")) {
      return before.substring(0, before.length() - 2) + after;
    }
    return before.isBlank() && after.isBlank() ? "  # left out" : before + after;
  }

  private static Set<String> others(String key, String value) {
    Set<String> others = new LinkedHashSet<>();
    boolean word = WORDS.getOrDefault(key, List.of()).contains(value);
    if (word) {
      others.addAll(WORDS.getOrDefault(key, List.of()));
    } else if (value.endsWith("AWG")) {
      int gauge = Integer.parseInt(value.substring(0, value.indexOf(' ')));
      others.addAll(List.of(gauge - 2 + " AWG", gauge + 2 + " AWG"));
    } else {
      numbers(key, value, others);
    }
    if (key.startsWith("E") && !word) {
      others.add("not (" + value + ")");
    }
    if (value.contains(" DC") || value.contains(" AC")) {
      others.add(value.contains(" DC") ? value.replace(" DC", " AC") : value.replace(" AC", " DC"));
    }
    others.add(TOLERANCE.matcher(value).replaceAll(""));
    others.remove(value);
    return others;
  }

  /** Each number of a value by itself, both ends of a range together; tolerances stay. */
  private static void numbers(String key, String value, Set<String> others) {
    int tolerance = value.indexOf(" ±") < 0 ? value.length() : value.indexOf(" ±");
    int condition = value.indexOf(" at ") < 0 ? tolerance : value.indexOf(" at ");
    for (int[] piece : List.of(new int[] {0, condition}, new int[] {condition, tolerance})) {
      String text = value.substring(piece[0], piece[1]);
      if (!NUMBER.matcher(text).find()) {
        continue;
      }
      List<String> pieces = new ArrayList<>(steps(key, text));
      for (String factor : List.of("0.1", "0.8", "1.25", "10")) {
        pieces.add(scaled(text, new BigDecimal(factor)));
      }
      for (String other : pieces) {
        others.add(value.substring(0, piece[0]) + other + value.substring(piece[1]));
      }
    }
  }

  private static List<String> steps(String key, String text) {
    List<String> steps = STEPS.getOrDefault(key, List.of());
    Matcher number = NUMBER.matcher(text);
    int at = number.find() ? steps.indexOf(number.group()) : -1;
    List<String> found = new ArrayList<>();
    if (at > 0) {
      found.add(number.replaceFirst(steps.get(at - 1)));
    }
    if (at >= 0 && at + 1 < steps.size()) {
      found.add(number.replaceFirst(steps.get(at + 1)));
    }
    return found;
  }

  private static String scaled(String text, BigDecimal factor) {
    return NUMBER
        .matcher(text)
        .replaceAll(
            m -> new BigDecimal(m.group()).multiply(factor).stripTrailingZeros().toPlainString());
  }

  private void add(int at, String owner, String what, String line) {
    String name = owner + " " + what;
    for (int i = 2; !names.add(name); i++) {
      name = owner + " " + what + " (" + i + ")";
    }
    List<String> lines = new ArrayList<>(base.lines());
    lines.set(at, line);
    mutants.add(new Mutant(base.name(), Kind.VALUE, name, lines, Set.of(owner), Set.of(at + 1)));
  }
}
