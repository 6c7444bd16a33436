package org.coilwright.netlist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.coilwright.netlist.Shape.ByKind;
import org.coilwright.netlist.Shape.Either;
import org.coilwright.netlist.Shape.Fields;
import org.coilwright.netlist.Shape.Listing;
import org.coilwright.netlist.Shape.Named;
import org.junit.jupiter.api.Test;

/** The format describes itself; what it says of itself must be true. */
class FormatTest {
  private static void gather(Shape shape, Set<Fields> seen) {
    if (shape instanceof Fields fields && seen.add(fields)) {
      fields.keys().forEach(key -> gather(key.shape(), seen));
    } else if (shape instanceof Listing listing) {
      gather(listing.item(), seen);
    } else if (shape instanceof Named named) {
      gather(named.value(), seen);
    } else if (shape instanceof Either either) {
      gather(either.fields(), seen);
    } else if (shape instanceof ByKind byKind) {
      byKind.kinds().values().forEach(fields -> gather(fields, seen));
    }
  }

  private static Set<Fields> all() {
    Set<Fields> all = new HashSet<>();
    gather(Format.NETLIST, all);
    gather(Format.INCLUDED, all);
    return all;
  }

  @Test
  void every_example_of_a_key_is_good_for_that_key() {
    List<String> wrong = new ArrayList<>();
    int examples = 0;
    for (Fields fields : all()) {
      for (Key key : fields.keys()) {
        String yaml = key.name() + ": " + key.example() + "\n";
        Problems problems = new Problems("example");
        FileText text = FileText.of("example", yaml.getBytes(StandardCharsets.UTF_8));
        Tree.Entries entries = (Tree.Entries) YamlTree.of(text, problems).orElseThrow();
        new ShapeReader(problems, new Types())
            .read(
                entries.entries().get(0).value(),
                key.shape(),
                entries.entries().get(0).key().mark(),
                key.name());
        problems.all().forEach(p -> wrong.add(fields.noun() + ": " + yaml + p.what()));
        examples++;
      }
    }
    assertEquals(List.of(), wrong);
    assertTrue(examples > 150, "only " + examples);
  }

  @Test
  void every_key_says_what_it_holds_in_one_line() {
    for (Fields fields : all()) {
      for (Key key : fields.keys()) {
        assertTrue(key.says().matches("[^\\n]{3,80}\\."), fields.noun() + " " + key.name());
      }
    }
  }

  @Test
  void the_schema_has_every_kind_and_key() {
    String schema = NetlistSchema.text();
    for (String kind : Format.PART.kinds().keySet()) {
      assertTrue(schema.contains("\"kind-" + kind + "\""), kind);
    }
    Set<Fields> ofTheNetlist = new HashSet<>();
    gather(Format.NETLIST, ofTheNetlist);
    for (Fields fields : ofTheNetlist) {
      for (Key key : fields.keys()) {
        assertTrue(schema.contains("\"" + key.name() + "\": "), key.name());
        assertTrue(schema.contains(key.says().replace("\"", "\\\"")), key.says());
      }
    }
  }

  @Test
  void the_nearest_names_are_those_someone_meant() {
    List<String> known = List.of("voltage", "resistance", "release", "range", "A1", "A2", "PE");
    assertEquals(List.of("voltage"), NearNames.nearest("votlage", known));
    assertEquals(List.of("voltage"), NearNames.nearest("Voltage", known));
    assertEquals(List.of("resistance"), NearNames.nearest("resistence", known));
    assertEquals(List.of("A1", "A2"), NearNames.nearest("A3", known));
    assertEquals(List.of(), NearNames.nearest("colour", known));
    assertEquals(List.of(), NearNames.nearest("", known));
    assertEquals(List.of(), NearNames.nearest("v".repeat(1000), known));
  }
}
