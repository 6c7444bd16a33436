package org.coilwright.table;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/** Every cited figure and table, read from the class path when first asked for. */
public final class Tables {
  private final Map<String, Source> bibliography = new HashMap<>();
  private final Map<String, Map<String, Object>> figureGroups = new HashMap<>();

  private Tables() {
    document("bibliography")
        .forEach((key, cite) -> bibliography.put(key, new Source(key, String.valueOf(cite))));
  }

  /** All tables; a table file is parsed when first asked for. */
  public static Tables load() {
    return new Tables();
  }

  /**
   * An entry of the bibliography.
   *
   * @throws IllegalArgumentException if there is none: a fault of the program
   */
  public Source source(String key) {
    Source source = bibliography.get(key);
    if (source == null) {
      throw new IllegalArgumentException("the bibliography has no " + key);
    }
    return source;
  }

  /**
   * A single cited figure, in the base unit of its dimension.
   *
   * @param id group and name, such as {@code suppression.reverse-voltage-multiple}; the group is
   *     the file {@code tables/figures/<group>.yaml}
   * @throws IllegalArgumentException if there is no such figure, or it lacks a source: a fault of
   *     the program
   */
  public Cited<Double> figure(String id) {
    int dot = id.indexOf('.');
    String group = id.substring(0, dot);
    Map<String, Object> figures =
        figureGroups.computeIfAbsent(group, g -> map(document("figures/" + g).get("figures")));
    Map<String, Object> row = map(figures.get(id.substring(dot + 1)));
    if (row.get("value") instanceof Number value
        && row.get("source") instanceof String source
        && row.get("standing") instanceof String standing) {
      return new Cited<>(
          value.doubleValue(),
          source(source),
          row.get("place") instanceof String place ? place : "",
          Standing.valueOf(standing.replace('-', '_').toUpperCase(Locale.ROOT)));
    }
    throw new IllegalArgumentException("no figure " + id + " with value, source and standing");
  }

  private static Map<String, Object> document(String name) {
    String resource = "/tables/" + name + ".yaml";
    try (InputStream in = Tables.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalArgumentException("no table " + resource);
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      Object read = new Yaml(new SafeConstructor(new LoaderOptions())).load(text);
      return map(read);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Map<String, Object> map(@Nullable Object read) {
    Map<String, Object> out = new HashMap<>();
    if (read instanceof Map<?, ?> entries) {
      entries.forEach((k, v) -> out.put(String.valueOf(k), v));
    }
    return out;
  }
}
