package org.coilwright.draft;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** What was chosen so far, by name: {@code breaker}, {@code K1.watts}; never changed. */
record Figures(Map<String, String> chosen) {
  Figures {
    chosen = Map.copyOf(chosen);
  }

  /** The same with one figure set. */
  Figures with(String name, String value) {
    Map<String, String> all = new LinkedHashMap<>(chosen);
    all.put(name, value);
    return new Figures(all);
  }

  Optional<String> find(String name) {
    return Optional.ofNullable(chosen.get(name));
  }

  /**
   * A figure that must be there.
   *
   * @throws IllegalStateException if it is not: an arrangement names what nobody chooses
   */
  String must(String name) {
    return find(name).orElseThrow(() -> new IllegalStateException("nobody chose " + name));
  }

  double number(String name) {
    return Double.parseDouble(must(name));
  }
}
