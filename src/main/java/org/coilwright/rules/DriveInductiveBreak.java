package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.DiodeBranch;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
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

/** Only a resistive rating covers a contact that breaks an unsuppressed coil. */
final class DriveInductiveBreak implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("drive.inductive-break", Weight.FIX, "resistive rating for an inductive break")
          .what(
              "Raised for each contact that switches a coil with nothing across it and has no"
                  + " rating for electromagnets (AC-15 or AC-14, AC-3 for a main pole, DC-13), only"
                  + " a resistive one."
                  + " On direct current the time constant of a coil without a diode must be within"
                  + " what DC-13 covers.")
          .why(
              "The coil keeps its current going through an arc; a contact that was tested on"
                  + " resistors alone wears out many times faster or does not part it.")
          .remedy("Put a suppressor across the coil, or take a contact rated for electromagnets.")
          .blind(
              "Whether the suppressor is large enough: the suppression rules look at that. A coil"
                  + " whose data sheet is silent about suppression is taken to have none.")
          .sources(
              "category-overview", "control-classifications", "iec-60947-5-1", "common-practice")
          .consequenceOf(
              "suppression.missing",
              "drive.current",
              "drive.voltage",
              "drive.inrush",
              "coil.wrong-current-kind",
              "separation.mains-meets-elv");

  private final Tables tables;

  DriveInductiveBreak(Tables tables) {
    this.tables = tables;
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return PerContact.ask(study, FACTS, this::judge);
  }

  private Optional<Outcome> judge(DrivingContact contact) {
    Optional<Cover> found = Cover.of(contact, tables);
    return found.isEmpty()
        ? PerContact.noRating(FACTS, contact)
        : Optional.of(judge(contact, found.get()));
  }

  private Outcome judge(DrivingContact contact, Cover cover) {
    Subject subject = new Subject(FACTS, cover.rating().mark(), contact.at());
    Cited<Double> small = tables.figure("drive.ac-14-limit");
    Basis categories = Basis.of(small);
    Optional<Outcome> slow = tooSlow(contact, cover, subject);
    if (slow.isPresent()) {
      return slow.get();
    }
    if (cover.inductive()) {
      return subject.satisfied(
          "%s breaks %s by a rating for electromagnets (%s)."
              .formatted(contact.name(), contact.coilNames(), cover.words()),
          categories);
    }
    List<CoilFeed> bare =
        contact.coils().stream().filter(feed -> !isSuppressed(contact, feed)).toList();
    if (bare.isEmpty()) {
      return subject.satisfied(
          "%s has no rating for electromagnets, only %s, but %s is suppressed."
              .formatted(contact.name(), cover.words(), contact.coilNames()),
          new Basis(List.of(tables.source("common-practice").cite()), Standing.COMMON_PRACTICE));
    }
    CoilFeed first = bare.get(0);
    String limit = Printed.of(small.value(), Dimension.APPARENT_POWER);
    Subject.Finding finding =
        subject.violated(
            "%s breaks %s without a rating for it".formatted(contact.name(), first.relay()),
            "Its rating is %s, %s; %s is a coil with nothing across it, which asks for %s."
                .formatted(
                    cover.words(),
                    cover.category().equals("AC-14")
                        ? "for electromagnets up to " + limit + " in all"
                        : "for resistive loads",
                    first.relay(),
                    Cover.wanted(contact)),
            "no " + Cover.wanted(contact) + " here");
    bare.forEach(feed -> finding.alsoAt(feed.coil().mark(), "nothing across this coil"));
    return finding
        .change(Cover.better(contact, tables))
        .detail(
            bare.stream().allMatch(feed -> feed.spec().suppression().isPresent())
                ? ""
                : "The netlist does not say whether a suppressor is built into the coil; taken as"
                    + " none.")
        .todo(
            contact.isDirect()
                ? "Put a diode across %s and %s, or take a contact with %s."
                    .formatted(
                        first.coil().from(), first.coil().to(), Cover.neededWords(contact, tables))
                : "Take a contact with %s, or put a varistor or snubber across %s and %s."
                    .formatted(
                        Cover.neededWords(contact, tables), first.coil().from(), first.coil().to()),
            categories);
  }

  /** A magnet with more behind it than any that the category was tested with. */
  private Optional<Outcome> tooSlow(DrivingContact contact, Cover cover, Subject subject) {
    Cited<Double> most = tables.figure("drive.dc-13-time-constant");
    if (!cover.inductive() || !contact.isDirect()) {
      return Optional.empty();
    }
    return contact.coils().stream()
        .filter(feed -> !hasDiode(contact, feed))
        .flatMap(
            feed ->
                feed.spec().timeConstant().stream()
                    .filter(t -> Comparison.exceeds(t.value().high(), most.value()))
                    .map(t -> tooSlow(contact, subject, feed, t, most)))
        .findFirst();
  }

  private static Outcome tooSlow(
      DrivingContact contact,
      Subject subject,
      CoilFeed feed,
      Written<Quantity> time,
      Cited<Double> most) {
    Printed.Pair pair = Printed.pair(time.value().high(), most.value(), Dimension.TIME);
    return subject
        .violated(
            "%s breaks a slower magnet than its rating covers".formatted(contact.name()),
            "%s has a time constant of %s; the category covers %s: too much by %s."
                .formatted(feed.relay(), pair.value(), pair.limit(), pair.apart()),
            "covers " + pair.limit())
        .alsoAt(time.mark(), "L/R of " + time.text())
        .measured(new Measure(time.value().high(), "s"), new Measure(most.value(), "s"))
        .todo(
            "Put a diode across %s and %s, or read its time constant off the sheet anew."
                .formatted(feed.coil().from(), feed.coil().to()),
            Basis.of(most));
  }

  /** With a diode the current leaves the contact without a rise of voltage, however slow. */
  private static boolean hasDiode(DrivingContact contact, CoilFeed feed) {
    return feed.spec().hasDiode()
        || contact.study().circuit().branches(DiodeBranch.class).stream()
            .anyMatch(b -> CoilWays.acrossTheSame(contact.study().circuit(), b, feed.coil()));
  }

  private static boolean isSuppressed(DrivingContact contact, CoilFeed feed) {
    boolean inside = feed.spec().suppression().filter(s -> !s.value().equals("none")).isPresent();
    Circuit circuit = contact.study().circuit();
    return inside
        || circuit.branches().stream()
            .filter(DriveInductiveBreak::quenches)
            .anyMatch(
                b ->
                    CoilWays.acrossTheSame(circuit, b, feed.coil())
                        || CoilWays.acrossTheSame(circuit, b, contact.contact()));
  }

  private static boolean quenches(Branch branch) {
    return branch instanceof DiodeBranch
        || (branch instanceof Passive passive && !(passive.spec() instanceof Part.Lamp));
  }
}
