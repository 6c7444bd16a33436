package org.coilwright.rule;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/**
 * What a result rests on.
 *
 * @param sources printed citations, no doubles
 * @param standing the weakest of all it rests on
 */
public record Basis(List<String> sources, Standing standing) {
  /** Gathers the citations of several figures. */
  public static Basis of(Cited<?>... figures) {
    return of(List.of(figures));
  }

  /** Gathers the citations of several figures. */
  public static Basis of(List<? extends Cited<?>> figures) {
    Set<String> sources = new LinkedHashSet<>();
    Standing standing = Standing.PUBLISHED;
    for (Cited<?> figure : figures) {
      sources.add(printed(figure));
      standing = standing.weaker(figure.standing());
    }
    return new Basis(List.copyOf(sources), standing);
  }

  private static String printed(Cited<?> figure) {
    String cite = figure.source().cite();
    if (figure.place().isEmpty()) {
      return cite;
    }
    // what has no source has no place in one either: the words say what the practice is about
    boolean placed = figure.standing() != Standing.COMMON_PRACTICE;
    return cite + (placed ? ", " : ": ") + figure.place();
  }

  /**
   * What a rule rests on that compares no figure: the sources that its facts name.
   *
   * @param standing how sure the weakest of them is
   */
  public static Basis of(RuleFacts facts, Tables tables, Standing standing) {
    return new Basis(
        facts.sources().stream().map(key -> tables.source(key).cite()).toList(), standing);
  }

  /** Both together. */
  public Basis and(Basis other) {
    List<String> all = new ArrayList<>(sources);
    other.sources.stream().filter(s -> !all.contains(s)).forEach(all::add);
    return new Basis(List.copyOf(all), standing.weaker(other.standing));
  }
}
