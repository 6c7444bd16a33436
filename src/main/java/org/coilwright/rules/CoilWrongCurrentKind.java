package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.CurrentKind;
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
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** An AC coil on direct current, or a DC coil on alternating current. */
final class CoilWrongCurrentKind implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("coil.wrong-current-kind", Weight.STOP, "coil on the wrong kind of current")
          .what(
              "Raised for each coil whose rated voltage says AC while the source on its way is"
                  + " direct, or DC while the source is the mains.")
          .why(
              "On direct current only the wire's resistance is left to hold the current of an AC"
                  + " coil back: it draws many times what it is made for and burns. A DC coil on"
                  + " alternating current buzzes and does not pull in.")
          .remedy("Fit a coil for the current that is there, or feed it from the right supply.")
          .blind("A coil that is made for both kinds: write the kind that it meets here.")
          .sources("circuit-theory")
          .consequenceOf("separation.mains-meets-elv", "wiring.self-joined");

  private final Basis basis;

  CoilWrongCurrentKind(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return PerCoil.ask(study, FACTS, this::judge);
  }

  private Optional<Outcome> judge(CoilFeed feed) {
    if (feed.sources().isEmpty()) {
      return Optional.empty();
    }
    Subject subject = Subject.of(FACTS, feed.spec().voltage().mark(), feed.relay());
    CurrentKind wanted = feed.spec().voltage().value().kind();
    if (wanted == CurrentKind.UNSTATED) {
      return Optional.of(
          subject.undecided(
              "AC or DC after coil.voltage of " + feed.relay(),
              "The coil voltage of %s does not say whether it is AC or DC."
                  .formatted(feed.relay())));
    }
    Optional<Source> wrong =
        feed.sources().stream()
            .filter(source -> source.isDirect() != (wanted == CurrentKind.DC))
            .findFirst();
    return Optional.of(
        wrong
            .map(source -> burns(subject, feed, source))
            .orElseGet(
                () ->
                    subject.satisfied(
                        "%s has a coil for %s and gets %s.".formatted(feed.relay(), wanted, wanted),
                        basis)));
  }

  private Outcome burns(Subject subject, CoilFeed feed, Source source) {
    return source.isDirect() ? onDirect(subject, feed, source) : onMains(subject, feed, source);
  }

  private Outcome onDirect(Subject subject, CoilFeed feed, Source source) {
    Optional<Double> volts = source.volts().map(v -> v.high());
    Optional<Double> ohms = feed.spec().resistance().map(r -> r.value().low());
    Optional<Double> rated =
        feed.spec().hold().map(hold -> hold.value().nominal() / feed.ratedVolts());
    StringBuilder numbers =
        new StringBuilder(
            "Its coil is for %s; %s gives direct current."
                .formatted(feed.spec().voltage().text(), source.part()));
    Optional<Double> amps = volts.flatMap(u -> ohms.filter(r -> r > 0).map(r -> u / r));
    if (amps.isPresent()) {
      numbers.append(
          " Nothing but its resistance holds the current back: %s ÷ %s = %s"
              .formatted(
                  Printed.volts(volts.orElseThrow()),
                  Printed.of(ohms.orElseThrow(), Dimension.RESISTANCE),
                  Printed.amps(amps.get())));
      numbers.append(
          rated
              .map(
                  i ->
                      ", %s times the %s that it is made to hold with."
                          .formatted(multiple(amps.get() / i), Printed.amps(i)))
              .orElse("."));
    } else {
      numbers.append(" How much it draws then cannot be told without the coil's resistance.");
    }
    Subject.Finding finding =
        subject
            .violated(
                "%s: AC coil on direct current".formatted(feed.relay()),
                numbers.toString(),
                "an AC coil")
            .alsoAt(SourceVolts.mark(feed.study(), source), "direct current");
    if (amps.isPresent() && rated.isPresent()) {
      finding.measured(new Measure(amps.get(), "A"), new Measure(rated.get(), "A"));
    }
    return finding.todo(
        "Fit a %s with a coil for %s, or feed this coil from %s."
            .formatted(
                kindOfPart(feed),
                source
                    .output()
                    .flatMap(o -> o.voltage().map(Written::text))
                    .orElse("direct current"),
                feed.spec().voltage().text()),
        basis);
  }

  private Outcome onMains(Subject subject, CoilFeed feed, Source source) {
    return subject
        .violated(
            "%s: DC coil on alternating current".formatted(feed.relay()),
            "Its coil is for %s; %s gives alternating current. It lacks the shading ring that holds an armature over the zero crossings: it buzzes and does not pull in."
                .formatted(feed.spec().voltage().text(), source.part()),
            "a DC coil")
        .alsoAt(SourceVolts.mark(feed.study(), source), "alternating current")
        .todo(
            "Fit a %s with an AC coil for this voltage, or feed the coil from %s."
                .formatted(kindOfPart(feed), feed.spec().voltage().text()),
            basis);
  }

  private static String kindOfPart(CoilFeed feed) {
    return feed.part().filter(p -> p.isContactor()).isPresent() ? "contactor" : "relay";
  }

  private static String multiple(double times) {
    return Printed.of(times, Dimension.COUNT);
  }
}
