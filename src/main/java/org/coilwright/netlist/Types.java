package org.coilwright.netlist;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Tree.Entries;
import org.coilwright.netlist.Tree.Entry;
import org.coilwright.netlist.Tree.Leaf;
import org.coilwright.quantity.Words;

/** The bodies under {@code types:}, of the netlist and of every file it includes. */
final class Types {
  private final Map<String, Entry> bodies = new LinkedHashMap<>();

  /** Takes the types of one file; a name that is taken already is a problem. */
  void add(Entries types, Problems problems) {
    for (Entry entry : types.entries()) {
      Entry first = bodies.putIfAbsent(entry.key().text(), entry);
      if (first != null) {
        Mark there = first.key().mark();
        problems.add(
            entry.key().mark(),
            "the type \""
                + Problems.shown(entry.key().text())
                + "\" exists already, in "
                + there.file()
                + " line "
                + there.line(),
            "give one of the two another name");
      }
    }
  }

  /**
   * The body of a named type; empty, with a problem, if there is none.
   *
   * @param is what the part says it is; what stands on its front is often taken for its type
   */
  Optional<Entries> body(Leaf name, Optional<Leaf> is, Problems problems) {
    Entry entry = bodies.get(name.text());
    if (entry != null) {
      // a body that is no group of keys has its own problem already
      return entry.value() instanceof Entries body ? Optional.of(body) : Optional.empty();
    }
    Optional<String> printed = is.flatMap(kind -> printedOn(kind.text(), name.text()));
    String known = Words.all(bodies.keySet().stream().limit(8).toList());
    String remedy =
        printed
            .or(() -> NearNames.advice(name.text(), bodies.keySet(), ""))
            .orElse(known.isEmpty() ? "add it under types:" : "the types are " + known);
    problems.add(name.mark(), "there is no type \"" + Problems.shown(name.text()) + "\"", remedy);
    return Optional.empty();
  }

  /** The key for what is printed on a breaker or residual-current device. */
  private static Optional<String> printedOn(String kind, String word) {
    return kind.equals("breaker") && word.matches("[BCD]")
        ? Optional.of("write curve: " + word)
        : kind.equals("rcd") && word.matches("AC|[AFB]")
            ? Optional.of("write kind: " + word)
            : Optional.empty();
  }

  /** True, with a problem, if a part says it is something else than its type. */
  static boolean isAnotherKind(Entries type, Entries own, Problems problems) {
    Optional<Leaf> typeIs = type.find("is");
    Optional<Leaf> ownIs = own.find("is");
    if (typeIs.isEmpty() || ownIs.isEmpty() || typeIs.get().text().equals(ownIs.get().text())) {
      return false;
    }
    problems.add(
        ownIs.get().mark(),
        "the type is a "
            + Problems.shown(typeIs.get().text())
            + ", in line "
            + typeIs.get().mark().line(),
        "take this is: out, or use another type");
    return true;
  }

  /** A part's own keys in place of the type's keys of the same name. */
  static Entries merged(Entries type, Entries own) {
    List<Entry> entries = new ArrayList<>();
    for (Entry entry : type.entries()) {
      if (own.tree(entry.key().text()).isEmpty()) {
        entries.add(entry);
      }
    }
    entries.addAll(own.entries());
    return new Entries(entries, own.mark());
  }
}
