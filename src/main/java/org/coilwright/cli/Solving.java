package org.coilwright.cli;

import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.netlist.ReadingProblem;
import org.coilwright.sizing.WarmBox;
import org.coilwright.table.Tables;

/** The way from bytes to a study, for whoever wants no rule asked. */
final class Solving {
  private final Tables tables;

  Solving(Tables tables) {
    this.tables = tables;
  }

  /** A file that the user named, solved or unusable; {@code -} is standard input. */
  Inspection solve(String file, Console console) {
    return solve(InputFile.read(file, console.in()));
  }

  /** A file that was opened, solved or unusable. */
  Inspection solve(InputFile input) {
    if (input instanceof InputFile.Bytes bytes) {
      return solve(bytes);
    } else if (input instanceof InputFile.Missing missing) {
      return new Inspection.Unusable(missing.problem().file(), List.of(missing.problem()));
    }
    throw new IllegalStateException("an input file of no kind: " + input);
  }

  private Inspection solve(InputFile.Bytes input) {
    return solve(input, Integer.MAX_VALUE);
  }

  /**
   * A file of at most so many wires, solved or unusable: a larger one is refused before anything is
   * solved.
   */
  Inspection solve(InputFile.Bytes input, int mostWires) {
    Reading reading = NetlistReader.read(input.name(), input.bytes(), input.includes());
    if (reading instanceof Reading.Unusable unusable) {
      return new Inspection.Unusable(input.name(), unusable.problems());
    } else if (reading instanceof Reading.Read read) {
      int wires = read.netlist().wires().size();
      if (wires > mostWires) {
        return new Inspection.Unusable(
            input.name(),
            List.of(
                new ReadingProblem(
                    input.name(),
                    Optional.empty(),
                    "%s wires are too many for one checklist, which is made for at most %s"
                        .formatted(wires, mostWires),
                    "split the netlist, and make a checklist of each part",
                    Optional.empty())));
      }
      return new Inspection.Solved(input.name(), WarmBox.study(read.netlist(), tables));
    }
    throw new IllegalStateException("a reading of no kind: " + reading);
  }
}
