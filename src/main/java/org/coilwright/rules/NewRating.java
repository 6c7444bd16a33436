package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Rating;
import org.coilwright.rule.Change;

/** A rating as a remedy would have it written. */
final class NewRating {
  private NewRating() {}

  /**
   * In place of the one of the same category, else beside the first there is.
   *
   * @param rating such as {@code 3 A at 230 V}
   */
  static List<Change> of(Part.Ratings ratings, String category, String rating) {
    return Optional.ofNullable(ratings.byCategory().get(category))
        .map(written -> new Change(written.mark(), rating))
        .or(
            () ->
                ratings.byCategory().values().stream()
                    .findFirst()
                    .map(
                        first ->
                            new Change(
                                first.mark(),
                                "%s, %s: %s".formatted(first.text(), category, rating))))
        .stream()
        .toList();
  }

  /** What carries a load at the voltage of the contact. */
  static String covering(LoadContact contact, double amps) {
    return "%s at %s"
        .formatted(
            Printed.atLeast(amps, Dimension.CURRENT),
            Printed.atLeast(contact.volts(), Dimension.VOLTAGE));
  }

  /** The same at another voltage: {@code 3 A at 250 V} of {@code 3 A at 120 V}. */
  static String at(Written<Rating> written, String volts) {
    return written.text().replaceFirst(" at .*$", "") + " at " + volts;
  }

  /** The same with another current. */
  static String amps(Written<Rating> written, String amps) {
    return written.text().replaceFirst("^.*?(?= at |$)", amps);
  }
}
