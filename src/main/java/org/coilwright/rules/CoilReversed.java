package org.coilwright.rules;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rewiring;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A polarised coil is wired backwards. */
final class CoilReversed implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("coil.reversed", Weight.STOP, "polarised coil wired backwards")
          .what(
              "Raised for each DC coil that names its plus pin, or has a diode built in, and meets"
                  + " minus there.")
          .why(
              "A polarised relay does not pull in backwards; a diode inside it becomes a"
                  + " short-circuit for the supply and for the contact that closes it.")
          .remedy("Exchange the wires of the two coil pins.")
          .blind(
              "A coil whose data sheet asks for a polarity that the netlist does not give. With"
                  + " plus on the first pin, the usual one, nothing is said.")
          .sources("circuit-theory", "common-practice")
          .consequenceOf(
              "coil.wrong-current-kind", "separation.mains-meets-elv", "wiring.self-joined");

  private final Basis stated;
  private final Basis usual;

  CoilReversed(Tables tables) {
    stated = new Basis(List.of(tables.source("circuit-theory").cite()), Standing.PUBLISHED);
    usual = Basis.of(FACTS, tables, Standing.COMMON_PRACTICE);
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
    Optional<Path> way =
        feed.fedStates().stream()
            .findFirst()
            .flatMap(feed::wayIn)
            .or(() -> feed.ways().stream().findFirst());
    Optional<Source> source =
        way.flatMap(w -> CoilFeed.sourcesOf(w).stream().filter(Source::isDirect).findFirst());
    if (source.isEmpty() || feed.spec().voltage().value().kind() == CurrentKind.AC) {
      return Optional.empty();
    }
    // the way starts at the coil's first pin: it meets the source's plus before its minus, or not
    List<Node> nodes = way.get().nodes();
    boolean plusFirst = nodes.indexOf(source.get().to()) < nodes.indexOf(source.get().from());
    String plusNow = plusFirst ? feed.spec().first() : feed.spec().second();
    Subject subject = PerCoil.subject(FACTS, feed);
    Optional<String> wanted = plusPin(feed);
    if (wanted.isEmpty()) {
      return Optional.of(
          isIndifferent(feed)
              ? subject.satisfied("The coil of %s has no polarity.".formatted(feed.relay()), stated)
              : unknown(subject, feed, plusNow));
    }
    Basis basis = feed.spec().polarity().isPresent() ? stated : usual;
    if (wanted.get().equals(plusNow)) {
      return Optional.of(
          subject.satisfied(
              "%s.%s is plus, as its coil needs it.".formatted(feed.relay(), plusNow), basis));
    }
    return Optional.of(
        Subject.of(FACTS, reasonMark(feed), feed.relay())
            .violated(
                "%s is wired backwards".formatted(feed.relay()),
                "Its pin %s must be plus, but the plus of %s reaches %s."
                    .formatted(wanted.get(), source.get().part(), plusNow),
                "%s must be plus".formatted(wanted.get()))
            .alsoAt(source.get().mark(), "plus comes from %s".formatted(source.get().to()))
            .detail(
                feed.spec().hasDiode()
                    ? "The diode inside conducts then: a short-circuit as soon as the contact"
                        + " closes."
                    : "")
            .change(
                Rewiring.exchanged(
                    feed.study().circuit().netlist(),
                    new Terminal(feed.relay(), feed.spec().first()),
                    new Terminal(feed.relay(), feed.spec().second())))
            .todo(
                "Exchange the wires on %s and %s.".formatted(feed.coil().from(), feed.coil().to()),
                basis));
  }

  private Outcome unknown(Subject subject, CoilFeed feed, String plusNow) {
    if (plusNow.equals(feed.spec().first())) {
      return subject.satisfied(
          "%s.%s is plus, which suits a coil with or without a polarity."
              .formatted(feed.relay(), plusNow),
          usual);
    }
    return subject.undecided(
        "coil.polarity of " + feed.relay(),
        "%s has plus on its second coil pin, %s: wrong if a diode or a lamp is built in."
            .formatted(feed.relay(), plusNow));
  }

  private static boolean isIndifferent(CoilFeed feed) {
    return feed.spec().polarity().filter(p -> word(p).equals("none")).isPresent();
  }

  /** The pin that must be plus; by custom the first where only a built-in diode tells. */
  private static Optional<String> plusPin(CoilFeed feed) {
    if (feed.spec().polarity().isPresent()) {
      String words = word(feed.spec().polarity().get());
      for (String pin : List.of(feed.spec().first(), feed.spec().second())) {
        String named = pin.toLowerCase(Locale.ROOT);
        if (words.equals(named) || words.startsWith(named + " ")) {
          boolean plus = !words.endsWith("minus") && !words.endsWith("-");
          boolean first = pin.equals(feed.spec().first());
          return Optional.of(plus == first ? feed.spec().first() : feed.spec().second());
        }
      }
      return Optional.empty();
    }
    return feed.spec().hasDiode() ? Optional.of(feed.spec().first()) : Optional.empty();
  }

  private static Mark reasonMark(CoilFeed feed) {
    return feed.spec()
        .polarity()
        .or(() -> feed.spec().suppression())
        .map(Written::mark)
        .orElse(feed.coil().mark());
  }

  private static String word(Written<String> written) {
    return written.value().strip().toLowerCase(Locale.ROOT);
  }
}
