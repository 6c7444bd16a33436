package org.coilwright.netlist;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.coilwright.netlist.Value.Keyed;
import org.coilwright.netlist.Value.Many;
import org.coilwright.netlist.Value.One;
import org.coilwright.netlist.Value.Section;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Rating;

/**
 * What {@code draft} is told: a load, a controller, distances. Values are asked for by their place,
 * {@code load.power}; a place that the format does not know is a fault of the program.
 */
public final class Brief {
  private final FileText text;
  private final Section root;

  Brief(FileText text, Section root) {
    this.text = text;
    this.root = root;
  }

  /** Its name as the user gave it. */
  public String file() {
    return text.file();
  }

  public Optional<Written<Quantity>> quantity(String path) {
    return holder(path).flatMap(s -> s.quantity(last(path)));
  }

  public Optional<Written<Rating>> rating(String path) {
    return holder(path).flatMap(s -> s.rating(last(path)));
  }

  /** A word, or a whole text. */
  public Optional<Written<String>> word(String path) {
    return holder(path).flatMap(s -> s.text(last(path)));
  }

  public Optional<Written<Boolean>> flag(String path) {
    return holder(path).flatMap(s -> s.flag(last(path)));
  }

  /** A whole number. */
  public Optional<Written<Integer>> whole(String path) {
    return holder(path).flatMap(s -> s.written(last(path), Integer.class));
  }

  /** True if there is a group of keys at that place. */
  public boolean hasGroup(String path) {
    return section(root, List.of(path.split("\\."))).isPresent();
  }

  /** Where a group of keys stands. */
  public Mark mark(String path) {
    return section(root, List.of(path.split("\\."))).map(Section::mark).orElse(root.mark());
  }

  /**
   * A group of keys as it may stand in a netlist: {@code {litres: 300, closed: true}}.
   *
   * @param kept which of its keys
   */
  public String yaml(String path, Predicate<String> kept) {
    return section(root, List.of(path.split("\\."))).map(s -> yaml(s, kept)).orElse("{}");
  }

  /** What is wrong at a place of the brief, as data. */
  public ReadingProblem problem(Mark mark, String what, String remedy) {
    Optional<String> line =
        mark.line() <= text.lines().size()
            ? Optional.of(FileText.excerpt(text.lines().get(mark.line() - 1)))
            : Optional.empty();
    return new ReadingProblem(
        file(), Optional.of(mark), FileText.harmless(what), FileText.harmless(remedy), line);
  }

  private Optional<Section> holder(String path) {
    int dot = path.lastIndexOf('.');
    return dot < 0
        ? Optional.of(root)
        : section(root, List.of(path.substring(0, dot).split("\\.")));
  }

  private static String last(String path) {
    return path.substring(path.lastIndexOf('.') + 1);
  }

  private static Optional<Section> section(Section from, List<String> path) {
    // where a word may stand in place of the group, there is none
    Optional<Section> next =
        from.text(path.get(0)).isPresent() ? Optional.empty() : from.section(path.get(0));
    return path.size() == 1
        ? next
        : next.flatMap(section -> section(section, path.subList(1, path.size())));
  }

  private static String yaml(Value value, Predicate<String> kept) {
    if (value instanceof One one) {
      return quoted(one.written().text().strip());
    } else if (value instanceof Many many) {
      return many.items().stream()
          .map(item -> yaml(item, kept))
          .collect(Collectors.joining(", ", "[", "]"));
    } else if (value instanceof Keyed keyed) {
      return keyed.members().entrySet().stream()
          .map(e -> e.getKey() + ": " + yaml(e.getValue().value(), k -> true))
          .collect(Collectors.joining(", ", "{", "}"));
    } else if (value instanceof Section section) {
      Map<String, Value> values = section.values();
      return values.entrySet().stream()
          .filter(e -> kept.test(e.getKey()))
          .map(e -> e.getKey() + ": " + yaml(e.getValue(), k -> true))
          .collect(Collectors.joining(", ", "{", "}"));
    }
    throw new IllegalStateException("a value of no kind: " + value);
  }

  /** A word as it may stand within braces. */
  public static String quoted(String word) {
    boolean plain =
        !word.isEmpty()
            && word.codePoints().noneMatch(c -> ",[]{}#:&*!|>'\"%@`?\\".indexOf(c) >= 0)
            && !word.startsWith("-");
    boolean percent =
        word.matches("[0-9. ±+-]+ ?%( -[0-9.]+ ?%)?|[0-9.]+ [A-Za-z]+( [AD]C)? ± [0-9.]+ %");
    return plain || percent ? word : "\"" + word.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
  }
}
