package org.coilwright.checklist;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.coilwright.checklist.Checklist.WireRow;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.CoreColour;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Wire;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;

/** The wiring list, in the order of the netlist. */
final class WireRows {
  private final Anatomy anatomy;
  private final Texts texts;

  WireRows(Anatomy anatomy, Texts texts) {
    this.anatomy = anatomy;
    this.texts = texts;
  }

  /**
   * The whole list.
   *
   * @param states letters of what is done before a wire is measured, by name of its row
   */
  List<WireRow> rows(Map<String, String> states) {
    List<Branch.Conductor> conductors = anatomy.circuit().branches(Branch.Conductor.class);
    Set<String> taken = new HashSet<>();
    return java.util.stream.IntStream.range(0, conductors.size())
        .mapToObj(i -> row(i, conductors.get(i), name(conductors.get(i), taken), states))
        .toList();
  }

  /** Names of the rows, one a conductor, in their order. */
  static List<String> names(List<Branch.Conductor> conductors) {
    Set<String> taken = new HashSet<>();
    return conductors.stream().map(conductor -> name(conductor, taken)).toList();
  }

  /**
   * By which a wire is told: its own number, or else its place in the list.
   *
   * @param position from 0
   */
  static String number(Branch.Conductor conductor, int position) {
    return conductor.wire().number().map(Written::text).orElse(String.valueOf(position + 1));
  }

  private static String name(Branch.Conductor conductor, Set<String> taken) {
    return Names.free(Names.of(Names.wire(conductor.wire()), "wired"), taken);
  }

  private WireRow row(
      int position, Branch.Conductor conductor, String name, Map<String, String> states) {
    Wire wire = conductor.wire();
    return new WireRow(
        name,
        number(conductor, position),
        wire.from().value().toString(),
        wire.to().value().toString(),
        conductor.bridge() ? texts.of("wire.bridge") : conductor.run().map(Run::name).orElse("–"),
        conductor.size().map(Printed::of).map(texts::figure).orElse(texts.of("wire.not-stated")),
        conductor.length().isPresent()
            ? texts.figure(Printed.given(conductor.length().getAsDouble(), Dimension.LENGTH))
            : texts.of("wire.not-stated"),
        wire.colour().map(w -> letters(texts, w.text())).orElse("–"),
        texts.of("carries." + Names.word(anatomy.carries(conductor.from()))),
        states.getOrDefault(name, ""));
  }

  /** The letters of the trade, as the diagram has them; the name where there are none. */
  private static String letters(Texts texts, String written) {
    return CoreColour.letters(written).orElseGet(() -> colour(texts, written));
  }

  /** The trade's name of a colour; as written if it is none of them. */
  static String colour(Texts texts, String written) {
    return texts.plain("colour." + written.toLowerCase(Locale.ROOT)).orElse(written);
  }
}
