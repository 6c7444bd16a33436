package org.coilwright.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.SortedMap;
import java.util.stream.Stream;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Checklists;
import org.coilwright.checklist.Coverage;
import org.coilwright.checklist.Diagnosis;
import org.coilwright.checklist.Texts;
import org.coilwright.netlist.Includes;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Runner;
import org.coilwright.rules.AllRules;
import org.coilwright.table.Reference;
import org.coilwright.table.Tables;

/** The whole way from bytes to a report. */
public final class Inspector {
  private final Tables tables;
  private final Solving solving;
  private final Runner runner;

  /** With the rules of a runner. */
  Inspector(Tables tables, Runner runner) {
    this.tables = tables;
    this.solving = new Solving(tables);
    this.runner = runner;
  }

  /** With every rule and the tables that come with the program. */
  public static Inspector standard() {
    Tables tables = Tables.load();
    return new Inspector(tables, AllRules.runner(tables));
  }

  /** Looks at a file that the user named; {@code -} is standard input. */
  Inspection inspect(String file, Console console) {
    return judge(solving.solve(file, console));
  }

  /** Looks at a file that was opened, or was not there. */
  Inspection inspect(InputFile input) {
    return judge(solving.solve(input));
  }

  /** Looks at a file of which a checklist shall be made; one that is too large is refused. */
  Inspection inspectForSheet(InputFile input) {
    return judge(solving.solve(input, Room.Work.SHEET));
  }

  /**
   * Looks at bytes that are there. Safe from any number of threads.
   *
   * @param name what messages call them
   * @param includes brings what they include
   */
  public Inspection inspect(String name, byte[] bytes, Includes includes) {
    return inspect(new InputFile.Bytes(name, bytes, includes));
  }

  /** The line of {@code check --as ndjson} for them, a fault of the program included. */
  public String line(String name, byte[] bytes, Includes includes) {
    try {
      return JsonReport.line(inspect(name, bytes, includes));
    } catch (OutOfMemoryError tooLarge) {
      return JsonReport.line(
          new Inspection.Unusable(name, List.of(Room.ofProcess().exhausted(name))));
    } catch (RuntimeException | Error fault) {
      return JsonReport.line(new Inspection.Faulted(name, fault.toString()));
    }
  }

  private Inspection judge(Inspection inspection) {
    return inspection instanceof Inspection.Solved solved
        ? new Inspection.Done(solved.file(), solved.study(), runner.run(solved.study()))
        : inspection;
  }

  /**
   * The checklist of a circuit that was looked at.
   *
   * @param printed date it carries
   */
  Checklist checklist(Inspection.Done done, LocalDate printed, Texts texts) {
    return new Checklists(tables, texts)
        .of(done.report(), done.study(), "coilwright " + Version.text(), printed);
  }

  /** Which wiring mistake shows at which row of that checklist, in English. */
  Coverage coverage(Inspection.Done done) {
    return new Checklists(tables).coverage(done.report(), done.study());
  }

  /** What a reading outside its band on that checklist probably means. */
  Diagnosis diagnosis(Inspection.Done done, Texts texts) {
    return new Checklists(tables, texts).diagnosis(done.report(), done.study());
  }

  /** Facts of every rule, in their order. */
  public List<RuleFacts> facts() {
    return AllRules.of(tables).stream().map(Rule::facts).toList();
  }

  /** A key of the bibliography in full: its short citation, and the documents behind it. */
  List<String> references(String source) {
    return Stream.concat(
            Stream.of(tables.source(source).cite()),
            tables.references(source).stream().map(Reference::full))
        .toList();
  }

  /** Which tables were used so far, with their digests. */
  SortedMap<String, String> tables() {
    return tables.digests();
  }
}
