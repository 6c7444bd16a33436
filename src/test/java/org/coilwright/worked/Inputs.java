package org.coilwright.worked;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;

/** Inputs of a worked example; it knows which of them were asked for. */
final class Inputs {
  private final Map<String, Object> given;
  private final Set<String> unread;
  private final UnaryOperator<String> netlist;

  Inputs(Map<String, Object> given) {
    this(given, UnaryOperator.identity());
  }

  /**
   * @param netlist what is done to the text of a circuit before it is read
   */
  Inputs(Map<String, Object> given, UnaryOperator<String> netlist) {
    this.given = given;
    this.unread = new TreeSet<>(given.keySet());
    this.netlist = netlist;
  }

  /** A circuit with its blanks filled in, as it shall be read. */
  String netlist(String text) {
    return netlist.apply(text);
  }

  double number(String name) {
    if (get(name) instanceof Number number) {
      return number.doubleValue();
    }
    throw new IllegalArgumentException(name + " is no number");
  }

  int count(String name) {
    return (int) number(name);
  }

  String word(String name) {
    if (get(name) instanceof String word) {
      return word;
    }
    throw new IllegalArgumentException(name + " is no word");
  }

  /** A word or a number, as it is written into a netlist. */
  String text(String name) {
    return String.valueOf(get(name));
  }

  boolean has(String name) {
    return given.containsKey(name);
  }

  List<Double> numbers(String name) {
    if (get(name) instanceof List<?> items) {
      return items.stream().map(i -> ((Number) i).doubleValue()).toList();
    }
    throw new IllegalArgumentException(name + " is no list");
  }

  Set<String> unread() {
    return unread;
  }

  private Object get(String name) {
    unread.remove(name);
    Object value = given.get(name);
    if (value == null) {
      throw new IllegalArgumentException("input " + name + " is missing");
    }
    return value;
  }
}
