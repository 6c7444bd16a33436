package org.coilwright.checklist;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.coilwright.checklist.Checklist.WireRow;
import org.coilwright.circuit.Branch;
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

  List<WireRow> rows() {
    List<Branch.Conductor> conductors = anatomy.circuit().branches(Branch.Conductor.class);
    Set<String> taken = new HashSet<>();
    return java.util.stream.IntStream.range(0, conductors.size())
        .mapToObj(i -> row(i + 1, conductors.get(i), taken))
        .toList();
  }

  private WireRow row(int position, Branch.Conductor conductor, Set<String> taken) {
    Wire wire = conductor.wire();
    return new WireRow(
        Names.free(Names.of(Names.wire(wire), "wired"), taken),
        wire.number().map(Written::text).orElse(String.valueOf(position)),
        wire.from().value().toString(),
        wire.to().value().toString(),
        conductor.bridge()
            ? texts.of("wire.bridge")
            : conductor.run().map(Run::name).orElse(texts.of("wire.single")),
        conductor.size().map(Printed::of).map(texts::figure).orElse(texts.of("wire.not-stated")),
        conductor.length().isPresent()
            ? texts.figure(Printed.given(conductor.length().getAsDouble(), Dimension.LENGTH))
            : texts.of("wire.not-stated"),
        wire.colour().map(w -> colour(texts, w.text())).orElse(texts.of("wire.not-stated")),
        texts.of("carries." + Names.word(anatomy.carries(conductor.from()))));
  }

  /** The trade's name of a colour; as written if it is none of them. */
  static String colour(Texts texts, String written) {
    return texts.plain("colour." + written.toLowerCase(Locale.ROOT)).orElse(written);
  }
}
