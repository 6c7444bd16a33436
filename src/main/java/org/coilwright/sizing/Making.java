package org.coilwright.sizing;

import java.util.Map;
import java.util.Optional;
import org.coilwright.table.Cited;
import org.coilwright.table.CitedTable;
import org.coilwright.table.Tables;

/** What a load draws at first, and what a contact may make. Both as multiples, r.m.s. */
public final class Making {
  private Making() {}

  /** The upper end of what a kind of load draws at first, over its steady current. */
  public static Optional<Cited<Double>> inrush(String load, Tables tables) {
    return tables.lookup("inrush", Map.of("load", load), "high");
  }

  /**
   * What a contact makes, over its rated current in a category. A rating for transformers is given
   * for a peak, which counts as its r.m.s. equivalent.
   */
  public static Optional<Cited<Double>> makes(String category, Tables tables) {
    Optional<CitedTable.Row> row = row(category, tables);
    return row.flatMap(r -> r.number("stands-peak"))
        .map(peak -> peak.map(p -> p / Math.sqrt(2)))
        .or(() -> row.flatMap(r -> r.number("make")));
  }

  /** Why no table says what a category makes; empty if one does or the category is unknown. */
  public static Optional<String> whyNot(String category, Tables tables) {
    return row(category, tables).flatMap(r -> r.word("note")).map(Cited::value);
  }

  private static Optional<CitedTable.Row> row(String category, Tables tables) {
    return tables.table("power-contact-categories").rows().stream()
        .filter(r -> r.word("category").map(Cited::value).equals(Optional.of(category)))
        .findFirst();
  }
}
