package org.coilwright.netlist;

import java.util.LinkedHashSet;
import java.util.Set;
import java.util.function.Predicate;

/** When a load shall be on, as a boolean expression over named contacts. */
public sealed interface Intent {
  /** The contacts it names, in the order they first stand in it. */
  default Set<String> names() {
    Set<String> names = new LinkedHashSet<>();
    if (this instanceof Name name) {
      names.add(name.contact().value());
    } else if (this instanceof And both) {
      names.addAll(both.left.names());
      names.addAll(both.right.names());
    } else if (this instanceof Or either) {
      names.addAll(either.left.names());
      names.addAll(either.right.names());
    } else if (this instanceof Not not) {
      names.addAll(not.of.names());
    }
    return names;
  }

  /** True if it holds with exactly the contacts closed that {@code closed} says. */
  default boolean holds(Predicate<String> closed) {
    if (this instanceof And both) {
      return both.left.holds(closed) && both.right.holds(closed);
    }
    if (this instanceof Or either) {
      return either.left.holds(closed) || either.right.holds(closed);
    }
    if (this instanceof Not not) {
      return !not.of.holds(closed);
    }
    return this instanceof Name name && closed.test(name.contact().value());
  }

  /** A controlled contact: {@code U1.heat}, {@code S1}, {@code B1}. */
  record Name(Written<String> contact) implements Intent {}

  /** Both. */
  record And(Intent left, Intent right) implements Intent {}

  /** Either. */
  record Or(Intent left, Intent right) implements Intent {}

  /** Not. */
  record Not(Intent of) implements Intent {}
}
