package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.solve.Study;
import org.coilwright.solve.Trouble.NotExplored;

/** Asks one question of every contact that switches coils. */
final class PerContact {
  private PerContact() {}

  /**
   * The answers, one a contact. A contact whose current or voltage cannot be known is undecided
   * without being asked; where not every position was explored, so is one that is satisfied.
   */
  static List<Outcome> ask(
      Study study, RuleFacts rule, Function<DrivingContact, Outcome> question) {
    Optional<NotExplored> gap =
        study.troubles().stream()
            .filter(NotExplored.class::isInstance)
            .map(NotExplored.class::cast)
            .findFirst();
    return DrivingContact.all(study).stream()
        .map(
            contact -> {
              Outcome outcome = unknown(rule, contact).orElseGet(() -> question.apply(contact));
              return outcome instanceof Outcome.Satisfied && gap.isPresent()
                  ? PerCoil.unexplored(subject(rule, contact), contact.name(), gap.get())
                  : outcome;
            })
        .toList();
  }

  /** The contact as a subject. */
  static Subject subject(RuleFacts rule, DrivingContact contact) {
    return new Subject(rule, contact.ratingsMark(), contact.at());
  }

  /** No rating for this kind of current. */
  static Outcome noRating(RuleFacts rule, DrivingContact contact) {
    return subject(rule, contact)
        .undecided(
            Cover.missingKey(contact),
            "%s switches %s, and no rating says what it may switch of that kind."
                .formatted(contact.name(), contact.coilNames()));
  }

  private static Optional<Outcome> unknown(RuleFacts rule, DrivingContact contact) {
    return contact
        .voltageUnknown()
        .or(contact::currentUnknown)
        .map(
            missing ->
                subject(rule, contact)
                    .undecided(
                        missing,
                        "What %s switches for %s cannot be told."
                            .formatted(contact.name(), contact.coilNames())));
  }
}
