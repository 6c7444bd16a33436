package org.coilwright.table;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Every table file as the build has parsed it, in one file beside the classes: parsing YAML anew
 * takes a tenth of a short run. Where there is no such file the tables are parsed when they are
 * asked for; what comes out is the same.
 *
 * <p>It begins with the names and where each document starts. A document begins with its texts, and
 * its values then name them by number.
 */
final class TablePack {
  private static final String RESOURCE = "/tables.pack";

  private static final int NOTHING = 0;
  private static final int TEXT = 1;
  private static final int NUMBER = 2;
  private static final int LIST = 3;
  private static final int MAP = 4;

  private final byte[] bytes;
  private final Map<String, Integer> starts = new HashMap<>();

  /**
   * A pack that was written by {@link #packed}.
   *
   * @param bytes not copied
   */
  TablePack(byte[] bytes) {
    this.bytes = bytes;
    if (bytes.length > 0) {
      Cursor at = new Cursor(0);
      List<String> names = at.texts();
      List<Integer> offsets = new ArrayList<>();
      names.forEach(name -> offsets.add(at.number()));
      for (int i = 0; i < names.size(); i++) {
        starts.put(names.get(i), at.position + offsets.get(i));
      }
    }
  }

  /** The build's, read when first asked for; it never changes. */
  private static final class Built {
    private static final TablePack PACK = new TablePack(read());

    private static byte[] read() {
      try (InputStream in = TablePack.class.getResourceAsStream(RESOURCE)) {
        return in == null ? new byte[0] : in.readAllBytes();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  static TablePack built() {
    return Built.PACK;
  }

  /** A document as {@link TableReader#parse} gives it; null if it is not in the pack. */
  @Nullable Map<String, Object> document(String name) {
    Integer start = starts.get(name);
    if (start == null) {
      return null;
    }
    Cursor at = new Cursor(start);
    at.texts = at.texts();
    return TableReader.map(at.value());
  }

  /** Reads on from a place. */
  private final class Cursor {
    private int position;
    private List<String> texts = List.of();

    Cursor(int position) {
      this.position = position;
    }

    int number() {
      byte[] b = bytes;
      int p = position;
      position = p + 4;
      return (b[p] << 24)
          | ((b[p + 1] & 0xff) << 16)
          | ((b[p + 2] & 0xff) << 8)
          | (b[p + 3] & 0xff);
    }

    List<String> texts() {
      int count = number();
      List<String> read = new ArrayList<>(count);
      for (int i = 0; i < count; i++) {
        int length = number();
        read.add(new String(bytes, position, length, StandardCharsets.UTF_8));
        position += length;
      }
      return read;
    }

    @Nullable Object value() {
      return switch (bytes[position++]) {
        case TEXT -> texts.get(number());
        case NUMBER -> {
          long high = number();
          yield Double.longBitsToDouble((high << 32) | (number() & 0xffffffffL));
        }
        case LIST -> {
          int items = number();
          List<@Nullable Object> list = new ArrayList<>(items);
          for (int i = 0; i < items; i++) {
            list.add(value());
          }
          yield list;
        }
        case MAP -> {
          int entries = number();
          Map<String, @Nullable Object> map = new LinkedHashMap<>();
          for (int i = 0; i < entries; i++) {
            String key = texts.get(number());
            map.put(key, value());
          }
          yield map;
        }
        default -> null;
      };
    }
  }

  /**
   * Packs the tables of a folder.
   *
   * @param args the folder that holds {@code tables}; the pack goes beside it
   */
  public static void main(String[] args) throws IOException {
    Path root = Path.of(args[0]);
    Path tables = root.resolve("tables");
    Map<String, Map<String, Object>> documents = new TreeMap<>();
    try (Stream<Path> all = Files.walk(tables)) {
      for (Path file : all.filter(f -> f.toString().endsWith(".yaml")).toList()) {
        String path = tables.relativize(file).toString().replace('\\', '/');
        documents.put(
            path.substring(0, path.length() - ".yaml".length()),
            TableReader.parse(Files.readString(file)));
      }
    }
    Files.write(root.resolve(RESOURCE.substring(1)), packed(documents));
  }

  /** Documents by their names as one file. */
  static byte[] packed(Map<String, Map<String, Object>> documents) throws IOException {
    ByteArrayOutputStream head = new ByteArrayOutputStream();
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    DataOutputStream to = new DataOutputStream(head);
    texts(List.copyOf(documents.keySet()), to);
    for (Map<String, Object> document : documents.values()) {
      to.writeInt(body.size());
      Map<String, Integer> numbers = new LinkedHashMap<>();
      ByteArrayOutputStream values = new ByteArrayOutputStream();
      value(document, numbers, new DataOutputStream(values));
      texts(List.copyOf(numbers.keySet()), new DataOutputStream(body));
      values.writeTo(body);
    }
    body.writeTo(head);
    return head.toByteArray();
  }

  private static void texts(List<String> texts, DataOutputStream to) throws IOException {
    to.writeInt(texts.size());
    for (String text : texts) {
      byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
      to.writeInt(utf8.length);
      to.write(utf8);
    }
  }

  private static void value(
      @Nullable Object value, Map<String, Integer> numbers, DataOutputStream to)
      throws IOException {
    if (value instanceof Map<?, ?> map) {
      to.writeByte(MAP);
      to.writeInt(map.size());
      for (Map.Entry<?, ?> entry : map.entrySet()) {
        to.writeInt(numberOf(String.valueOf(entry.getKey()), numbers));
        value(entry.getValue(), numbers, to);
      }
    } else if (value instanceof List<?> list) {
      to.writeByte(LIST);
      to.writeInt(list.size());
      for (Object item : list) {
        value(item, numbers, to);
      }
    } else if (value instanceof Double number) {
      to.writeByte(NUMBER);
      to.writeLong(Double.doubleToLongBits(number));
    } else if (value instanceof String text) {
      to.writeByte(TEXT);
      to.writeInt(numberOf(text, numbers));
    } else if (value == null) {
      to.writeByte(NOTHING);
    } else {
      throw new IllegalArgumentException("no value of a table: " + value);
    }
  }

  private static int numberOf(String text, Map<String, Integer> numbers) {
    Integer known = numbers.get(text);
    if (known == null) {
      known = numbers.size();
      numbers.put(text, known);
    }
    return known;
  }
}
