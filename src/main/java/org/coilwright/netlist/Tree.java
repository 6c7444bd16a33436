package org.coilwright.netlist;

import java.util.List;
import java.util.Optional;

/** A file's bare structure: words, lists and keys with their places; every word is text. */
sealed interface Tree {
  Mark mark();

  /** What a message calls it. */
  String noun();

  /**
   * A word.
   *
   * @param text what it says, quotes taken off
   * @param mark where it stands, quotes included
   * @param lead how far behind the mark's column its first character stands; -1 if the text in the
   *     file differs from what it says (escapes, several lines)
   */
  record Leaf(String text, Mark mark, int lead) implements Tree {
    @Override
    public String noun() {
      return "a single value";
    }

    /** The place of a piece of the text; the whole where the piece cannot be located. */
    Mark at(int offset, int length) {
      if (lead < 0 || length < 1 || offset + length > text.length()) {
        return mark;
      }
      int before = text.codePointCount(0, offset);
      int column = mark.column() + lead + before;
      int width = text.codePointCount(offset, offset + length);
      return new Mark(mark.file(), mark.line(), column, column + width);
    }

    /** A piece of the text with its place. */
    Written<String> piece(int offset, int length) {
      String piece = text.substring(offset, offset + length);
      return new Written<>(piece, piece, at(offset, length));
    }
  }

  /** A list. */
  record Items(List<Tree> items, Mark mark) implements Tree {
    @Override
    public String noun() {
      return "a list";
    }
  }

  /** Keys with their values, no key twice. */
  record Entries(List<Entry> entries, Mark mark) implements Tree {
    @Override
    public String noun() {
      return "a group of keys";
    }

    /** The word behind a key. */
    Optional<Leaf> find(String name) {
      return tree(name).filter(Leaf.class::isInstance).map(Leaf.class::cast);
    }

    /** What stands behind a key. */
    Optional<Tree> tree(String name) {
      return entries.stream()
          .filter(entry -> entry.key().text().equals(name))
          .map(Entry::value)
          .findFirst();
    }
  }

  /** One key with its value. */
  record Entry(Leaf key, Tree value) {}
}
