package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.DiodeBranch;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Node;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Quantity;

/**
 * A coil whose two pins hang on two supplies that have no conductor in common: no current finds its
 * way round.
 *
 * @param first the supply that its first pin leads to, and {@code firstEnd} where
 * @param second likewise of its second pin
 */
record TwoSupplies(CoilFeed feed, Source first, Node firstEnd, Source second, Node secondEnd) {
  /** Empty unless each pin leads to supplies of its own, and to one only. */
  static Optional<TwoSupplies> of(CoilFeed feed) {
    Set<Node> one = reach(feed, feed.coil().from());
    Set<Node> other = reach(feed, feed.coil().to());
    List<Source> sources = feed.study().circuit().branches(Source.class);
    List<Source> atFirst = sources.stream().filter(s -> ends(s, one)).toList();
    List<Source> atSecond = sources.stream().filter(s -> ends(s, other)).toList();
    boolean apart = atFirst.size() == 1 && atSecond.size() == 1 && !atFirst.equals(atSecond);
    return apart
        ? Optional.of(
            new TwoSupplies(
                feed,
                atFirst.get(0),
                end(atFirst.get(0), one),
                atSecond.get(0),
                end(atSecond.get(0), other)))
        : Optional.empty();
  }

  private static Set<Node> reach(CoilFeed feed, Node pin) {
    return feed.study().circuit().reach(pin, b -> isWayBack(feed, b));
  }

  /** True for what may lead a pin of a coil back to a supply, a diode across it left out. */
  static boolean isWayBack(CoilFeed feed, Branch branch) {
    return feed.leads(branch)
        && !(branch instanceof Source)
        && !(branch instanceof DiodeBranch
            && CoilWays.acrossTheSame(feed.study().circuit(), branch, feed.coil()));
  }

  private static boolean ends(Source source, Set<Node> nodes) {
    return nodes.contains(source.from()) || nodes.contains(source.to());
  }

  private static Node end(Source source, Set<Node> nodes) {
    return nodes.contains(source.to()) ? source.to() : source.from();
  }

  private static String side(Source source, Node end) {
    return "%s (the %s of %s%s)"
        .formatted(
            end,
            source.isDirect()
                ? end.equals(source.to()) ? "plus" : "minus"
                : end.equals(source.to()) ? "line" : "neutral",
            source.part(),
            source.output().flatMap(o -> o.voltage()).map(v -> ", " + v.text()).orElse(""));
  }

  String inWords() {
    return "%s leads to %s and %s to %s: the two have no common %s, so no current flows."
        .formatted(
            feed.coil().from(),
            side(first, firstEnd),
            feed.coil().to(),
            side(second, secondEnd),
            first.isDirect() && second.isDirect() ? "minus" : "return");
  }

  /** The pin that moves, to the supply that the coil is made for. */
  String cure() {
    boolean byFirst = fits(first);
    boolean bySecond = fits(second);
    if (byFirst == bySecond) {
      return "Bring both pins of %s to the two pins of one supply, the one for its %s."
          .formatted(feed.relay(), feed.spec().voltage().text());
    }
    return "Bring the way that ends on %s to %s: %s is the supply for a coil of %s. Do not join the two supplies for it."
        .formatted(
            byFirst ? secondEnd : firstEnd,
            byFirst ? other(first, firstEnd) : other(second, secondEnd),
            byFirst ? first.part() : second.part(),
            feed.spec().voltage().text());
  }

  private static Node other(Source source, Node end) {
    return end.equals(source.to()) ? source.from() : source.to();
  }

  /** True if the supply gives the kind of current and the voltage that the coil is made for. */
  private boolean fits(Source source) {
    boolean kind = source.isDirect() != feed.isAlternating();
    Optional<Double> highest =
        feed.study().limits(feed.relay()).map(limits -> limits.highest().value());
    Optional<Double> least =
        feed.study().limits(feed.relay()).map(limits -> limits.operate().value());
    return kind
        && source.volts().map(Quantity::nominal).stream()
            .anyMatch(
                v ->
                    highest.filter(h -> !Comparison.exceeds(v, h)).isPresent()
                        && least.filter(l -> !Comparison.fallsShort(v, l)).isPresent());
  }
}
