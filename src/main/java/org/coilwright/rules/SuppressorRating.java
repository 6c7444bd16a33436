package org.coilwright.rules;

import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Subject;

/**
 * A suppressor's rating as written and what it has to reach.
 *
 * @param subject the suppressor
 * @param part what it is called in a sentence
 * @param needed in the base unit of {@code dimension}
 * @param what what is rated, for the middle of a sentence
 * @param why where {@code needed} comes from, likewise
 */
record SuppressorRating(
    Subject subject,
    String part,
    Written<Quantity> written,
    double needed,
    Dimension dimension,
    String what,
    String why) {

  /** Satisfied or violated. */
  Outcome outcome(FedCoil feed, Basis basis) {
    double has = written.value().low();
    Printed.Pair pair = Printed.pair(has, needed, dimension);
    Measure value = new Measure(has, dimension.baseUnit());
    Measure limit = new Measure(needed, dimension.baseUnit());
    if (Comparison.fallsShort(has, needed)) {
      return subject
          .violated(
              "%s is rated too small".formatted(part),
              "Its %s is %s and should be at least %s (%s): short by %s."
                  .formatted(what, pair.value(), pair.limit(), why, pair.apart()),
              "should be %s or more".formatted(pair.limit()))
          .alsoAt(feed.coil().mark(), "lies across this coil")
          .measured(value, limit)
          .change(written.mark(), Printed.atLeast(needed, dimension))
          .todo(
              "Use a part with a %s of %s or more for %s."
                  .formatted(what, Printed.atLeast(needed, dimension), part),
              basis);
    }
    return subject.satisfied(
        "The %s of %s is %s and should be at least %s (%s)."
            .formatted(what, part, pair.value(), pair.limit(), why),
        value,
        limit,
        basis);
  }
}
