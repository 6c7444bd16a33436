package org.coilwright.checklist;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Predicate;
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
          "island",
          "battery-arc",
          "feeding-back",
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
          "overvoltage",
          "interference",
          "welded-contact",
          "ac-coil",
          "rcd",
          "rcd-kind",
          "live-measurement",
          "hot-surfaces",
          "dry-element",
          "cut-out-is-not-thermostat",
          "pressure",
          "scald",
          "nec-practice");

  private final Tables tables;
  private final Texts texts;

  Cautions(Tables tables, Texts texts) {
    this.tables = tables;
    this.texts = texts;
  }

  /** A caution that applies, numbered, and what it stands before: the first of these there is. */
  private record Numbered(Caution caution, List<String> before) {}

  /** The cautions for one circuit, those that have not been placed yet among them. */
  static final class Chosen {
    private final List<Numbered> numbered;
    private final Set<Caution> placed = new HashSet<>();

    private Chosen(List<Numbered> numbered) {
      this.numbered = numbered;
    }

    /** The same, none of them placed. */
    Chosen anew() {
      return new Chosen(numbered);
    }

    List<Caution> all() {
      return numbered.stream().map(Numbered::caution).toList();
    }

    /**
     * Those that belong to a topic and have no place yet. One whose own topic this circuit lacks
     * stands at the head of the stage it names.
     *
     * @param stage the keys of every topic of the topic's stage
     */
    List<Caution> before(Topic topic, Set<String> stage) {
      String name = Texts.key(topic.stage().phase());
      return place(
          n ->
              n.before().stream().anyMatch(topic.keys()::contains)
                  || (n.before().contains(name) && n.before().stream().noneMatch(stage::contains)));
    }

    /** Any left over: their stage does not occur. */
    List<Caution> leftOver() {
      return place(n -> true);
    }

    private List<Caution> place(Predicate<Numbered> here) {
      return numbered.stream().filter(here).map(Numbered::caution).filter(placed::add).toList();
    }
  }

  /** Those whose conditions all hold. */
  Chosen choose(Set<Condition> holding) {
    List<Numbered> chosen = new ArrayList<>();
    for (String name : NAMES) {
      CautionNote note = note(name);
      if (holding.containsAll(note.appliesWhen())) {
        chosen.add(new Numbered(caution(note, chosen.size() + 1), note.before()));
      }
    }
    return new Chosen(List.copyOf(chosen));
  }

  private Caution caution(CautionNote note, int number) {
    Standing standing =
        Standing.valueOf(note.standing().replace('-', '_').toUpperCase(Locale.ROOT));
    String source =
        note.source().equals("common-practice")
            ? texts.of("source.common-practice")
            : tables.source(note.source()).cite();
    String key = "caution." + note.name();
    return new Caution(
        "C" + number,
        texts.plain(key + ".title").orElse(note.title()),
        texts
            .plain(key + ".text")
            .map(text -> List.of(text.split("\\n", -1)))
            .orElse(note.paragraphs()),
        standing == Standing.FROM_MEMORY ? texts.of("caution.from-memory", source) : source);
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
