package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.coilwright.netlist.LargestFile;
import org.coilwright.netlist.ReadingProblem;
import org.coilwright.pdf.LargestSheet;
import org.coilwright.solve.Board;
import org.junit.jupiter.api.Test;

class RoomTest {
  private static final long MEGABYTE = 1L << 20;
  private static final Room LAUNCHED = new Room(256 * MEGABYTE);

  private static String what(Optional<ReadingProblem> refused) {
    return refused.map(ReadingProblem::what).orElse("");
  }

  @Test
  void what_fits_is_worked_on() {
    assertEquals(Optional.empty(), LAUNCHED.refuseToRead("b.yaml", LAUNCHED.mostBytes()));
    for (Room.Work work : Room.Work.values()) {
      int most = (int) LAUNCHED.mostWires(work);
      assertEquals(Optional.empty(), LAUNCHED.refuse("b.yaml", work, most));
      assertTrue(LAUNCHED.refuse("b.yaml", work, most + 1).isPresent());
    }
  }

  @Test
  void what_does_not_is_refused_with_its_size_and_the_limit() {
    assertEquals(
        "9.8 MiB are too much for this process: reading them takes some 609 MB of memory and it"
            + " has 256 MB, enough for 3.8 MiB",
        what(LAUNCHED.refuseToRead("b.yaml", 10_222_222)));
    assertEquals(
        "114000 wires are too many for this process: judging takes some 3587 MB of memory and it"
            + " has 256 MB, enough for 7424 wires",
        what(LAUNCHED.refuse("b.yaml", Room.Work.JUDGING, 114_000)));
  }

  @Test
  void ten_thousand_circuits_are_let_through_where_there_is_memory() {
    Board board = new Board(10_000, 5, 1, false);
    int bytes = board.bytes().length;
    assertTrue(bytes <= LargestFile.BYTES);
    Room large = new Room(6 * 1024 * MEGABYTE);
    assertEquals(Optional.empty(), large.refuseToRead("b.yaml", bytes));
    assertEquals(114_000, board.netlist().wires().size());
    assertEquals(Optional.empty(), large.refuse("b.yaml", Room.Work.JUDGING, 114_000));
  }

  @Test
  void whatever_may_be_read_may_come_back_in_a_sheet() {
    assertTrue(LargestFile.BYTES < LargestSheet.BYTES);
  }

  @Test
  void a_process_with_next_to_no_memory_refuses_whatever_comes() {
    assertEquals(0, new Room(MEGABYTE).mostBytes());
    assertTrue(new Room(MEGABYTE).refuseToRead("b.yaml", 1).isPresent());
  }

  @Test
  void the_readme_gives_the_limit_of_a_file() throws IOException {
    String readme = Files.readString(Path.of("README.md"));
    assertTrue(readme.contains("A netlist may have up to " + LargestFile.words()));
    assertTrue(readme.contains(LAUNCHED.mostWires(Room.Work.JUDGING) + " wires"));
    assertTrue(readme.contains(LAUNCHED.mostWires(Room.Work.SHEET) + " wires"));
  }
}
