package org.coilwright.rules;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.coilwright.netlist.Part.Ratings;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Rating;

/**
 * What a contact's ratings say of one kind of current. A rating for alternating current says
 * nothing of direct current, whose arc does not go out by itself, and one for direct current
 * nothing of alternating.
 *
 * @param of those for this kind of current, by category
 */
record RatedKind(boolean direct, Map<String, Written<Rating>> all, List<Written<Rating>> of) {
  static RatedKind in(Ratings ratings, boolean direct) {
    return new RatedKind(
        direct,
        ratings.byCategory(),
        ratings.byCategory().entrySet().stream()
            .filter(e -> e.getKey().startsWith("DC") == direct)
            .map(Map.Entry::getValue)
            .toList());
  }

  /** True if the contact has ratings, and every one of them is for the other kind of current. */
  boolean isForTheOther() {
    return !all.isEmpty() && of.isEmpty();
  }

  /** The highest voltage of any rating for this kind, V; empty if one of them names none. */
  OptionalDouble mostVolts() {
    return of.stream().allMatch(r -> ContactSheet.ratedVolts(r).isPresent())
        ? of.stream().mapToDouble(r -> ContactSheet.ratedVolts(r).orElse(0.0)).max()
        : OptionalDouble.empty();
  }

  /** The highest current of any rating for this kind, A; empty if there is none. */
  OptionalDouble mostAmps() {
    return of.stream().mapToDouble(ContactSheet::ratedAmps).max();
  }

  /** {@code direct current}. */
  String words() {
    return direct ? "direct current" : "alternating current";
  }

  /** {@code 230 V AC}; without the figure where it is not known. */
  String of(double volts) {
    String kind = direct ? "DC" : "AC";
    return volts > 0 ? Printed.volts(volts) + " " + kind : kind;
  }

  /** {@code DC-13: 0.5 A at 24 V}. */
  String list() {
    return String.join(
        ", ", all.entrySet().stream().map(e -> e.getKey() + ": " + e.getValue().text()).toList());
  }
}
