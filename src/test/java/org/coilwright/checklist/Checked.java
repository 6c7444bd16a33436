package org.coilwright.checklist;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.rules.AllRules;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/** Netlists taken the whole way to their checklist. */
public final class Checked {
  private static final Tables TABLES = Tables.load();

  private static final Map<String, Checklist> KEPT = new ConcurrentHashMap<>();
  private static final LocalDate PRINTED = LocalDate.of(2026, 3, 4);

  private Checked() {}

  /** The checklist of a shipped example. */
  public static Checklist example(String name) {
    Path file = Path.of("wiring-examples", name + ".yaml");
    try {
      return of(file.toString(), Files.readAllBytes(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The checklist of a shipped example in a language, worked out once for all tests of a run. */
  public static Checklist kept(String name, String language) {
    return KEPT.computeIfAbsent(
        name + " " + language,
        key -> {
          Path file = Path.of("wiring-examples", name + ".yaml");
          try {
            Study study = study(file.toString(), Files.readAllBytes(file));
            return new Checklists(TABLES, Texts.in(language))
                .of(AllRules.runner(TABLES).run(study), study, "coilwright 0.0.0", PRINTED);
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
  }

  /** What readings of a shipped example mean. */
  static Diagnosis diagnosis(String name) {
    Path file = Path.of("wiring-examples", name + ".yaml");
    try {
      Study study = study(file.toString(), Files.readAllBytes(file));
      return new Checklists(TABLES, Texts.english())
          .diagnosis(AllRules.runner(TABLES).run(study), study);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The checklist of a file. */
  static Checklist file(Path file) throws IOException {
    return of(file.toString(), Files.readAllBytes(file));
  }

  /** The checklist of a netlist typed in a test, if it can be read. */
  static Optional<Checklist> tryText(String netlist) {
    byte[] bytes = netlist.getBytes(StandardCharsets.UTF_8);
    return NetlistReader.read("typed.yaml", bytes) instanceof Reading.Read
        ? Optional.of(of("typed.yaml", bytes))
        : Optional.empty();
  }

  /** The checklist of a netlist typed in a test. */
  public static Checklist text(String netlist) {
    return of("typed.yaml", netlist.getBytes(StandardCharsets.UTF_8));
  }

  private static Checklist of(String file, byte[] bytes) {
    Study study = study(file, bytes);
    return new Checklists(TABLES)
        .of(
            AllRules.runner(TABLES).run(study),
            study,
            "coilwright 0.0.0",
            LocalDate.of(2026, 3, 4));
  }

  private static Study study(String file, byte[] bytes) {
    Reading reading = NetlistReader.read(file, bytes);
    if (reading instanceof Reading.Read read) {
      return Study.of(Circuit.of(read.netlist()), TABLES);
    }
    throw new AssertionError(file + " cannot be read: " + reading);
  }
}
