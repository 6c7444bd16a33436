package org.coilwright.netlist;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Tree.Entries;
import org.coilwright.netlist.Tree.Items;
import org.coilwright.netlist.Tree.Leaf;

/** A file that comes with the program: words, lists of words, and keys with either. */
public final class PlainYaml {
  private final Map<String, Tree> values = new LinkedHashMap<>();
  private final String name;

  private PlainYaml(String name, Tree tree) {
    this.name = name;
    if (tree instanceof Entries entries) {
      entries.entries().forEach(e -> values.put(e.key().text(), e.value()));
    } else {
      throw new IllegalStateException(name + " holds no keys");
    }
  }

  /**
   * Reads one.
   *
   * @throws IllegalStateException if it is not such a file: the build is at fault
   */
  public static PlainYaml of(String name, byte[] bytes) {
    Problems problems = new Problems(name);
    Optional<Tree> tree =
        YamlTree.of(FileText.of(name, bytes), problems).filter(t -> problems.isEmpty());
    return new PlainYaml(
        name, tree.orElseThrow(() -> new IllegalStateException(name + " is no YAML")));
  }

  /** The same from text. */
  public static PlainYaml of(String name, String text) {
    return of(name, text.getBytes(StandardCharsets.UTF_8));
  }

  /** Its keys in the order written. */
  public List<String> keys() {
    return List.copyOf(values.keySet());
  }

  /** The word or text behind a key. */
  public Optional<String> word(String key) {
    return values.get(key) instanceof Leaf leaf ? Optional.of(leaf.text()) : Optional.empty();
  }

  /**
   * The word that must be there.
   *
   * @throws IllegalStateException if it is not
   */
  public String must(String key) {
    return word(key).orElseThrow(() -> new IllegalStateException(name + " lacks " + key));
  }

  /** The words of a list; none if the key is not there. */
  public List<String> words(String key) {
    return values.get(key) instanceof Items items
        ? items.items().stream().map(i -> ((Leaf) i).text()).toList()
        : List.of();
  }

  /** The keys behind a key; none if it is not there. */
  public Optional<PlainYaml> group(String key) {
    return values.get(key) instanceof Entries entries
        ? Optional.of(new PlainYaml(name + " " + key, entries))
        : Optional.empty();
  }
}
