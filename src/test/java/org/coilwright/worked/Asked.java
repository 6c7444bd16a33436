package org.coilwright.worked;

import java.util.Map;

/** What is called by name, so that a class loader of its own can carry it. */
final class Asked {
  private static final Map<String, Formula> FORMULAS = Examples.formulas();

  private Asked() {}

  /** Loads what all formulas need. */
  static void ready() {
    if (FORMULAS.isEmpty()) {
      throw new IllegalStateException("no formulas");
    }
  }

  static Object of(String asks, Map<String, Object> inputs) {
    Formula formula = FORMULAS.get(asks);
    if (formula == null) {
      throw new IllegalArgumentException(asks);
    }
    return formula.answer(new Inputs(inputs));
  }
}
