package org.coilwright.rules;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Rating;
import org.coilwright.rule.Change;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * The rating that is held against a coil's current: one for electromagnets if there is one, else a
 * resistive one.
 *
 * @param category such as {@code AC-15}
 * @param inductive true if it is made for electromagnets of this size
 */
record Cover(String category, Written<Rating> rating, boolean inductive) {
  private static final List<String> RESISTIVE_AC = List.of("AC-1", "AC-12", "AC-7a");
  private static final List<String> MOTORS = List.of("AC-3");
  private static final List<String> RESISTIVE_DC = List.of("DC-1", "DC-12");

  /** The best rating the contact has for coils; empty if none is for this kind of current. */
  static Optional<Cover> of(DrivingContact contact, Tables tables) {
    if (contact.isDirect()) {
      return find(contact, List.of("DC-13"), true).or(() -> find(contact, RESISTIVE_DC, false));
    }
    List<String> magnets = isSmall(contact, tables) ? List.of("AC-15", "AC-14") : List.of("AC-15");
    return find(contact, magnets, true)
        // a main pole that breaks motors breaks a coil: the power factor of that test is as low
        .or(() -> contact.contact().pole() ? find(contact, MOTORS, true) : Optional.empty())
        .or(() -> find(contact, RESISTIVE_AC, false))
        .or(() -> find(contact, List.of("AC-14"), false));
  }

  /** The rating that it should have. */
  static String wanted(DrivingContact contact) {
    return contact.isDirect() ? "DC-13" : "AC-15";
  }

  /**
   * What the rating for coils must reach: {@code 240 mA at 230 V}. Its current covers what the
   * coils draw at worst and, by what the category may make, their pick-up.
   */
  private static Optional<String> needed(DrivingContact contact, Tables tables) {
    if (contact.amps() <= 0 || contact.volts() <= 0) {
      return Optional.empty();
    }
    double making = contact.makeAmps();
    boolean silent =
        contact.coils().stream()
            .anyMatch(feed -> feed.isAlternating() && feed.spec().pickUp().isEmpty());
    if (silent) {
      making = Math.max(making, contact.amps() * tables.figure("coil.pick-up-multiple").value());
    }
    Cited<Double> multiple =
        tables.figure("drive." + wanted(contact).toLowerCase(Locale.ROOT) + "-make-multiple");
    double amps = contact.worstFactor() * Math.max(contact.amps(), making / multiple.value());
    double volts =
        Math.max(
            contact.volts() / contact.roundName(tables),
            contact.volts()
                * SourceVolts.rise(contact.sources())
                / tables.figure("drive.over-voltage").value());
    return Optional.of(
        "%s at %s"
            .formatted(
                Printed.atLeast(amps, Dimension.CURRENT),
                Printed.atLeast(volts, Dimension.VOLTAGE)));
  }

  /** {@code AC-15: 240 mA at 230 V or more}, as far as it can be told. */
  static String neededWords(DrivingContact contact, Tables tables) {
    return needed(contact, tables)
        .map(rating -> "%s: %s or more".formatted(wanted(contact), rating))
        .orElse("a %s rating for what it switches".formatted(wanted(contact)));
  }

  /** That rating, written in place of the one for coils or beside the one there is. */
  static List<Change> better(DrivingContact contact, Tables tables) {
    return needed(contact, tables)
        .map(rating -> NewRating.of(contact.sheet().ratings(), wanted(contact), rating))
        .orElse(List.of());
  }

  /** What to drive the coils by instead, in words; {@link #better} is the same as a change. */
  static String cure(DrivingContact contact, Tables tables) {
    return "Drive %s by a contact with %s, through an interposing relay if need be."
        .formatted(contact.coilNames(), neededWords(contact, tables));
  }

  /** The key that is missing where there is no rating at all for this kind of current. */
  static String missingKey(DrivingContact contact) {
    return "ratings.%s of %s".formatted(wanted(contact), contact.name());
  }

  /** True if the coils together stay within what AC-14 is for. */
  static boolean isSmall(DrivingContact contact, Tables tables) {
    return contact.amps() * contact.volts() <= tables.figure("drive.ac-14-limit").value();
  }

  /** What the contact may make, as a multiple of the rated current. */
  Cited<Double> makeMultiple(Tables tables) {
    return tables.figure("drive." + category.toLowerCase(Locale.ROOT) + "-make-multiple");
  }

  /** True if the rating is stated at less than the voltage that the contact switches. */
  boolean isBelow(DrivingContact contact, Tables tables) {
    return ContactSheet.ratedVolts(rating)
        .map(rated -> rated * contact.roundName(tables))
        .filter(rated -> Comparison.exceeds(contact.volts(), rated))
        .isPresent();
  }

  /** {@code AC-15: 3 A at 230 V}. */
  String words() {
    return category + ": " + rating.text();
  }

  private static Optional<Cover> find(
      DrivingContact contact, List<String> categories, boolean inductive) {
    return categories.stream()
        .filter(contact.sheet().ratings().byCategory()::containsKey)
        .findFirst()
        .flatMap(
            c ->
                Optional.ofNullable(contact.sheet().ratings().byCategory().get(c))
                    .map(r -> new Cover(c, r, inductive)));
  }
}
