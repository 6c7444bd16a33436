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
  private final Room room = Room.ofProcess();

  Solving(Tables tables) {
    this.tables = tables;
  }

  /** A file that the user named, solved or unusable; {@code -} is standard input. */
  Inspection solve(String file, Console console) {
    return solve(InputFile.read(file, console.in()));
  }

  /** A file that was opened, solved or unusable. */
  Inspection solve(InputFile input) {
    return solve(input, Room.Work.JUDGING);
  }

  /** A file that was opened, solved, or refused before the work if that does not fit. */
  Inspection solve(InputFile input, Room.Work work) {
    if (input instanceof InputFile.Bytes bytes) {
      return solve(bytes, work);
    } else if (input instanceof InputFile.Missing missing) {
      return new Inspection.Unusable(missing.problem().file(), List.of(missing.problem()));
    }
    throw new IllegalStateException("an input file of no kind: " + input);
  }

  private Inspection solve(InputFile.Bytes input, Room.Work work) {
    Optional<ReadingProblem> large = room.refuseToRead(input.name(), input.bytes().length);
    if (large.isPresent()) {
      return new Inspection.Unusable(input.name(), List.of(large.get()));
    }
    Reading reading = NetlistReader.read(input.name(), input.bytes(), input.includes());
    if (reading instanceof Reading.Unusable unusable) {
      return new Inspection.Unusable(input.name(), unusable.problems());
    } else if (reading instanceof Reading.Read read) {
      Optional<ReadingProblem> wide =
          room.refuse(input.name(), work, read.netlist().wires().size());
      return wide.isPresent()
          ? new Inspection.Unusable(input.name(), List.of(wide.get()))
          : new Inspection.Solved(input.name(), WarmBox.study(read.netlist(), tables));
    }
    throw new IllegalStateException("a reading of no kind: " + reading);
  }
}
