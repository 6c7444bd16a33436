package org.coilwright.checklist;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.coilwright.checklist.Checklist.Caution;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** The cautions there are, in the order they are printed, and the choice for one circuit. */
final class Cautions {
  /** File names under {@code safety-notes/}, without ending. */
  static final List<String> NAMES =
      List.of(
          "licensed-person",
          "proving-dead",
          "several-supplies",
          "battery-plant",
          "stored-charge",
          "starts-by-itself",
          "contactor-is-no-isolator",
          "elv-and-mains",
          "relay-between",
          "protective-conductor",
          "neutral",
          "three-lines",
          "split-phase",
          "insulation-tester",
          "loose-clamp",
          "welded-contact",
          "ac-coil",
          "rcd",
          "dry-element",
          "cut-out-is-not-thermostat",
          "pressure",
          "scald",
          "nec-practice");

  private final Tables tables;

  Cautions(Tables tables) {
    this.tables = tables;
  }

  /** A caution that applies, numbered, and the work it stands before. */
  private record Numbered(Caution caution, String before) {}

  /** The cautions for one circuit. */
  record Chosen(List<Numbered> numbered) {
    List<Caution> all() {
      return numbered.stream().map(Numbered::caution).toList();
    }

    /** Those to be read before a stage begins; wiring is part of the dead stage. */
    List<Caution> before(Section.Stage stage) {
      String word = stage.name().toLowerCase(Locale.ROOT);
      return numbered.stream()
          .filter(
              n ->
                  n.before().equals(word)
                      || (stage == Section.Stage.DEAD
                          && (n.before().equals("all") || n.before().equals("wiring"))))
          .map(Numbered::caution)
          .toList();
    }
  }

  /** Those whose conditions all hold. */
  Chosen choose(Set<Condition> holding) {
    List<Numbered> chosen = new ArrayList<>();
    for (String name : NAMES) {
      CautionNote note = note(name);
      if (holding.containsAll(note.appliesWhen())) {
        Standing standing =
            Standing.valueOf(note.standing().replace('-', '_').toUpperCase(Locale.ROOT));
        String source = tables.source(note.source()).cite();
        String cited =
            standing == Standing.FROM_MEMORY
                ? source + " (from memory: " + Grounds.CONFIRM + ")"
                : source;
        chosen.add(
            new Numbered(
                new Caution("C" + (chosen.size() + 1), note.title(), note.paragraphs(), cited),
                note.before()));
      }
    }
    return new Chosen(List.copyOf(chosen));
  }

  static CautionNote note(String name) {
    String resource = "/safety-notes/" + name + ".md";
    try (InputStream in = Cautions.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalArgumentException("no caution " + resource);
      }
      return CautionNote.parse(name, new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
