package org.coilwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Packed or not, a table is the same, and so is the order of what is in it. */
class TablePackTest {
  private static final Path TABLES = Path.of("src/main/resources/tables");

  private static Map<String, Map<String, Object>> written() throws IOException {
    Map<String, Map<String, Object>> documents = new TreeMap<>();
    try (Stream<Path> files = Files.walk(TABLES)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".yaml")).toList()) {
        String path = TABLES.relativize(file).toString().replace('\\', '/');
        documents.put(path.replace(".yaml", ""), TableReader.parse(Files.readString(file)));
      }
    }
    return documents;
  }

  /** Maps by their order too, which equality does not look at. */
  private static Object inOrder(Object value) {
    if (value instanceof Map<?, ?> map) {
      List<Object> entries = new ArrayList<>();
      map.forEach((key, held) -> entries.add(List.of(key, String.valueOf(inOrder(held)))));
      return entries;
    }
    return value instanceof List<?> list
        ? list.stream().map(item -> String.valueOf(inOrder(String.valueOf(item)))).toList()
        : String.valueOf(value);
  }

  @Test
  void every_table_comes_out_as_it_was_parsed() throws IOException {
    Map<String, Map<String, Object>> documents = written();
    assertTrue(documents.size() > 30);
    TablePack pack = new TablePack(TablePack.packed(documents));
    documents.forEach(
        (name, document) -> {
          Map<String, Object> unpacked = Objects.requireNonNull(pack.document(name), name);
          assertEquals(document, unpacked, name);
          assertEquals(inOrder(document), inOrder(unpacked), name);
        });
  }

  @Test
  void what_is_not_in_it_is_not_there() throws IOException {
    assertNull(new TablePack(TablePack.packed(written())).document("no such table"));
    assertNull(new TablePack(new byte[0]).document("bibliography"));
  }
}
