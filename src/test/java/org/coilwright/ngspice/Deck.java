package org.coilwright.ngspice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A circuit and a question about it, in ngspice's own language.
 *
 * @param name unique within a recording; one line
 * @param elements element and option lines; node 0 is the reference
 * @param commands analysis, then what prints the answers
 */
public record Deck(String name, List<String> elements, List<String> commands) {
  /** Tighter than ngspice's defaults, so that its own tolerance does not blur the comparison. */
  private static final String OPTIONS =
      ".options reltol=1e-7 abstol=1e-14 vntol=1e-10 gmin=1e-15 method=gear";

  public Deck {
    elements = List.copyOf(elements);
    commands = List.copyOf(commands);
    if (name.isBlank() || name.contains("\n")) {
      throw new IllegalArgumentException("a deck needs a name of one line");
    }
  }

  /**
   * Direct-current operating point.
   *
   * @param asked expressions, such as {@code v(a)} or {@code i(v1)}; lower case, as ngspice prints
   */
  public static Deck operatingPoint(String name, List<String> elements, List<String> asked) {
    return new Deck(name, elements, analysis("op", asked));
  }

  /**
   * Phasors at one frequency.
   *
   * @param asked real expressions, such as {@code mag(v(a))} or {@code real(i(v1))}
   */
  public static Deck alternating(
      String name, List<String> elements, double hertz, List<String> asked) {
    String at = number(hertz);
    return new Deck(name, elements, analysis("ac lin 1 " + at + " " + at, asked));
  }

  /**
   * Course over time from the initial conditions that the elements state.
   *
   * @param measures name of an answer to its {@code meas tran} clause, such as {@code when
   *     i(l1)=0.01 fall=1}
   */
  public static Deck transientFrom(
      String name, List<String> elements, double step, double stop, Map<String, String> measures) {
    List<String> commands = new ArrayList<>();
    // The fourth figure bounds ngspice's own steps: without it a smooth decay is sampled too
    // coarsely.
    commands.add("tran " + number(step) + " " + number(stop) + " 0 " + number(step) + " uic");
    measures.forEach((answer, clause) -> commands.add("meas tran " + answer + " " + clause));
    return new Deck(name, elements, commands);
  }

  /** The circuit as a file for {@code source}. */
  String text() {
    return "* " + name + "\n" + OPTIONS + "\n" + String.join("\n", elements) + "\n.end\n";
  }

  /** Everything an answer depends on. */
  String fingerprint() {
    return Integer.toHexString((text() + commands).hashCode());
  }

  /** A number as ngspice reads it, with a point whatever the locale. */
  public static String number(double value) {
    return String.format(Locale.ROOT, "%.12g", value);
  }

  private static List<String> analysis(String command, List<String> asked) {
    List<String> commands = new ArrayList<>();
    commands.add(command);
    asked.forEach(a -> commands.add("print " + a));
    return commands;
  }
}
