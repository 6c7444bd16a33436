package org.coilwright.rule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Written;
import org.coilwright.rule.Outcome.Satisfied;
import org.coilwright.rule.Outcome.Undecided;
import org.coilwright.rule.Outcome.Violated;

/**
 * What a rule is about to speak of, and the three things it can say about it.
 *
 * @param mark where the subject is written
 * @param at designations, the subject first, then all along the way it is about
 */
public record Subject(RuleFacts rule, Mark mark, List<String> at) {
  /**
   * A subject of a rule.
   *
   * @param at designations, the subject first; at least one
   */
  public static Subject of(RuleFacts rule, Mark mark, String... at) {
    return new Subject(rule, mark, List.of(at));
  }

  /** The circuit as a whole, for what is asked of all its parts at once. */
  public static Subject ofCircuit(RuleFacts rule, Netlist netlist) {
    return of(rule, netlist.about().title().mark(), "circuit");
  }

  /** Looked at, nothing to say against it, and no figure to show. */
  public Satisfied satisfied(String sentence, Basis basis) {
    return new Satisfied(rule, at, mark, sentence, Optional.empty(), Optional.empty(), basis);
  }

  /** Looked at and inside the limit. */
  public Satisfied satisfied(String sentence, Measure value, Measure limit, Basis basis) {
    return new Satisfied(rule, at, mark, sentence, Optional.of(value), Optional.of(limit), basis);
  }

  /**
   * Could not be checked.
   *
   * @param missing the key that would decide it: {@code coil.range of K1}
   * @param sentence what could not be checked and why
   */
  public Undecided undecided(String missing, String sentence) {
    return new Undecided(rule, at, mark, missing, sentence, "");
  }

  /**
   * Could not be checked, and no key of the netlist would change that.
   *
   * @param missing what would settle it: {@code let-through energy of F1 at 16 kA}
   * @param sentence what could not be checked and why
   * @param settledBy one sentence on who or what settles it
   */
  public Undecided unsettled(String missing, String sentence, String settledBy) {
    return new Undecided(rule, at, mark, missing, sentence, settledBy);
  }

  /**
   * Begins a finding; {@link Finding#todo} ends it.
   *
   * @param headline a few words with the designation
   * @param numbers one or two sentences: the value, the limit, by how much it is missed
   * @param label what stands under the caret at the subject's own place
   */
  public Finding violated(String headline, String numbers, String label) {
    return new Finding(this, headline, numbers, label);
  }

  /** A finding in the making. */
  public static final class Finding {
    private final Subject subject;
    private final String headline;
    private final String numbers;
    private final List<Place> places = new ArrayList<>();
    private Weight weight;
    private String detail = "";
    private Optional<Measure> value = Optional.empty();
    private Optional<Measure> limit = Optional.empty();
    private final List<Change> changes = new ArrayList<>();

    private Finding(Subject subject, String headline, String numbers, String label) {
      this.subject = subject;
      this.headline = headline;
      this.numbers = numbers;
      this.weight = subject.rule.weight();
      places.add(new Place(subject.mark, label));
    }

    /** Another place that matters; one that is already shown is not shown twice. */
    public Finding alsoAt(Mark mark, String label) {
      if (places.stream().noneMatch(p -> p.mark().equals(mark))) {
        places.add(new Place(mark, label));
      }
      return this;
    }

    /** A lighter weight than the rule's own, where the contract names two. */
    public Finding lighter(Weight lighter) {
      weight = lighter;
      return this;
    }

    /** How it was computed, such as the worst case. */
    public Finding detail(String sentence) {
      detail = sentence;
      return this;
    }

    /** The figure found and the figure it is held against. */
    public Finding measured(Measure found, Measure held) {
      value = Optional.of(found);
      limit = Optional.of(held);
      return this;
    }

    /**
     * What the remedy would have written; more than one are made together. A test makes them and
     * sees that the finding is gone.
     */
    public Finding change(Mark mark, String text) {
      changes.add(new Change(mark, text));
      return this;
    }

    /** The same text in several places. */
    public Finding changes(List<Mark> marks, String text) {
      marks.forEach(mark -> change(mark, text));
      return this;
    }

    /** What {@link Rewiring} would have written. */
    public Finding change(List<Change> made) {
      changes.addAll(made);
      return this;
    }

    /** The same where the value is written and what shall stand there is known (not empty). */
    public Finding change(Optional<? extends Written<?>> written, String text) {
      written.filter(w -> !text.isEmpty()).ifPresent(w -> change(w.mark(), text));
      return this;
    }

    /**
     * Ends the finding.
     *
     * @param remedy one sentence on what to do
     */
    public Violated todo(String remedy, Basis basis) {
      return new Violated(
          subject.rule,
          weight,
          subject.at,
          headline,
          numbers,
          List.copyOf(places),
          detail,
          remedy,
          value,
          limit,
          basis,
          List.copyOf(changes));
    }
  }
}
