package org.coilwright.rules;

import java.util.Optional;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;

/**
 * Two written figures that cannot both hold.
 *
 * @param one the figure shown first
 * @param other the one that contradicts it
 * @param saysOne what the first would make of the second, for under the caret
 * @param numbers both figures and what does not fit
 */
record FigureClash(
    Written<?> one, Written<?> other, String saysOne, String saysOther, String numbers) {

  /**
   * Two figures for one quantity that lie further apart than both their tolerances and a share.
   *
   * @param expected what {@code from} makes of {@code figure}, nominal and bounds
   * @param share how far rounding may set them apart
   */
  static Optional<FigureClash> ofApart(
      Written<Quantity> figure, Written<?> from, Quantity expected, double share) {
    Quantity has = figure.value();
    boolean above = Comparison.exceeds(has.low(), expected.high() * (1 + share));
    boolean below = Comparison.fallsShort(has.high(), expected.low() * (1 - share));
    String makes = Printed.of(expected.nominal(), expected.dimension());
    return above || below
        ? Optional.of(
            new FigureClash(
                figure,
                from,
                "says " + figure.text(),
                "makes it " + makes,
                "%s makes it %s, and %s is written.".formatted(from.text(), makes, figure.text())))
        : Optional.empty();
  }

  /**
   * A figure that is above what another one allows.
   *
   * @param most what {@code from} allows, in the base unit
   * @param share how far rounding may set them apart
   */
  static Optional<FigureClash> ofAbove(
      Written<Quantity> figure,
      Written<?> from,
      double most,
      Dimension dimension,
      String because,
      double share) {
    Printed.Pair pair = Printed.pair(figure.value().low(), most, dimension);
    return Comparison.exceeds(figure.value().low(), most * (1 + share))
        ? Optional.of(
            new FigureClash(
                figure,
                from,
                "says " + figure.text(),
                "allows %s at most".formatted(pair.limit()),
                "%s is written, and %s at most goes with %s: %s."
                    .formatted(figure.text(), pair.limit(), from.text(), because)))
        : Optional.empty();
  }

  /**
   * A motor's plate against its current: its shaft gives no more than it takes, and not next to
   * nothing of that.
   *
   * @param taken W, what its current makes
   * @param share how far rounding may set them apart
   * @param efficiency the lowest of any motor, shaft over input
   */
  static Optional<FigureClash> ofShaft(
      Written<Quantity> shaft,
      Written<Quantity> amps,
      Quantity taken,
      double share,
      double efficiency) {
    Optional<FigureClash> above =
        ofAbove(
            shaft,
            amps,
            taken.high(),
            Dimension.POWER,
            "the shaft of a motor gives no more than the motor takes",
            share);
    double least = taken.low() * efficiency;
    if (above.isPresent() || !Comparison.fallsShort(shaft.value().high(), least)) {
      return above;
    }
    Printed.Pair pair = Printed.pair(shaft.value().high(), least, Dimension.POWER);
    return Optional.of(
        new FigureClash(
            shaft,
            amps,
            "says " + shaft.text(),
            "needs %s at least".formatted(pair.limit()),
            "%s is written, and a motor that takes %s (%s) gives %s at least at its shaft."
                .formatted(
                    shaft.text(),
                    Printed.of(taken.nominal(), Dimension.POWER),
                    amps.text(),
                    pair.limit())));
  }
}
