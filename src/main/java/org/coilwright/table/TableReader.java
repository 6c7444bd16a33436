package org.coilwright.table;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.composer.Composer;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;
import org.yaml.snakeyaml.parser.Parser;
import org.yaml.snakeyaml.parser.ParserImpl;
import org.yaml.snakeyaml.reader.StreamReader;
import org.yaml.snakeyaml.resolver.Resolver;

/**
 * Turns a table file into records and refuses one that does not say where its figures come from.
 * Every fault found here is a fault of the program, not of a user.
 */
final class TableReader {
  private final Function<String, Source> bibliography;

  TableReader(Function<String, Source> bibliography) {
    this.bibliography = bibliography;
  }

  /** The origin a cell has unless it names a nearer one. */
  private record Origin(Source source, String place, Standing standing) {}

  CitedTable table(String name, Map<String, Object> file) {
    Origin origin =
        new Origin(
            bibliography.apply(text(name, file, "source")),
            text(name, file, "place"),
            standing(name, text(name, file, "standing")));
    if (!"undecided".equals(file.get("outside"))) {
      throw fault(name, "does not say outside: undecided");
    }
    List<Column> columns = new ArrayList<>();
    Map<String, Map<String, Object>> ownOrigin = new HashMap<>();
    for (Object written : list(file.get("columns"))) {
      Map<String, Object> column = map(written);
      columns.add(column(name, column));
      ownOrigin.put(text(name, column, "name"), column);
    }
    List<CitedTable.Row> rows = new ArrayList<>();
    for (Object written : list(file.get("rows"))) {
      Map<String, Object> rowOrigin = map(written);
      List<Object> cells = list(written instanceof List<?> ? written : rowOrigin.get("cells"));
      if (cells.size() != columns.size()) {
        throw fault(name, "has a row of " + cells.size() + " cells: " + cells);
      }
      Map<String, Cited<Double>> numbers = new LinkedHashMap<>();
      Map<String, Cited<String>> words = new LinkedHashMap<>();
      for (int i = 0; i < cells.size(); i++) {
        Column column = columns.get(i);
        Map<String, Object> columnOrigin = ownOrigin.getOrDefault(column.name(), Map.of());
        Origin near = nearer(name, nearer(name, origin, columnOrigin), rowOrigin);
        Object cell = cells.get(i);
        if (cell instanceof Map<?, ?>) {
          Map<String, Object> own = map(cell);
          near = nearer(name, near, own);
          cell = own.get("value");
        }
        if (cell == null) {
          continue;
        }
        boolean word = column.role() == Column.Role.WORD || column.role() == Column.Role.WORD_KEY;
        if (word) {
          words.put(
              column.name(), new Cited<>(cell.toString(), near.source, near.place, near.standing));
        } else if (cell instanceof Number number) {
          numbers.put(
              column.name(),
              new Cited<>(number.doubleValue(), near.source, near.place, near.standing));
        } else {
          throw fault(name, "has " + cell + " for a number in column " + column.name());
        }
      }
      rows.add(new CitedTable.Row(numbers, words));
    }
    if (columns.isEmpty() || rows.isEmpty()) {
      throw fault(name, "has no columns or no rows");
    }
    return new CitedTable(
        name,
        text(name, file, "title"),
        file.get("edition") instanceof String edition ? edition : "",
        between(name, text(name, file, "between")),
        List.copyOf(columns),
        List.copyOf(rows));
  }

  /** A single figure of a figures file. */
  Cited<Double> figure(String id, Map<String, Object> row) {
    if (row.get("value") instanceof Number value) {
      return new Cited<>(
          value.doubleValue(),
          bibliography.apply(text(id, row, "source")),
          row.get("place") instanceof String place ? place : "",
          standing(id, text(id, row, "standing")));
    }
    throw fault(id, "is no figure, or has no value");
  }

  /** The documents of one entry of the bibliography; a text instead of a list: there are none. */
  List<Reference> references(String key, Object written) {
    return list(written).stream()
        .map(TableReader::map)
        .map(
            document ->
                new Reference(
                    text(key, document, "title"),
                    text(key, document, "edition"),
                    text(key, document, "publisher"),
                    text(key, document, "seen")))
        .toList();
  }

  private Origin nearer(String name, Origin origin, Map<String, Object> own) {
    return new Origin(
        own.get("source") instanceof String key ? bibliography.apply(key) : origin.source,
        own.get("place") instanceof String place ? place : origin.place,
        own.get("standing") instanceof String word ? standing(name, word) : origin.standing);
  }

  private static Column column(String name, Map<String, Object> written) {
    String role = written.get("is") instanceof String is ? is : "number";
    String order = written.get("order") instanceof String way ? way : "free";
    return new Column(
        text(name, written, "name"),
        written.get("unit") instanceof String unit ? unit : "",
        Column.Role.valueOf(role.replace('-', '_').toUpperCase(Locale.ROOT)),
        Column.Order.valueOf(order.toUpperCase(Locale.ROOT)));
  }

  private static Between between(String name, String word) {
    for (Between between : Between.values()) {
      if (between.word().equals(word)) {
        return between;
      }
    }
    throw fault(name, "does not say what holds between rows");
  }

  private static Standing standing(String name, String word) {
    for (Standing standing : Standing.values()) {
      if (standing.word().equals(word)) {
        return standing;
      }
    }
    throw fault(name, "has an unknown standing: " + word);
  }

  private static String text(String name, Map<String, Object> from, String key) {
    if (from.get(key) instanceof String text && !text.isBlank()) {
      return text;
    }
    throw fault(name, "does not say its " + key);
  }

  private static IllegalArgumentException fault(String name, String what) {
    return new IllegalArgumentException("table or figure " + name + " " + what);
  }

  /** A YAML file of the class path as a map. */
  static Map<String, Object> document(String name) {
    Map<String, Object> packed = TablePack.built().document(name);
    return packed != null ? packed : parse(new String(bytes(name), StandardCharsets.UTF_8));
  }

  /** A file of the class path as it stands. */
  static byte[] bytes(String name) {
    String resource = "/tables/" + name + ".yaml";
    try (InputStream in = TableReader.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalArgumentException("no table " + resource);
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * A document as maps, lists, numbers and strings. Composed without the library's constructors,
   * because loading those classes would cost a short check more than the tables themselves.
   */
  static Map<String, Object> parse(String text) {
    LoaderOptions options = new LoaderOptions();
    Parser parser = new ParserImpl(new StreamReader(text), options);
    return map(value(new Composer(parser, new Resolver(), options).getSingleNode()));
  }

  private static @Nullable Object value(@Nullable Node node) {
    if (node instanceof MappingNode mapping) {
      Map<String, @Nullable Object> out = new LinkedHashMap<>();
      for (NodeTuple entry : mapping.getValue()) {
        String key = String.valueOf(value(entry.getKeyNode()));
        if (out.containsKey(key)) {
          throw new IllegalArgumentException("twice in a table file: " + key);
        }
        out.put(key, value(entry.getValueNode()));
      }
      return out;
    }
    if (node instanceof SequenceNode sequence) {
      List<@Nullable Object> out = new ArrayList<>();
      sequence.getValue().forEach(n -> out.add(value(n)));
      return out;
    }
    if (node instanceof ScalarNode scalar && !scalar.getTag().equals(Tag.NULL)) {
      boolean number = scalar.getTag().equals(Tag.INT) || scalar.getTag().equals(Tag.FLOAT);
      return number ? Double.valueOf(scalar.getValue()) : scalar.getValue();
    }
    return null;
  }

  static Map<String, Object> map(@Nullable Object read) {
    Map<String, Object> out = new LinkedHashMap<>();
    if (read instanceof Map<?, ?> entries) {
      entries.forEach((k, v) -> out.put(String.valueOf(k), v));
    }
    return out;
  }

  private static List<Object> list(@Nullable Object read) {
    return read instanceof List<?> items ? new ArrayList<>(items) : new ArrayList<>();
  }
}
