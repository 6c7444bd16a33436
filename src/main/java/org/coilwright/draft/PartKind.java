package org.coilwright.draft;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.coilwright.netlist.PlainYaml;

/**
 * A part as it is written into a netlist and asked for in a shop.
 *
 * @param place where it sits: board, box, controller or load
 * @param netlist its text, with gaps
 * @param least figures from easily to hardly had, by gap
 * @param leastAbove the same for a load above 250 V, where these differ
 * @param buy what to ask for, with gaps; empty if nothing is to be bought
 */
record PartKind(
    String place,
    String netlist,
    Map<String, List<String>> least,
    Map<String, List<String>> leastAbove,
    Optional<String> buy) {
  private static final double LOW_VOLTAGE = 250;

  private static final Pattern GAP = Pattern.compile("\\$\\{([a-z0-9-]+)}");

  /** Every kind by its name. */
  static Map<String, PartKind> all() {
    PlainYaml file = Arrangement.resource("/arrangements/parts.yaml");
    Map<String, PartKind> all = new LinkedHashMap<>();
    for (String name : file.keys()) {
      PlainYaml one = file.group(name).orElseThrow();
      all.put(
          name,
          new PartKind(
              one.must("place"),
              one.must("netlist"),
              steps(one, "least"),
              steps(one, "least above 250 V"),
              one.word("buy")));
    }
    return all;
  }

  private static Map<String, List<String>> steps(PlainYaml one, String key) {
    Map<String, List<String>> steps = new LinkedHashMap<>();
    one.group(key).ifPresent(g -> g.keys().forEach(k -> steps.put(k, g.words(k))));
    return steps;
  }

  /** Figures from easily to hardly had, for a load of so many volts. */
  Map<String, List<String>> steps(double volts) {
    Map<String, List<String>> all = new LinkedHashMap<>(least);
    if (volts > LOW_VOLTAGE) {
      all.putAll(leastAbove);
    }
    return all;
  }

  /** A text with its gaps filled. */
  static String filled(String text, Function<String, String> values) {
    return GAP.matcher(text).replaceAll(m -> Matcher.quoteReplacement(values.apply(m.group(1))));
  }
}
