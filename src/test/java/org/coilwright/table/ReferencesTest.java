package org.coilwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every source is named so that anybody can find the document. */
class ReferencesTest {
  private final Tables tables = Tables.load();

  /** Makers of components among the publishers: cited, and named nowhere else. */
  private static final List<String> MAKERS =
      List.of(
          "ABB",
          "Atlas Copco",
          "Beckhoff",
          "bre transformer",
          "Contax",
          "Dwyer",
          "Eaton",
          "ELESTA",
          "Finder",
          "HIMA",
          "Kewtech",
          "Kyoritsu",
          "LOVATO",
          "Metrel",
          "National Instruments",
          "Omron",
          "Panasonic",
          "PKP",
          "Rockwell",
          "Schneider",
          "Siemens",
          "SMA",
          "Square D",
          "TE Connectivity",
          "TRILUX",
          "Tyco");

  private static Set<String> keys(String file) {
    return new TreeSet<>(TableReader.document(file).keySet());
  }

  @Test
  void every_entry_of_the_bibliography_names_its_documents() {
    Set<String> unnamed = new TreeSet<>(keys("bibliography"));
    unnamed.removeAll(keys("references"));
    assertEquals(Set.of(), unnamed, "without documents in tables/references.yaml");
    for (String key : keys("bibliography")) {
      for (Reference document : tables.references(key)) {
        for (String part :
            List.of(document.title(), document.edition(), document.publisher(), document.seen())) {
          assertFalse(part.isBlank(), key);
          assertFalse(
              Pattern.compile("https?:|www\\.|\\w\\.(com|org|de|uk)\\b").matcher(part).find(),
              part);
        }
        assertTrue(document.full().startsWith(document.title()), key);
      }
    }
  }

  @Test
  void an_entry_without_a_document_says_so_in_words() {
    TableReader.document("references")
        .forEach(
            (key, written) -> {
              if (tables.references(key).isEmpty()) {
                assertTrue(written instanceof String said && said.length() > 20, key);
              }
            });
  }

  /** What was only remembered, or has no document, makes no figure published. */
  @Test
  void a_published_figure_rests_on_a_document_that_was_seen() {
    List<Cited<?>> all = new ArrayList<>();
    AllTablesTest.tableNames()
        .forEach(
            name ->
                tables
                    .table(name)
                    .rows()
                    .forEach(
                        row -> {
                          all.addAll(row.numbers().values());
                          all.addAll(row.words().values());
                        }));
    AllTablesTest.figureGroups()
        .forEach(
            group ->
                TableReader.map(TableReader.document("figures/" + group).get("figures"))
                    .keySet()
                    .forEach(name -> all.add(tables.figure(group + "." + name))));
    for (Cited<?> figure : all) {
      if (figure.standing() == Standing.PUBLISHED) {
        assertTrue(
            tables.references(figure.source().key()).stream()
                .anyMatch(document -> !document.seen().startsWith("from memory")),
            () -> figure.toString());
      }
    }
  }

  @Test
  void a_maker_of_components_stands_as_a_publisher_and_nowhere_else() throws IOException {
    String publishers =
        String.join(
            " ",
            keys("references").stream()
                .flatMap(key -> tables.references(key).stream())
                .map(document -> document.publisher() + document.seen())
                .toList());
    MAKERS.forEach(maker -> assertTrue(publishers.contains(maker), maker));
    Pattern named = Pattern.compile("\\b(" + String.join("|", MAKERS) + ")\\b");
    List<String> found = new ArrayList<>();
    for (String root :
        List.of("src/main", "safety-notes", "wiring-examples", "src/test/resources/rules")) {
      try (Stream<Path> files = Files.walk(Path.of(root))) {
        for (Path file : files.filter(Files::isRegularFile).toList()) {
          if (file.endsWith("references.yaml")
              || !file.toString().matches(".*\\.(java|yaml|md|txt|properties)")) {
            continue;
          }
          String text = Files.readString(file).replaceAll("(?s)\n## Sources\n.*?(?=\n## |$)", "");
          if (named.matcher(text).find()) {
            found.add(file.toString());
          }
        }
      }
    }
    assertEquals(List.of(), found);
  }
}
