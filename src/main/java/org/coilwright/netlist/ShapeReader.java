// Over 250 lines: one way to read for each shape of a sealed type.
package org.coilwright.netlist;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Shape.ByKind;
import org.coilwright.netlist.Shape.Choice;
import org.coilwright.netlist.Shape.Either;
import org.coilwright.netlist.Shape.Fields;
import org.coilwright.netlist.Shape.Listing;
import org.coilwright.netlist.Shape.Named;
import org.coilwright.netlist.Shape.Scalar;
import org.coilwright.netlist.Tree.Entries;
import org.coilwright.netlist.Tree.Entry;
import org.coilwright.netlist.Tree.Items;
import org.coilwright.netlist.Tree.Leaf;
import org.coilwright.netlist.Value.Keyed;
import org.coilwright.netlist.Value.Many;
import org.coilwright.netlist.Value.Member;
import org.coilwright.netlist.Value.One;
import org.coilwright.netlist.Value.Section;
import org.coilwright.quantity.Parsed;
import org.coilwright.quantity.Parsed.Bad;
import org.coilwright.quantity.Parsed.Good;
import org.coilwright.quantity.Words;

/** Lays a shape over a tree: what fits becomes a value, what does not becomes a problem. */
final class ShapeReader {
  /** More words than this are a list to look up, not a remedy. */
  private static final int MOST_OFFERED = 4;

  private final Problems problems;
  private final Types types;

  ShapeReader(Problems problems, Types types) {
    this.problems = problems;
    this.types = types;
  }

  /**
   * Reads one value.
   *
   * @param at mark of the key in front of it, or its own
   * @param name that key, for messages
   */
  Optional<Value> read(Tree tree, Shape shape, Mark at, String name) {
    if (tree instanceof Leaf leaf && leaf.text().isBlank()) {
      problems.add(
          at, "nothing stands behind \"" + name + "\"", "write a value, or take the key out");
      return Optional.empty();
    }
    if (shape instanceof Scalar<?> scalar) {
      return scalar(tree, scalar, name);
    }
    if (shape instanceof Listing listing) {
      return list(tree, listing, name);
    }
    if (shape instanceof Named named) {
      return named(tree, named, at, name);
    }
    if (shape instanceof Fields fields) {
      return entries(tree, fields.noun(), name).map(e -> section(e, fields, at, true));
    }
    if (shape instanceof Either either) {
      return tree instanceof Entries entries
          ? Optional.of(section(entries, either.fields(), entries.mark(), true))
          : scalar(tree, either.phrase(), name);
    }
    if (shape instanceof ByKind byKind) {
      return entries(tree, "a part", name).flatMap(own -> part(own, byKind, at));
    }
    throw new IllegalStateException("no such shape: " + shape);
  }

  private Optional<Value> part(Entries own, ByKind shape, Mark at) {
    Optional<Leaf> type = own.find("type");
    Entries all = own;
    boolean typeKnown = true;
    if (type.isPresent() && !shape.whole()) {
      problems.add(type.get().mark(), "a type cannot rest on another type", "write its keys out");
    } else if (type.isPresent()) {
      Optional<Entries> body = types.body(type.get(), own.find("is"), problems);
      typeKnown = body.isPresent();
      typeKnown &= body.filter(b -> !Types.isAnotherKind(b, own, problems)).isPresent();
      all = body.map(b -> Types.merged(b, own)).orElse(own);
    }
    if (!typeKnown) {
      return Optional.empty();
    }
    Optional<Leaf> is = all.find("is");
    if (is.isEmpty()) {
      problems.add(at, "a part needs \"is\"", "say what it is, such as is: relay");
      return Optional.empty();
    }
    Fields fields = shape.kinds().get(is.get().text());
    if (fields == null) {
      Choice kinds = new Choice(List.copyOf(shape.kinds().keySet()));
      return scalar(is.get(), kinds, "is").filter(never -> false);
    }
    int before = problems.reports();
    Section section = section(all, fields, at, shape.whole());
    // of a part that is in doubt nothing more is said: its pins may be other ones than they seem
    return before == problems.reports() ? Optional.of(section) : Optional.empty();
  }

  /**
   * A fixed set of keys; {@code whole} false for a type, to which its parts add what is missing.
   */
  Section section(Entries entries, Fields fields, Mark at, boolean whole) {
    Map<String, Value> values = new LinkedHashMap<>();
    Set<String> written = new HashSet<>();
    Optional<Entry> before = Optional.empty();
    for (Entry entry : entries.entries()) {
      String name = entry.key().text();
      Optional<Key> key = fields.key(name);
      if (key.isEmpty()
          && NearNames.nearest(name, fields.names()).isEmpty()
          && before.filter(b -> isRestOf(b, entry)).isPresent()) {
        Leaf first = before.orElseThrow().key();
        problems.add(
            entry.key().mark(),
            "the comma before \"" + Problems.shown(name) + "\" ends the value of " + first.text(),
            "put the whole value in quotes: " + first.text() + ": \"…, …\"");
        continue;
      }
      before = Optional.of(entry);
      if (key.isEmpty()) {
        unknownKey(entry.key(), fields.noun(), fields.names());
        // a slip of the finger is one fault, not also a missing key
        written.addAll(NearNames.nearest(name, fields.names()));
        continue;
      }
      written.add(name);
      read(entry.value(), key.get().shape(), entry.key().mark(), name)
          .ifPresent(value -> values.put(name, value));
    }
    if (whole) {
      for (Key key : fields.keys()) {
        if (key.must() && !written.contains(key.name())) {
          problems.add(
              at,
              fields.noun() + " needs \"" + key.name() + "\"",
              "add " + key.name() + ": " + offered(key));
        }
      }
    }
    fields
        .choiceAmong(written)
        .ifPresent(what -> problems.add(at, what, "write one of the two, whole"));
    return new Section(at, fields, values);
  }

  /** The words that a key may have, where they are few; else its example. */
  private static String offered(Key key) {
    return key.shape() instanceof Choice choice && choice.words().size() <= MOST_OFFERED
        ? Words.either(choice.words())
        : key.example();
  }

  /** True for what stands behind a comma within braces and has no colon: the rest of a text. */
  private static boolean isRestOf(Entry text, Entry rest) {
    return text.value() instanceof Leaf
        && rest.value() instanceof Leaf nothing
        && nothing.text().isEmpty()
        && nothing.lead() < 1
        && text.key().mark().line() == rest.key().mark().line();
  }

  void unknownKey(Leaf key, String noun, List<String> known) {
    String what = noun + " has no key \"" + Problems.shown(key.text()) + "\"";
    if (key.text().equals("<<")) {
      problems.add(key.mark(), what, "use types: and type: in place of a merge key");
      return;
    }
    String remedy =
        problems.isFull()
            ? ""
            : NearNames.advice(key.text(), known, "").orElse("its keys are " + Words.all(known));
    problems.add(key.mark(), what, remedy);
  }

  /** The tree as a group of keys, or a problem. */
  Optional<Entries> entries(Tree tree, String noun, String name) {
    if (tree instanceof Entries entries) {
      return Optional.of(entries);
    }
    wrongKind(tree, name, "keys with values, for " + noun, "write key: value lines under it");
    return Optional.empty();
  }

  private Optional<Value> scalar(Tree tree, Scalar<?> shape, String name) {
    if (!(tree instanceof Leaf leaf)) {
      wrongKind(tree, name, "a single value", "write one value");
      return Optional.empty();
    }
    return parsed(leaf, shape.parse(leaf));
  }

  private <T> Optional<Value> parsed(Leaf leaf, Parsed<T> parsed) {
    if (parsed instanceof Good<T> good) {
      return Optional.of(new One(new Written<>(good.value(), leaf.text(), leaf.mark())));
    }
    if (parsed instanceof Bad<T> bad) {
      problems.add(leaf.at(bad.offset(), bad.length()), bad.what(), bad.remedy());
    }
    return Optional.empty();
  }

  private Optional<Value> list(Tree tree, Listing listing, String name) {
    if (!(tree instanceof Items items)) {
      wrongKind(tree, name, "a list", "write each item in a line of its own, after a -");
      return Optional.empty();
    }
    int n = items.items().size();
    if (n < listing.least() || n > listing.most()) {
      String count =
          listing.least() == listing.most()
              ? "exactly " + listing.least()
              : n < listing.least() ? "at least " + listing.least() : "at most " + listing.most();
      problems.add(
          items.mark(),
          "\"" + name + "\" has " + n + " items and needs " + count,
          "count them again");
      return Optional.empty();
    }
    List<Value> values = new ArrayList<>(n);
    for (Tree item : items.items()) {
      read(item, listing.item(), item.mark(), name).ifPresent(values::add);
    }
    boolean fixed = listing.least() == listing.most();
    return fixed && values.size() < n
        ? Optional.empty()
        : Optional.of(new Many(items.mark(), values));
  }

  private Optional<Value> named(Tree tree, Named named, Mark at, String name) {
    Optional<Entries> entries = entries(tree, named.noun(), name);
    if (entries.isEmpty()) {
      return Optional.empty();
    }
    Map<String, Member> members = new LinkedHashMap<>();
    for (Entry entry : entries.get().entries()) {
      Optional<Value> key = parsed(entry.key(), named.key().parse(entry.key()));
      if (key.isEmpty()) {
        continue;
      }
      Optional<Value> value =
          read(entry.value(), named.value(), entry.key().mark(), entry.key().text());
      if (value.isPresent()) {
        Written<String> written = Value.word(key.get());
        members.put(written.value(), new Member(written, value.get()));
      }
    }
    if (entries.get().entries().size() < named.least()) {
      problems.add(at, "\"" + name + "\" holds nothing", "write " + named.noun() + " under it");
    }
    return Optional.of(new Keyed(at, members));
  }

  private void wrongKind(Tree tree, String name, String needed, String remedy) {
    problems.add(
        tree.mark(),
        "\"" + Problems.shown(name) + "\" holds " + needed + "; " + tree.noun() + " stands here",
        remedy);
  }
}
