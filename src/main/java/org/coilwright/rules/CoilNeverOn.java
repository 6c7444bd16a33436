package org.coilwright.rules;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Node;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** No position of the contacts energises the coil. */
final class CoilNeverOn implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("coil.never-on", Weight.FIX, "coil that nothing energises")
          .what(
              "Raised for each wired coil that gets current in no position of the outputs,"
                  + " switches, thermostats and relays.")
          .why("The relay never operates, so nothing behind its contacts ever does.")
          .remedy("Complete the way from the supply through the contact to both pins of the coil.")
          .blind(
              "A coil without any wire: that is an unused part. Whether the positions that energise"
                  + " the coil ever come about in use.")
          .sources("circuit-theory")
          .consequenceOf(
              "wiring.self-joined",
              "wiring.short-circuit",
              "poles.neutral-earthed",
              "wiring.loose-end",
              "wiring.no-steady-state",
              "coil.reversed",
              "coil.half-pulled",
              "coil.wrong-current-kind",
              "suppression.reversed",
              "suppression.diode-on-ac",
              "separation.mains-meets-elv",
              "supply.unfed")
          .meansWiredOtherwise();

  private final Basis basis;

  CoilNeverOn(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return PerCoil.askOfEveryPosition(study, FACTS, feed -> Optional.of(judge(feed)));
  }

  private Outcome judge(CoilFeed feed) {
    List<State> states = feed.states();
    int positions = states.size();
    long on = states.stream().filter(feed::isEnergised).count();
    Subject subject = PerCoil.subject(FACTS, feed);
    if (on > 0) {
      return subject.satisfied(
          "%s is energised in %s of %s positions.".formatted(feed.relay(), on, positions), basis);
    }
    Optional<TwoSupplies> two = feed.ways().isEmpty() ? TwoSupplies.of(feed) : Optional.empty();
    Subject.Finding finding =
        new Subject(FACTS, feed.coil().mark(), causes(feed))
            .violated(
                two.isPresent()
                    ? "%s lies between two supplies that nothing joins".formatted(feed.relay())
                    : "%s is never energised".formatted(feed.relay()),
                two.isPresent()
                    ? two.get().inWords()
                    : positions == 1
                        ? "Nothing switches here, and its coil gets no current. " + whyNot(feed)
                        : "Its coil gets no current in any of the %s positions. %s"
                            .formatted(positions, whyNot(feed)),
                "gets no current");
    if (feed.ways().isEmpty()) {
      showSupplies(finding, feed);
    } else {
      contacts(feed.ways().get(0))
          .forEach(contact -> finding.alsoAt(contact.mark(), contact.id() + " is in its way"));
    }
    return finding.todo(two.map(TwoSupplies::cure).orElseGet(() -> whatToDo(feed)), basis);
  }

  /** Beside the coil the relays before it, and the pins to which its ways lead in vain. */
  private static List<String> causes(CoilFeed feed) {
    Set<String> at = new LinkedHashSet<>(List.of(feed.relay()));
    feed.switches().stream()
        .filter(contact -> contact.actuator().kind() == Actuator.Kind.COIL)
        .forEach(contact -> at.add(contact.part()));
    at.addAll(feed.deadEnds());
    return List.copyOf(at);
  }

  private static void showSupplies(Subject.Finding finding, CoilFeed feed) {
    Set<Node> first = reach(feed, feed.coil().from());
    Set<Node> second = reach(feed, feed.coil().to());
    for (Source source : feed.study().circuit().branches(Source.class)) {
      boolean plus = first.contains(source.to()) || second.contains(source.to());
      boolean minus = first.contains(source.from()) || second.contains(source.from());
      finding.alsoAt(
          source.mark(),
          plus && minus
              ? "both sides reach the coil"
              : plus
                  ? "only %s reaches the coil".formatted(source.to())
                  : minus
                      ? "only %s reaches the coil".formatted(source.from())
                      : "not joined to the coil");
    }
  }

  private static String whyNot(CoilFeed feed) {
    List<String> dead = feed.deadSupplies();
    if (!dead.isEmpty()) {
      return "The contacts on its way, %s, close, but %s gives nothing in any such position."
          .formatted(feed.ways().get(0).inWords(), String.join(" and ", dead));
    }
    if (!feed.ways().isEmpty()) {
      Path way = feed.ways().get(0);
      return "Its way is %s; no position closes %s together."
          .formatted(
              way.inWords(),
              contacts(way).stream().map(Branch::id).collect(Collectors.joining(" and ")));
    }
    return (wayBack(feed, feed.coil().from()) + wayBack(feed, feed.coil().to())).trim();
  }

  private static String whatToDo(CoilFeed feed) {
    return feed.ways().isEmpty()
        ? "Wire one pin of %s through its contact to one side of a supply, and the other pin to the other side."
            .formatted(feed.relay())
        : "See which of these contacts has the wrong form (NO or NC) or the wrong relay behind it.";
  }

  private static List<Contact> contacts(Path way) {
    return way.branches().stream()
        .filter(Contact.class::isInstance)
        .map(Contact.class::cast)
        .toList();
  }

  private static Set<Node> reach(CoilFeed feed, Node pin) {
    return feed.study()
        .circuit()
        .reach(pin, branch -> feed.leads(branch) && !(branch instanceof Source));
  }

  private static String wayBack(CoilFeed feed, Node pin) {
    return WayBack.of(feed.study().circuit(), pin, b -> TwoSupplies.isWayBack(feed, b));
  }
}
