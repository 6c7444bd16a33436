package org.coilwright.pdf;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** A program of somebody else's, where it is installed. */
record Tool(Path program) {
  private static final long SECONDS = 120;

  /** The first of these that is on the PATH. */
  static Optional<Tool> onPath(String... names) {
    String path = System.getenv().getOrDefault("PATH", "");
    return Arrays.stream(names)
        .flatMap(
            name ->
                Stream.of(path.split(File.pathSeparator, -1))
                    .filter(folder -> !folder.isBlank())
                    .map(folder -> Path.of(folder, name)))
        .filter(Files::isExecutable)
        .findFirst()
        .map(Tool::new);
  }

  /** What it ended with and everything it said, both streams together. */
  record Ran(int code, String said) {}

  /** Runs it in a folder. */
  Ran run(Path folder, String... arguments) throws IOException, InterruptedException {
    Path said = Files.createTempFile(folder, "said", ".txt");
    String[] command =
        Stream.concat(Stream.of(program.toString()), Arrays.stream(arguments))
            .toArray(String[]::new);
    Process process =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile())
            .start();
    process.getOutputStream().close();
    if (!process.waitFor(SECONDS, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new IllegalStateException(program + " does not end");
    }
    String text = new String(Files.readAllBytes(said), StandardCharsets.UTF_8);
    Files.delete(said);
    return new Ran(process.exitValue(), text);
  }
}
