package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** A shorter sheet loses nothing: each row of the first one has a row that does its work. */
class RowsKeptTest {
  private static final Path LIST =
      Path.of("src/test/resources/checklists/rows-of-the-first-sheet.md");
  private static final int ROWS_OF_THE_FIRST_SHEET = 104;

  @Test
  void every_row_of_the_first_sheet_has_one_that_does_its_work() throws IOException {
    Set<String> today =
        Checked.example("guest-house-cylinder").rows().stream()
            .map(TestRow::name)
            .collect(Collectors.toSet());
    List<String[]> listed =
        Files.readAllLines(LIST).stream()
            .filter(line -> line.startsWith("| ") && !line.startsWith("| row of"))
            .map(line -> line.split(" *\\| *", -1))
            .toList();
    assertEquals(ROWS_OF_THE_FIRST_SHEET, listed.size());
    for (String[] cells : listed) {
      assertTrue(today.contains(cells[2]), cells[1]);
      assertTrue(cells[1].equals(cells[2]) || !cells[4].isBlank(), cells[1] + " says no reason");
      for (String more : cells[3].split(", *", -1)) {
        assertTrue(more.isEmpty() || today.contains(more), cells[1] + ": " + more);
      }
    }
  }
}
