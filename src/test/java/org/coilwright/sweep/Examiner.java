package org.coilwright.sweep;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.coilwright.cli.Style;
import org.coilwright.cli.TextReport;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.rule.Report;
import org.coilwright.rule.Runner;
import org.coilwright.rules.AllRules;
import org.coilwright.sizing.WarmBox;
import org.coilwright.table.Tables;

/** Checks netlists as the program does, down to the text that a user sees. Not for two threads. */
final class Examiner {
  private final Tables tables = Tables.load();
  private final Runner runner = AllRules.runner(tables);

  /**
   * What the program makes of a netlist.
   *
   * @param netlist as read; empty if the reader refuses it
   * @param report empty if the reader refuses it, or if the program fails
   * @param fault of the program, with its stack; empty if there is none
   */
  record Answer(Optional<Netlist> netlist, Optional<Report> report, String fault) {
    boolean isRefused() {
      return netlist.isEmpty() && fault.isEmpty();
    }
  }

  Answer check(String text) {
    Optional<Netlist> netlist = Optional.empty();
    try {
      Reading reading = NetlistReader.read("mutant.yaml", text.getBytes(StandardCharsets.UTF_8));
      if (reading instanceof Reading.Read read) {
        netlist = Optional.of(read.netlist());
        Report report = runner.run(WarmBox.study(read.netlist(), tables));
        if (TextReport.of(report, Style.PLAIN).isEmpty()) {
          throw new IllegalStateException("an empty report");
        }
        return new Answer(netlist, Optional.of(report), "");
      }
      return new Answer(netlist, Optional.empty(), "");
    } catch (RuntimeException | StackOverflowError e) {
      StringWriter trace = new StringWriter();
      e.printStackTrace(new PrintWriter(trace));
      return new Answer(netlist, Optional.empty(), trace.toString());
    }
  }
}
