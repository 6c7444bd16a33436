package org.coilwright.worked;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.coilwright.table.Tables;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/** The worked examples, where they come from, and the formulas they ask. */
final class Examples {
  private static final Path FOLDER = Path.of("src/test/resources/worked-examples");
  private static final String SOURCES = "sources.yaml";

  private Examples() {}

  /** One of them, as it is written. */
  record Example(String file, Map<String, Object> entry) {
    String text(String key) {
      return entry.get(key) instanceof String text ? text : fail(file + " " + entry + ": " + key);
    }

    boolean isPublished() {
      return text("standing").equals("published");
    }

    /** What it counts as: one printed result asked twice, or the rows of one table, are one. */
    String result() {
      return entry.get("series") instanceof String series
          ? series
          : text("source") + " " + text("place") + entry.get("expected");
    }

    Map<String, Object> inputs() {
      return map(entry.get("inputs"));
    }

    @Override
    public String toString() {
      return entry.get("id") + ": " + entry.get("topic");
    }
  }

  static List<Example> all() {
    List<Example> all = new ArrayList<>();
    try (Stream<Path> files = Files.list(FOLDER)) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        String name = file.getFileName().toString();
        assertTrue(name.endsWith(".yaml"), () -> name + " is read by no test");
        if (!name.equals(SOURCES)) {
          if (!(read(file) instanceof List<?> entries)) {
            throw new IllegalStateException(name + " is no list");
          }
          entries.forEach(e -> all.add(new Example(name, map(e))));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return all;
  }

  /** Key to what is written of a source. */
  static Map<String, Map<String, Object>> sources() {
    Map<String, Map<String, Object>> sources = new TreeMap<>();
    map(read(FOLDER.resolve(SOURCES))).forEach((key, written) -> sources.put(key, map(written)));
    return sources;
  }

  /** Everything that can be asked. */
  static Map<String, Formula> formulas() {
    Tables tables = Tables.load();
    Map<String, Formula> all = new TreeMap<>(CoilFormulas.all(tables));
    all.putAll(TableLookups.all(tables));
    all.putAll(StudyFormulas.all(tables));
    all.putAll(SizingFormulas.all(tables));
    all.putAll(DayFormulas.all());
    return all;
  }

  private static Object read(Path file) {
    try {
      return new Yaml(new SafeConstructor(new LoaderOptions())).load(Files.readString(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Map<String, Object> map(@Nullable Object read) {
    Map<String, Object> out = new LinkedHashMap<>();
    if (read instanceof Map<?, ?> entries) {
      entries.forEach((k, v) -> out.put(String.valueOf(k), v));
    }
    return out;
  }
}
