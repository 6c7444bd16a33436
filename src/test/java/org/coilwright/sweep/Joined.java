package org.coilwright.sweep;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Things that are joined to one another, and so are one. */
final class Joined<T> {
  private final Map<T, Integer> numbers = new HashMap<>();
  private final List<Integer> parents = new ArrayList<>();

  /** The number of what {@code thing} is one with. */
  int of(T thing) {
    int number =
        numbers.computeIfAbsent(
            thing,
            t -> {
              parents.add(parents.size());
              return parents.size() - 1;
            });
    while (parents.get(number) != number) {
      number = parents.get(number);
    }
    return number;
  }

  void join(T one, T other) {
    int a = of(one);
    int b = of(other);
    parents.set(Math.max(a, b), Math.min(a, b));
  }

  boolean same(T one, T other) {
    return of(one) == of(other);
  }
}
