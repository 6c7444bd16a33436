package org.coilwright.cli;

import java.time.LocalDate;
import java.util.List;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Checklists;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Runner;
import org.coilwright.rules.AllRules;
import org.coilwright.sizing.WarmBox;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/** The whole way from bytes to a report. */
public final class Inspector {
  private final Tables tables;
  private final Runner runner;

  private Inspector(Tables tables) {
    this.tables = tables;
    this.runner = AllRules.runner(tables);
  }

  /** With every rule and the tables that come with the program. */
  public static Inspector standard() {
    return new Inspector(Tables.load());
  }

  /** Looks at a file that the user named; {@code -} is standard input. */
  Inspection inspect(String file, Console console) {
    InputFile input = InputFile.read(file, console.in());
    if (input instanceof InputFile.Bytes bytes) {
      return inspect(bytes);
    } else if (input instanceof InputFile.Missing missing) {
      return new Inspection.Unusable(file, List.of(missing.problem()));
    }
    throw new IllegalStateException("an input file of no kind: " + input);
  }

  /** Looks at bytes that are there. */
  Inspection inspect(InputFile.Bytes input) {
    Reading reading = NetlistReader.read(input.name(), input.bytes(), input.includes());
    if (reading instanceof Reading.Unusable unusable) {
      return new Inspection.Unusable(input.name(), unusable.problems());
    } else if (reading instanceof Reading.Read read) {
      return inspect(input.name(), read.netlist());
    }
    throw new IllegalStateException("a reading of no kind: " + reading);
  }

  private Inspection inspect(String file, Netlist netlist) {
    Study study = WarmBox.study(netlist, tables);
    return new Inspection.Done(file, study, runner.run(study));
  }

  /**
   * The checklist of a circuit that was looked at.
   *
   * @param printed date it carries
   */
  Checklist checklist(Inspection.Done done, LocalDate printed) {
    return new Checklists(tables)
        .of(done.report(), done.study(), "coilwright " + Version.text(), printed);
  }

  /** Facts of every rule, in their order. */
  public List<RuleFacts> facts() {
    return AllRules.of(tables).stream().map(Rule::facts).toList();
  }

  /** The printed citation of a key of the bibliography. */
  String cite(String source) {
    return tables.source(source).cite();
  }
}
