package org.coilwright.netlist;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.coilwright.netlist.Shape.Either;
import org.coilwright.netlist.Shape.Fields;
import org.coilwright.netlist.Shape.Listing;
import org.coilwright.netlist.Shape.Named;

/** The parts and keys that the format knows, each with its example, for whoever asks by name. */
public final class Glossary {
  /**
   * A key at one place.
   *
   * @param place the thing it is a key of: {@code a coil}
   * @param says what it holds
   * @param example how it is written: {@code release: 10..50 %}
   * @param must true if it cannot be left out there
   */
  public record Use(String place, String says, String example, boolean must) {}

  private final Map<String, Fields> parts = Format.PART.kinds();
  private final Map<String, Set<Use>> keys = new LinkedHashMap<>();

  /** That of the format. */
  public Glossary() {
    walk(Format.NETLIST, new LinkedHashSet<>());
    parts.values().forEach(fields -> walk(fields, new LinkedHashSet<>()));
  }

  private void walk(Fields fields, Set<Fields> above) {
    if (!above.add(fields)) {
      return;
    }
    for (Key key : fields.keys()) {
      keys.computeIfAbsent(key.name(), k -> new LinkedHashSet<>())
          .add(new Use(fields.noun(), key.says(), key.name() + ": " + key.example(), key.must()));
      within(key.shape()).forEach(inner -> walk(inner, new LinkedHashSet<>(above)));
    }
  }

  private static List<Fields> within(Shape shape) {
    if (shape instanceof Fields fields) {
      return List.of(fields);
    } else if (shape instanceof Either either) {
      return List.of(either.fields());
    } else if (shape instanceof Listing listing) {
      return within(listing.item());
    } else if (shape instanceof Named named) {
      return within(named.value());
    }
    return List.of();
  }

  /** What a part may be: the words behind {@code is:}. */
  public Set<String> parts() {
    return parts.keySet();
  }

  /** The keys of a part, those that must be there first; none if there is no such part. */
  public List<Use> keysOf(String part) {
    Fields fields = parts.get(part);
    List<Use> all = new ArrayList<>();
    if (fields != null) {
      for (boolean must : new boolean[] {true, false}) {
        fields.keys().stream()
            .filter(key -> key.must() == must)
            .forEach(
                key ->
                    all.add(
                        new Use(
                            fields.noun(),
                            key.says(),
                            key.name() + ": " + (key.name().equals("is") ? part : key.example()),
                            must)));
      }
    }
    return List.copyOf(all);
  }

  /** Every key there is. */
  public Set<String> keys() {
    return new TreeSet<>(keys.keySet());
  }

  /** Where a key may stand and what it holds there; none if there is no such key. */
  public Set<Use> usesOf(String key) {
    return keys.getOrDefault(key, Set.of());
  }

  /** The utilization categories that a rating may have. */
  public List<String> categories() {
    return RelayFormat.CATEGORY.words();
  }
}
