package org.coilwright.rule;

import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Mark;

/** What a rule says about one subject. */
public sealed interface Outcome {
  RuleFacts rule();

  /**
   * Designations along the whole way it is about, the subject first: {@code K1.A1}, {@code K1},
   * {@code W1}, {@code wire 3}.
   */
  List<String> path();

  /**
   * What a person would write into {@code accepted}: the subject, then whatever else of the same
   * part is named. Other parts along the way are only touched, and are left to the path.
   */
  default List<String> at() {
    return path().stream()
        .filter(place -> Places.partOf(place).equals(Places.partOf(path().get(0))))
        .toList();
  }

  /** The first place in the file. */
  Mark mark();

  /** Looked at and inside the limit; kept, because the checklist prints it. */
  record Satisfied(
      RuleFacts rule,
      List<String> path,
      Mark mark,
      String sentence,
      Optional<Measure> value,
      Optional<Measure> limit,
      Basis basis)
      implements Outcome {}

  /**
   * Outside the limit.
   *
   * @param weight may be lighter than the rule's own where the contract names two
   * @param headline a few words with the designation: {@code K1 may not pull in}
   * @param numbers one or two sentences: the value, the limit, by how much it is missed
   * @param places the place first, then every other that matters
   * @param detail how it was computed, such as the worst case; may be empty
   * @param remedy one sentence on what to do
   * @param changes the same, as far as it can be written into the netlist, all of it together; may
   *     be empty
   */
  record Violated(
      RuleFacts rule,
      Weight weight,
      List<String> path,
      String headline,
      String numbers,
      List<Place> places,
      String detail,
      String remedy,
      Optional<Measure> value,
      Optional<Measure> limit,
      Basis basis,
      List<Change> changes)
      implements Outcome {
    /** A finding whose remedy cannot be written into the netlist. */
    public Violated(
        RuleFacts rule,
        Weight weight,
        List<String> path,
        String headline,
        String numbers,
        List<Place> places,
        String detail,
        String remedy,
        Optional<Measure> value,
        Optional<Measure> limit,
        Basis basis) {
      this(
          rule, weight, path, headline, numbers, places, detail, remedy, value, limit, basis,
          List.of());
    }

    @Override
    public Mark mark() {
      return places.get(0).mark();
    }

    /** The same finding with another weight. */
    Violated weighing(Weight other) {
      return new Violated(
          rule, other, path, headline, numbers, places, detail, remedy, value, limit, basis,
          changes);
    }

    /** Findings are kept in sets; their rule and place tell nearly all of them apart. */
    @Override
    public int hashCode() {
      return 31 * rule.id().hashCode() + mark().hashCode();
    }
  }

  /**
   * Could not be checked.
   *
   * @param missing the key that would decide it: {@code coil.range of K1}; what settles it where no
   *     key can
   * @param sentence what could not be checked and why
   * @param settledBy one sentence on who or what settles it; empty if the missing key does
   */
  record Undecided(
      RuleFacts rule,
      List<String> path,
      Mark mark,
      String missing,
      String sentence,
      String settledBy)
      implements Outcome {}
}
