package org.coilwright.netlist;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Shape.Fields;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Rating;
import org.coilwright.quantity.Worded;
import org.jspecify.annotations.Nullable;

/** What a {@link Tree} means under its {@link Shape}; what could not be read is left out. */
sealed interface Value {

  /** A single value. */
  record One(Written<?> written) implements Value {}

  /** A list. */
  record Many(Mark mark, List<Value> items) implements Value {}

  /** Keys that the user named, in the order written. */
  record Keyed(Mark mark, Map<String, Member> members) implements Value {}

  /** One of them. */
  record Member(Written<String> key, Value value) {}

  /**
   * A fixed set of keys. Every question names a key of the shape; any other is a fault of the
   * program.
   *
   * @param mark of the key the section stands behind
   */
  record Section(Mark mark, Fields shape, Map<String, Value> values) implements Value {
    Optional<Written<Quantity>> quantity(String key) {
      return written(key, Quantity.class);
    }

    Optional<Written<Rating>> rating(String key) {
      return written(key, Rating.class);
    }

    Optional<Written<ConductorSize>> size(String key) {
      return written(key, ConductorSize.class);
    }

    Optional<Written<String>> text(String key) {
      return written(key, String.class);
    }

    /** A word of a short list. */
    <E extends Enum<E> & Worded> Optional<Written<E>> choice(String key, Class<E> list) {
      return text(key).map(w -> chosen(w, list));
    }

    /** A word of a short list that must be there. */
    <E extends Enum<E> & Worded> Written<E> mustChoice(String key, Class<E> list) {
      return chosen(mustText(key), list);
    }

    private static <E extends Enum<E> & Worded> Written<E> chosen(
        Written<String> written, Class<E> list) {
      return new Written<>(
          Worded.find(list, written.value()).orElseThrow(), written.text(), written.mark());
    }

    /** True if a part of this kind has the key. */
    boolean knows(String key) {
      return shape.key(key).isPresent();
    }

    /** A word under a key that only some kinds of part have. */
    Optional<Written<String>> textIfKnown(String key) {
      return knows(key) ? text(key) : Optional.empty();
    }

    Optional<String> plain(String key) {
      return text(key).map(Written::value);
    }

    Optional<Written<Boolean>> flag(String key) {
      return written(key, Boolean.class);
    }

    /** The same for yes or no. */
    Optional<Written<Boolean>> flagIfKnown(String key) {
      return knows(key) ? flag(key) : Optional.empty();
    }

    Optional<Section> section(String key) {
      return Optional.ofNullable(value(key)).map(Section.class::cast);
    }

    Map<String, Member> members(String key) {
      return value(key) instanceof Keyed keyed ? keyed.members() : Map.of();
    }

    List<Value> items(String key) {
      return value(key) instanceof Many many ? many.items() : List.of();
    }

    /** Items that are single words. */
    List<Written<String>> words(String key) {
      return items(key).stream().map(Value::word).toList();
    }

    Optional<Mark> markOf(String key) {
      return value(key) instanceof Keyed keyed ? Optional.of(keyed.mark()) : Optional.empty();
    }

    /**
     * A value that must be there.
     *
     * @throws Incomplete if it is not; the reader has said so already
     */
    Written<String> mustText(String key) {
      return text(key).orElseThrow(Incomplete::new);
    }

    /** A section that must be there. */
    Section mustSection(String key) {
      return section(key).orElseThrow(Incomplete::new);
    }

    /** Words that must be there. */
    List<Written<String>> mustWords(String key) {
      if (value(key) == null) {
        throw new Incomplete();
      }
      return words(key);
    }

    <T> Optional<Written<T>> written(String key, Class<T> type) {
      return value(key) instanceof One one
          ? Optional.of(as(one.written(), type))
          : Optional.empty();
    }

    private @Nullable Value value(String key) {
      if (shape.key(key).isEmpty()) {
        throw new IllegalArgumentException(shape.noun() + " has no key " + key);
      }
      return values.get(key);
    }
  }

  /** A list item that is a single word. */
  static Written<String> word(Value value) {
    if (value instanceof One one) {
      return as(one.written(), String.class);
    }
    throw new IllegalArgumentException("not a single word: " + value);
  }

  /** A written value, its type made sure. */
  static <T> Written<T> as(Written<?> written, Class<T> type) {
    return new Written<>(type.cast(written.value()), written.text(), written.mark());
  }

  /** Something that must be there could not be read; a problem has been recorded. */
  final class Incomplete extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Incomplete() {
      super("incomplete", null, false, false);
    }
  }
}
