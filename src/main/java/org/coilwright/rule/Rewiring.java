package org.coilwright.rule;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.netlist.Written;

/** Remedies that move, add or take out wires and parts, as text of the netlist. */
public final class Rewiring {
  private Rewiring() {}

  /** One more wire. */
  public static List<Change> wire(Netlist netlist, String from, String to, Optional<String> run) {
    return before(
        netlist,
        netlist.wires().get(0).mark(),
        "- {from: %s, to: %s%s}".formatted(from, to, run.map(r -> ", run: " + r).orElse("")));
  }

  /**
   * One more part.
   *
   * @param keys what stands in its braces: {@code is: diode}
   */
  public static List<Change> part(Netlist netlist, String name, String keys) {
    return netlist.parts().values().stream()
        .map(part -> part.head().mark())
        .filter(mark -> mark.file().equals(netlist.text().file()))
        .findFirst()
        .map(first -> before(netlist, first, "%s: {%s}".formatted(name, keys)))
        .orElse(List.of());
  }

  /** One more part with two pins, wired to two pins that are there. */
  public static List<Change> across(
      Netlist netlist, String name, String keys, List<String> pins, List<String> to) {
    return Stream.of(
            part(netlist, name, keys),
            wire(netlist, name + "." + pins.get(0), roomAt(netlist, to.get(0)), Optional.empty()),
            wire(netlist, name + "." + pins.get(1), roomAt(netlist, to.get(1)), Optional.empty()))
        .flatMap(List::stream)
        .toList();
  }

  /** The pin, or where two wires are on it already the far end of one, if that has room. */
  private static String roomAt(Netlist netlist, String pin) {
    List<Wire> on = on(netlist, pin);
    return on.size() < 2
        ? pin
        : on.stream()
            .map(w -> w.from().text().equals(pin) ? w.to() : w.from())
            .map(Written::text)
            .filter(other -> on(netlist, other).size() < 2)
            .findFirst()
            .orElse(pin);
  }

  private static List<Wire> on(Netlist netlist, String pin) {
    return netlist.wires().stream()
        .filter(w -> w.from().text().equals(pin) || w.to().text().equals(pin))
        .toList();
  }

  /** A designation that no part has yet: the letter and the first number that is free. */
  public static String free(Netlist netlist, String letter) {
    return IntStream.iterate(1, n -> n + 1)
        .mapToObj(n -> letter + n)
        .filter(name -> !netlist.parts().containsKey(name))
        .findFirst()
        .orElseThrow();
  }

  /** A wire struck out; empty where something else stands on its line. */
  public static List<Change> without(Netlist netlist, Wire wire) {
    String line = line(netlist, wire.mark());
    return line.stripLeading().startsWith("- ") && line.chars().filter(c -> c == '{').count() < 2
        ? List.of(
            new Change(new Mark(wire.mark().file(), wire.mark().line(), 1, line.length() + 1), ""))
        : List.of();
  }

  /** Each wire on the one pin put on the other, and the reverse. */
  public static List<Change> exchanged(Netlist netlist, Terminal one, Terminal other) {
    return Stream.concat(moved(netlist, one, other), moved(netlist, other, one)).toList();
  }

  /** The run of the first wire that leads to a part and lies in one. */
  public static Optional<String> runOf(Netlist netlist, String part) {
    return netlist.wires().stream()
        .filter(w -> w.from().value().part().equals(part) || w.to().value().part().equals(part))
        .flatMap(w -> w.run().stream())
        .map(Written::value)
        .findFirst();
  }

  /** A word of a part, the first after its designation on the same line, put in place of it. */
  public static List<Change> word(Netlist netlist, Mark part, String now, String then) {
    int at = line(netlist, part).indexOf(now, part.endColumn() - 1);
    return at < 0
        ? List.of()
        : List.of(
            new Change(new Mark(part.file(), part.line(), at + 1, at + 1 + now.length()), then));
  }

  /** Each wire end on a pin put on another. */
  private static Stream<Change> moved(Netlist netlist, Terminal from, Terminal to) {
    return netlist.wires().stream()
        .flatMap(wire -> Stream.of(wire.from(), wire.to()))
        .filter(end -> end.value().equals(from))
        .map(end -> new Change(end.mark(), to.toString()));
  }

  private static String line(Netlist netlist, Mark mark) {
    return mark.file().equals(netlist.text().file())
        ? netlist.text().lines().get(mark.line() - 1)
        : "";
  }

  /** A line of its own before the one that is marked, as far in as that. */
  private static List<Change> before(Netlist netlist, Mark mark, String text) {
    String line = line(netlist, mark);
    if (line.isEmpty()) {
      return List.of();
    }
    String indent = line.substring(0, line.length() - line.stripLeading().length());
    return List.of(
        new Change(
            new Mark(mark.file(), mark.line(), 1, 2), indent + text + "\n" + line.substring(0, 1)));
  }
}
