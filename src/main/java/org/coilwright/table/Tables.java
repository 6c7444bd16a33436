package org.coilwright.table;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Every cited figure and table of the class path. A file is parsed when first asked for, because a
 * check needs few of them and start-up counts. Any number of threads may ask at once: what is kept
 * never changes, and two that ask for the same file at the same time at worst both parse it.
 */
public final class Tables {
  private volatile Map<String, Source> bibliography = Map.of();
  private volatile Map<String, List<Reference>> references = Map.of();
  private final Map<String, Map<String, Object>> figureGroups = new ConcurrentHashMap<>();
  private final Map<String, Cited<Double>> figures = new ConcurrentHashMap<>();
  private final Map<String, CitedTable> tables = new ConcurrentHashMap<>();
  private final Set<String> opened = ConcurrentHashMap.newKeySet();
  private final TableReader reader = new TableReader(this::source);

  private Tables() {}

  /** All tables; nothing is parsed yet. */
  public static Tables load() {
    return new Tables();
  }

  /**
   * An entry of the bibliography.
   *
   * @throws IllegalArgumentException if there is none: a fault of the program
   */
  public Source source(String key) {
    if (bibliography.isEmpty()) {
      Map<String, Source> all = new HashMap<>();
      document("bibliography")
          .forEach((k, cite) -> all.put(k, new Source(k, String.valueOf(cite))));
      bibliography = all;
    }
    Source source = bibliography.get(key);
    if (source == null) {
      throw new IllegalArgumentException("the bibliography has no " + key);
    }
    return source;
  }

  /**
   * The documents behind an entry of the bibliography, in full; empty where no document stands
   * behind it, as with common practice. Kept apart from the short citations, which every check
   * prints, because only who asks for them needs them.
   */
  public List<Reference> references(String key) {
    if (references.isEmpty()) {
      Map<String, List<Reference>> all = new HashMap<>();
      document("references").forEach((k, v) -> all.put(k, reader.references(k, v)));
      references = all;
    }
    return references.getOrDefault(key, List.of());
  }

  /**
   * A single cited figure, in the base unit of its dimension.
   *
   * @param id group and name, such as {@code suppression.reverse-voltage-multiple}; the group is
   *     the file {@code tables/figures/<group>.yaml}
   * @throws IllegalArgumentException if there is no such figure, or it lacks a source or standing:
   *     a fault of the program
   */
  public Cited<Double> figure(String id) {
    Cited<Double> known = figures.get(id);
    if (known == null) {
      int dot = id.indexOf('.');
      String name = id.substring(0, dot);
      Map<String, Object> group = figureGroups.get(name);
      if (group == null) {
        group = TableReader.map(document("figures/" + name).get("figures"));
        figureGroups.put(name, group);
      }
      known = reader.figure(id, TableReader.map(group.get(id.substring(dot + 1))));
      figures.put(id, known);
    }
    return known;
  }

  /**
   * A table by its file name without ending.
   *
   * @throws IllegalArgumentException if there is none, or it does not say where its figures come
   *     from: a fault of the program
   */
  public CitedTable table(String name) {
    CitedTable known = tables.get(name);
    if (known == null) {
      known = reader.table(name, document(name));
      tables.put(name, known);
    }
    return known;
  }

  /**
   * The figure in the row whose words match; empty if no row does or the source leaves it empty.
   *
   * @param where word column to word
   */
  public Optional<Cited<Double>> lookup(String table, Map<String, String> where, String column) {
    return table(table).lookup(where, column);
  }

  /**
   * The figure at a value of the table's numeric key; empty outside the rows, and between them
   * where the table does not say what holds there.
   *
   * @param where word column to word; may be empty
   * @param at in the unit of the key column
   */
  public Optional<Cited<Double>> lookup(
      String table, Map<String, String> where, double at, String column) {
    return table(table).lookup(where, at, column);
  }

  private Map<String, Object> document(String name) {
    opened.add(name);
    return TableReader.document(name);
  }

  /**
   * Every file that was opened so far, with the SHA-256 digest of its bytes in lower-case hex: what
   * a result rests on, so that another version can tell which of them has changed since.
   */
  public SortedMap<String, String> digests() {
    SortedMap<String, String> digests = new TreeMap<>();
    for (String name : opened) {
      try {
        byte[] digest = MessageDigest.getInstance("SHA-256").digest(TableReader.bytes(name));
        digests.put(name, HexFormat.of().formatHex(digest));
      } catch (NoSuchAlgorithmException e) {
        throw new IllegalStateException("every Java has SHA-256", e);
      }
    }
    return digests;
  }
}
