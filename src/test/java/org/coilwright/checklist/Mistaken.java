package org.coilwright.checklist;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/** A circuit with its dead tests, for asking what its mistakes would read. */
record Mistaken(Netlist netlist, DeadTests tests) {
  private static final Tables TABLES = Tables.load();

  /** A shipped example, or one of the small circuits. */
  static Mistaken of(String name) {
    return of(name, SmallCircuits.ALL.getOrDefault(name, ""));
  }

  private static Mistaken of(String name, String typed) {
    Path file = Path.of("wiring-examples", name + ".yaml");
    try {
      byte[] bytes =
          typed.isEmpty() ? Files.readAllBytes(file) : typed.getBytes(StandardCharsets.UTF_8);
      if (NetlistReader.read(name, bytes) instanceof Reading.Read read) {
        Texts texts = Texts.english();
        Anatomy anatomy = new Anatomy(Study.of(Circuit.of(read.netlist()), TABLES));
        return new Mistaken(
            read.netlist(), new DeadTests(anatomy, new Bands(TABLES, texts), texts));
      }
      throw new AssertionError(NetlistReader.read(name, bytes).toString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Every dead row whose reading can be computed. */
  List<Row> rows() {
    return new DeadTopics(tests)
        .topics().stream()
            .flatMap(topic -> topic.rows().stream())
            .filter(row -> row.probing().isPresent())
            .toList();
  }
}
