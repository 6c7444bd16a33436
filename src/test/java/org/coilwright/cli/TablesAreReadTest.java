package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.coilwright.checklist.Checklists;
import org.coilwright.draft.Draft;
import org.coilwright.draft.Judges;
import org.coilwright.netlist.BriefReader;
import org.coilwright.netlist.Method;
import org.coilwright.netlist.Mounting;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Rating;
import org.coilwright.rule.Runner;
import org.coilwright.rules.AllRules;
import org.coilwright.sizing.Chooser;
import org.coilwright.sizing.Core;
import org.coilwright.sizing.Duty;
import org.coilwright.sizing.Question;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;

/**
 * No table lies about unused: checks, checklists, choices and drafts open every one. What counts is
 * what was really opened, not who names it.
 */
class TablesAreReadTest {
  private static final Path FILES = Path.of("src/main/resources/tables");
  private static final byte[] PILOT_DUTY =
      "brief: 1\nload: {power: 99 kW, voltage: 230 V}\ncontroller: {contact: B300}\n"
          .getBytes(StandardCharsets.UTF_8);

  private final Tables tables = Tables.load();

  @Test
  void checks_checklists_choices_and_drafts_open_every_table() throws IOException {
    Solving solving = new Solving(tables);
    Runner runner = AllRules.runner(tables);
    Checklists checklists = new Checklists(tables);
    for (Duty duty : Duty.values()) {
      Chooser.answer(question(duty), tables);
    }
    Draft.of(
        ((BriefReader.Good) BriefReader.read("brief", PILOT_DUTY)).brief(),
        tables,
        Judges.of(AllRules.of(tables), AllRules::runner));
    // The full references of a rule's sources.
    AllRules.of(tables).forEach(r -> r.facts().sources().forEach(tables::references));
    for (Path file : circuits()) {
      if (unread().isEmpty()) {
        return;
      }
      InputFile input = InputFile.read(file.toString(), new ByteArrayInputStream(new byte[0]));
      if (input instanceof InputFile.Bytes bytes
          && solving.solve(bytes) instanceof Inspection.Solved solved) {
        checklists.of(
            runner.run(solved.study()), solved.study(), "coilwright", LocalDate.of(2026, 1, 1));
      }
    }
    assertEquals(Set.of(), unread());
  }

  private Set<String> unread() throws IOException {
    Set<String> unread = new TreeSet<>(names(FILES, ""));
    unread.addAll(names(FILES.resolve("figures"), "figures/"));
    unread.removeAll(tables.digests().keySet());
    return unread;
  }

  private static List<String> names(Path folder, String before) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(f -> f.getFileName().toString())
          .filter(n -> n.endsWith(".yaml"))
          .map(n -> before + n.substring(0, n.length() - ".yaml".length()))
          .toList();
    }
  }

  /** The examples, then the circuits of the rules. */
  private static List<Path> circuits() throws IOException {
    List<Path> all = new ArrayList<>();
    for (String root : List.of("wiring-examples", "src/test/resources/rules")) {
      try (Stream<Path> files = Files.walk(Path.of(root))) {
        files.filter(f -> f.toString().endsWith(".yaml")).sorted().forEach(all::add);
      }
    }
    return all;
  }

  private static Rating rating() {
    return new Rating(
        Quantity.of(0.5, Dimension.CURRENT),
        Optional.of(Quantity.of(230, Dimension.VOLTAGE)),
        false);
  }

  /** What {@code choose} asks for a heater on three lines, with the wire to it. */
  private static Question question(Duty duty) {
    return new Question(
        "a heater",
        new Question.Load(13, 15, "at 440 V", 400, 3, 3, "metal-sheathed", true),
        new Question.Place(40, OptionalDouble.empty(), Mounting.SPACED, OptionalDouble.empty()),
        new Question.Laid(
            Method.B2,
            30,
            OptionalDouble.of(12),
            new Core(true, Optional.of("xlpe-90"), OptionalDouble.of(90))),
        new Question.Supply(
            Site.Practice.IEC, false, OptionalDouble.empty(), OptionalDouble.of(0.4)),
        new Question.Service(OptionalDouble.of(20), 10, duty, Optional.empty()),
        new Question.Drive(
            List.of(new Question.Output("the output", Optional.of(rating()), "AC-15")),
            Optional.empty()),
        List.of());
  }
}
