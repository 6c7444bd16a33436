package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.beam.sdk.Pipeline;
import org.apache.beam.sdk.io.TextIO;
import org.apache.beam.sdk.transforms.Create;
import org.apache.beam.sdk.transforms.MapElements;
import org.apache.beam.sdk.values.TypeDescriptors;
import org.coilwright.Coilwright;
import org.coilwright.netlist.FolderIncludes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * An engine that knows nothing of netlists maps a thousand of them: Apache Beam in its local mode,
 * which hands the work to as many threads as there are processors. {@code mvn -Pengine clean test}.
 */
class EngineTest {
  private static final int NETLISTS = 1000;

  @TempDir Path folder;

  /** The netlists of the tests, and as many of them once more as a thousand takes. */
  private List<String> names() throws IOException {
    List<String> names = new ArrayList<>();
    try (Stream<Path> files = Files.walk(Path.of("src/test/resources/rules"))) {
      files.map(Path::toString).filter(f -> f.endsWith(".yaml")).sorted().forEach(names::add);
    }
    for (int i = 0; names.size() < NETLISTS; i++) {
      Path again = folder.resolve("again-" + i + ".yaml");
      Files.writeString(again, "# " + i + "\n" + Files.readString(Path.of(names.get(i))));
      names.add(again.toString());
    }
    return names.subList(0, NETLISTS);
  }

  private static String line(String name) {
    Path file = Path.of(name);
    try {
      return Coilwright.line(name, Files.readAllBytes(file), new FolderIncludes(name, file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private List<String> mapped(List<String> names) throws IOException {
    Pipeline pipeline = Pipeline.create();
    pipeline
        .apply(Create.of(names))
        .apply(MapElements.into(TypeDescriptors.strings()).via(EngineTest::line))
        .apply(TextIO.write().to(folder.resolve("lines").toString()));
    pipeline.run().waitUntilFinish();
    List<String> lines = new ArrayList<>();
    try (Stream<Path> written = Files.list(folder)) {
      for (Path share :
          written.filter(f -> f.getFileName().toString().startsWith("lines")).toList()) {
        lines.addAll(Files.readAllLines(share));
      }
    }
    return lines;
  }

  @Test
  void an_engine_gets_the_lines_that_the_command_prints() throws IOException {
    List<String> names = names();
    byte[] listed = String.join("\n", names).getBytes(StandardCharsets.UTF_8);
    Cli.Ran ran = new Cli().stdin(listed).with("check", "--as", "ndjson", "-");
    assertEquals(NETLISTS, ran.out().lines().count());
    assertEquals(ran.out().lines().sorted().toList(), mapped(names).stream().sorted().toList());
  }
}
