package org.coilwright;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class TopLevelTest {
  /** What a person sees first stays short; everything else has a place below. */
  @Test
  void nothing_but_what_the_project_shows_stands_at_the_top() throws IOException {
    Set<String> wanted =
        Set.of(
            "README.md",
            "DEVELOPERS.md",
            "LICENSE",
            "pom.xml",
            "src",
            "safety-notes",
            "wiring-examples");
    try (Stream<Path> top = Files.list(Path.of(""))) {
      Set<String> found =
          top.map(p -> p.getFileName().toString())
              .filter(n -> !n.startsWith(".") && !n.equals("target"))
              .collect(Collectors.toCollection(TreeSet::new));
      assertEquals(new TreeSet<>(wanted), found);
    }
  }
}
