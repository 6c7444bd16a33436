package org.coilwright.cli;

import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Words;
import org.coilwright.solve.Trouble;

/** What is wrong with the states themselves, in one sentence each. */
final class TroubleText {
  private TroubleText() {}

  /** One word for programs. */
  static String kind(Trouble trouble) {
    if (trouble instanceof Trouble.ShortCircuit) {
      return "short-circuit";
    } else if (trouble instanceof Trouble.NoSteadyState) {
      return "no-steady-state";
    } else if (trouble instanceof Trouble.TwoSteadyStates) {
      return "two-steady-states";
    } else if (trouble instanceof Trouble.SneakPath) {
      return "sneak-path";
    } else if (trouble instanceof Trouble.NotExplored) {
      return "not-explored";
    } else if (trouble instanceof Trouble.NotSolved) {
      return "not-solved";
    }
    return "floating";
  }

  /** The sentence. */
  static String of(Trouble trouble) {
    if (trouble instanceof Trouble.ShortCircuit s) {
      return "Short-circuit of %s with nothing to limit the current but the wires: %s."
          .formatted(s.source(), s.path().inWords());
    } else if (trouble instanceof Trouble.NoSteadyState n) {
      return "%s never comes to rest: its own contact lets it drop and pull in again."
          .formatted(Words.all(n.relays()));
    } else if (trouble instanceof Trouble.TwoSteadyStates t) {
      return "%s may be in or out here, depending on %s."
          .formatted(Words.all(t.relays()), t.race() ? "which relay is faster" : "what was before");
    } else if (trouble instanceof Trouble.SneakPath s) {
      return "%s gets %s through %s: %s."
          .formatted(s.victim(), Printed.volts(s.volts()), s.through(), s.path().inWords());
    } else if (trouble instanceof Trouble.NotExplored n && n.orders()) {
      return "Not every order was looked at: which of %s is faster decides, and there are more than %s orders."
          .formatted(Words.all(n.contacts()), n.limit());
    } else if (trouble instanceof Trouble.NotExplored n) {
      return "Not every position was looked at: %s are more than %s contacts that act together."
          .formatted(Words.all(n.contacts()), n.limit());
    } else if (trouble instanceof Trouble.NotSolved n) {
      return "Which of %s conduct cannot be settled: voltages and currents beside them are not to be relied on."
          .formatted(Words.all(n.diodes()));
    } else if (trouble instanceof Trouble.Floating f) {
      return "The voltage of %s cannot be told: nothing joins them to a supply."
          .formatted(Words.all(f.pins()));
    }
    throw new IllegalStateException("a trouble without words: " + trouble);
  }
}
