package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.solve.Study;
import org.coilwright.solve.Trouble;

/** Asks one question of every contact that switches coils. */
final class PerContact {
  private PerContact() {}

  /**
   * The answers, one a contact. A contact whose current or voltage cannot be known is undecided
   * without being asked; where not every position was explored, so is one that is satisfied.
   *
   * @param question empty where another rule has said all there is to say
   */
  static List<Outcome> ask(
      Study study, RuleFacts rule, Function<DrivingContact, Optional<? extends Outcome>> question) {
    return ask(study, rule, c -> c.voltageUnknown().or(c::currentUnknown), question);
  }

  /**
   * The same for a question that needs less.
   *
   * @param needed what is not known of a contact and would be needed
   */
  static List<Outcome> ask(
      Study study,
      RuleFacts rule,
      Function<DrivingContact, Optional<Gap>> needed,
      Function<DrivingContact, Optional<? extends Outcome>> question) {
    Optional<Trouble.Gap> gap =
        study.troubles().stream()
            .filter(Trouble.Gap.class::isInstance)
            .map(Trouble.Gap.class::cast)
            .findFirst();
    List<Outcome> outcomes = new ArrayList<>();
    for (DrivingContact contact : DrivingContact.all(study)) {
      if (contact.closedStates().isEmpty() && gap.isEmpty()) {
        // it never closes on a coil: that is for the coil rules to say
        continue;
      }
      Optional<? extends Outcome> answer = unknown(rule, contact, needed);
      if (answer.isEmpty()) {
        answer = question.apply(contact);
      }
      answer
          .map(
              outcome ->
                  gap.isPresent()
                          && (outcome instanceof Outcome.Satisfied
                              || contact.closedStates().isEmpty())
                      ? PerCoil.unexplored(subject(rule, contact), contact.name(), gap.get())
                      : outcome)
          .ifPresent(outcomes::add);
    }
    return outcomes;
  }

  /** The contact as a subject. */
  static Subject subject(RuleFacts rule, DrivingContact contact) {
    return new Subject(rule, contact.sheet().ratingsMark(), contact.at());
  }

  /**
   * No rating that covers its coils. Where it has ratings and all are for the other kind of
   * current, {@code drive.voltage} says so, and nothing waits for a figure that its maker does not
   * give.
   */
  static Optional<Outcome> noRating(RuleFacts rule, DrivingContact contact) {
    return contact.ratedKind().isForTheOther()
        ? Optional.empty()
        : Optional.of(
            subject(rule, contact)
                .undecided(
                    Cover.missingKey(contact),
                    "%s switches %s, and no rating says what it may switch of that kind."
                        .formatted(contact.name(), contact.coilNames())));
  }

  private static Optional<Outcome> unknown(
      RuleFacts rule, DrivingContact contact, Function<DrivingContact, Optional<Gap>> needed) {
    return needed
        .apply(contact)
        .map(
            gap ->
                new Subject(rule, gap.mark(), contact.at())
                    .undecided(
                        gap.key(),
                        "What %s switches for %s cannot be told."
                            .formatted(contact.name(), contact.coilNames())));
  }
}
