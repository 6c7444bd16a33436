package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A contact switches a coil at more volts than its rating is stated for. */
final class DriveVoltage implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("drive.voltage", Weight.STOP, "contact used above its rated voltage")
          .what(
              "Raised for each contact that switches a coil at a nominal voltage above the one that"
                  + " its rating for that kind of load is stated at, or at a highest voltage above"
                  + " what that rating is tested to, and for one that has ratings, none of them for"
                  + " this kind of current: a contact for 24 V DC on a coil of the mains.")
          .why(
              "The contact may not part the arc: it goes on burning between the open contacts, and"
                  + " on direct current it does not go out by itself.")
          .remedy("Take a contact that is rated for this voltage, or an interposing relay.")
          .blind(
              "Contacts that switch a load and no coil; contacts in series that share the voltage;"
                  + " the peak when a coil is switched off.")
          .sources("iec-60947-5-1", "common-practice")
          .consequenceOf("separation.mains-meets-elv", "coil.wrong-current-kind");

  private final Tables tables;

  DriveVoltage(Tables tables) {
    this.tables = tables;
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    // a contact for the other kind of current is wrong whatever flows and at whatever voltage
    return PerContact.ask(
        study,
        FACTS,
        contact ->
            contact.ratedKind().isForTheOther() ? Optional.empty() : contact.voltageUnknown(),
        this::judge);
  }

  private Optional<Outcome> judge(DrivingContact contact) {
    RatedKind kind = contact.ratedKind();
    if (kind.isForTheOther() || isAboveAll(contact, kind)) {
      return Optional.of(noneFits(contact, kind));
    }
    Optional<Cover> cover = Cover.of(contact, tables);
    if (cover.isEmpty()) {
      return PerContact.noRating(FACTS, contact);
    }
    Subject subject = new Subject(FACTS, cover.get().rating().mark(), contact.at());
    return Optional.of(
        ContactSheet.ratedVolts(cover.get().rating())
            .map(rated -> compare(subject, contact, cover.get(), rated))
            .orElseGet(
                () ->
                    subject.undecided(
                        "voltage of ratings.%s of %s"
                            .formatted(cover.get().category(), contact.name()),
                        "%s of %s names no voltage."
                            .formatted(cover.get().words(), contact.name()))));
  }

  /** True if its ratings, none of them for coils, all end below the voltage that it switches. */
  private boolean isAboveAll(DrivingContact contact, RatedKind kind) {
    double round = contact.roundName(tables);
    return Cover.of(contact, tables).isEmpty()
        && kind.mostVolts().stream()
            .anyMatch(most -> Comparison.exceeds(contact.volts(), most * round));
  }

  private Outcome noneFits(DrivingContact contact, RatedKind kind) {
    boolean other = kind.isForTheOther();
    String volts = kind.of(contact.voltageUnknown().isPresent() ? 0 : contact.volts());
    Subject.Finding finding =
        new Subject(FACTS, contact.sheet().ratingsMark(), contact.at())
            .violated(
                "%s has no rating for %s".formatted(contact.name(), volts),
                "It switches %s on %s; its ratings are %s: %s."
                    .formatted(
                        contact.coilNames(),
                        volts,
                        kind.list(),
                        other ? "none for " + kind.words() : "all for less voltage"),
                "nothing here for " + volts);
    contact
        .sources()
        .forEach(
            source -> finding.alsoAt(SourceVolts.mark(contact.study(), source), "feeds the coil"));
    contact.coils().forEach(feed -> finding.alsoAt(feed.coil().mark(), "this coil hangs on it"));
    finding.change(Cover.better(contact, tables));
    return finding.todo(
        Cover.cure(contact, tables),
        new Basis(List.of(tables.source("part-data").cite()), Standing.PUBLISHED));
  }

  private Outcome compare(Subject subject, DrivingContact contact, Cover cover, double rated) {
    double nominal = contact.volts();
    double highest = nominal * SourceVolts.rise(contact.sources());
    Cited<Double> margin = tables.figure("drive.over-voltage");
    Basis basis = new Basis(List.of(tables.source("part-data").cite()), Standing.PUBLISHED);
    if (Comparison.exceeds(highest, rated)) {
      basis = basis.and(Basis.of(margin));
    }
    boolean byNominal = cover.isBelow(contact, tables);
    if (!byNominal && !Comparison.exceeds(highest, rated * margin.value())) {
      return subject.satisfied(
          "%s switches %s (%s at most) and is rated for %s (%s)."
              .formatted(
                  contact.name(),
                  Printed.volts(nominal),
                  Printed.volts(highest),
                  Printed.volts(rated),
                  cover.words()),
          new Measure(nominal, "V"),
          new Measure(rated, "V"),
          basis);
    }
    double value = byNominal ? nominal : highest;
    double limit = byNominal ? rated : rated * margin.value();
    Printed.Pair volts = Printed.pair(value, limit, Dimension.VOLTAGE);
    Subject.Finding finding =
        subject
            .violated(
                "%s is not rated for %s".formatted(contact.name(), volts.value()),
                byNominal
                    ? "It switches %s at %s; %s holds up to %s: %s too much. A rating says nothing about a higher voltage."
                        .formatted(
                            contact.coilNames(),
                            volts.value(),
                            cover.words(),
                            volts.limit(),
                            volts.apart())
                    : "It switches %s at up to %s; %s covers %s with the usual tolerance of a supply: %s too much."
                        .formatted(
                            contact.coilNames(),
                            volts.value(),
                            cover.words(),
                            volts.limit(),
                            volts.apart()),
                "rated at " + Printed.volts(rated))
            .measured(new Measure(value, "V"), new Measure(limit, "V"));
    contact
        .sources()
        .forEach(
            source ->
                finding.alsoAt(
                    SourceVolts.mark(contact.study(), source), "this voltage reaches it"));
    return finding.change(Cover.better(contact, tables)).todo(Cover.cure(contact, tables), basis);
  }
}
