package org.coilwright.rules;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.CoilLimits;
import org.coilwright.solve.Fault;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** One earth fault in the control circuit starts a load, or keeps it from being stopped. */
final class FaultEarthStartsLoad implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("fault.earth-starts-load", Weight.STOP, "earth fault starts a load")
          .what(
              "Joins each conductor of the control circuits to earth, one at a time, and computes"
                  + " every position again; raised where a load is then on when it should be off,"
                  + " or may stay on because its coil lies between two lines and keeps one of"
                  + " them.")
          .why(
              "A core that is pinched against metal then closes the coil's circuit through earth:"
                  + " the contact that should switch the load is bridged.")
          .remedy(
              "Put the contacts that switch a coil on the side of the supply that is not joined to"
                  + " earth, and the coil straight on the other side.")
          .blind(
              "Two earth faults at once, which matter where the control circuit has no joint to"
                  + " earth; earth faults of the load's own wires.")
          .sources("circuit-theory", "motor-control-handbook")
          .consequenceOf("poles.neutral-only", "poles.load-not-switched");

  private final Basis basis;

  FaultEarthStartsLoad(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    KeptOn.all(study, EnumSet.of(Fault.Kind.EARTHED)).forEach(kept -> outcomes.add(check(kept)));
    return outcomes;
  }

  /** A coil between two lines keeps what is left between one of them and earth. */
  private Optional<Outcome> held(KeptOn kept) {
    if (kept.held().isEmpty()) {
      return Optional.empty();
    }
    Study study = kept.study();
    return Loads.relaysBefore(study, kept.name()).stream()
        .map(relay -> CoilFeed.of(study, relay))
        .filter(feed -> feed.sources().size() > 1)
        .filter(feed -> feed.sources().stream().noneMatch(Source::isDirect))
        .findFirst()
        .flatMap(feed -> study.limits(feed.relay()).map(limits -> held(kept, feed, limits)));
  }

  private Outcome held(KeptOn kept, CoilFeed feed, CoilLimits limits) {
    String name = kept.name();
    String relay = feed.relay();
    double volts =
        feed.sources().stream()
            .flatMap(s -> s.volts().stream())
            .mapToDouble(Quantity::nominal)
            .max()
            .orElse(0);
    String words = Printed.volts(volts);
    String release = Printed.volts(limits.release().value());
    return kept.finding(
            FACTS, kept.held(), "an earth fault may keep %s on".formatted(name), "may stay on then")
        .alsoAt(
            feed.spec().release().map(Written::mark).orElse(feed.coil().mark()),
            "surely lets go below " + release)
        .detail(
            "%s lies between two lines: earthed, it keeps %s of its %s and does not pull in with that, but surely lets go only below %s (%s)."
                .formatted(
                    relay,
                    words,
                    Printed.volts(feed.ratedVolts()),
                    release,
                    limits.releaseReason()))
        .todo(
            "Let the control contact open both lines to %s; or take a coil for %s between one line and neutral, or one fed by an extra-low-voltage supply%s."
                .formatted(
                    relay,
                    words,
                    feed.spec().release().isEmpty()
                        ? "; or write coil.release of %s, if its sheet says that it lets go above %s"
                            .formatted(relay, words)
                        : ""),
            basis);
  }

  private Outcome check(KeptOn kept) {
    String name = kept.name();
    Optional<Outcome> half =
        kept.held().stream().allMatch(h -> h.effect().onlyHolds()) ? held(kept) : Optional.empty();
    if (half.isPresent()) {
      return half.get();
    }
    if (!kept.held().isEmpty()) {
      return kept.finding(
              FACTS, kept.held(), "an earth fault turns %s on".formatted(name), "is on then")
          .todo(
              "Put the contacts that switch the coil on the side of the supply that is not joined"
                  + " to earth, and the coil straight on the other.",
              basis);
    }
    return kept.open(FACTS)
        .orElseGet(
            () ->
                Subject.of(FACTS, kept.load().head().mark(), name)
                    .satisfied(
                        "No single earth fault in the control circuits leaves %s on when it should be off."
                            .formatted(name),
                        basis));
  }
}
