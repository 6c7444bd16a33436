package org.coilwright.quantity;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A value of a short list, each written as one word. */
public interface Worded {
  /** Its name in the code. */
  String name();

  /** Its word in a netlist, behind an option and in a table. */
  default String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The words of a list, in its order. */
  static <E extends Enum<E> & Worded> List<String> words(Class<E> list) {
    return Arrays.stream(list.getEnumConstants()).map(Worded::word).toList();
  }

  /** The value with this word; empty if there is none. */
  static <E extends Enum<E> & Worded> Optional<E> find(Class<E> list, String word) {
    return Arrays.stream(list.getEnumConstants()).filter(e -> e.word().equals(word)).findFirst();
  }
}
