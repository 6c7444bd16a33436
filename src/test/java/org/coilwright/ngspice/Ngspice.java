package org.coilwright.ngspice;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The circuit simulator, one process for any number of decks. */
final class Ngspice {
  private static final Pattern ANSWER =
      Pattern.compile(
          "^(\\S+)\\s*=\\s*([-+]?[0-9.]+(?:[eE][-+]?[0-9]+)?)(?:\\s+(?:at|from)=.*)?\\s*$");
  private static final Pattern START = Pattern.compile("^deck-starts (\\d+)$");

  private final Path program;

  private Ngspice(Path program) {
    this.program = program;
  }

  /** The simulator if it is on the PATH. */
  static Optional<Ngspice> onPath() {
    String path = System.getenv().getOrDefault("PATH", "");
    return Stream.of(path.split(java.io.File.pathSeparator, -1))
        .filter(folder -> !folder.isBlank())
        .map(folder -> Path.of(folder, "ngspice"))
        .filter(Files::isExecutable)
        .findFirst()
        .map(Ngspice::new);
  }

  /**
   * Runs the decks in one process.
   *
   * @return deck name to its answers; a deck that ngspice could not solve has none
   * @throws IllegalStateException if ngspice does not come to its end
   */
  Map<String, Map<String, Double>> run(List<Deck> decks) {
    try {
      Path folder = Files.createTempDirectory("decks");
      try {
        return run(decks, folder);
      } finally {
        delete(folder);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Map<String, Map<String, Double>> run(List<Deck> decks, Path folder) throws IOException {
    StringBuilder control = new StringBuilder("* all\n.control\nset numdgt=12\n");
    for (int i = 0; i < decks.size(); i++) {
      Path file = folder.resolve(i + ".cir");
      Files.writeString(file, decks.get(i).text());
      control.append("source ").append(file).append("\necho deck-starts ").append(i).append('\n');
      decks.get(i).commands().forEach(c -> control.append(c).append('\n'));
      control.append("destroy all\nremcirc\n");
    }
    control.append("quit 0\n.endc\n.end\n");
    Path all = folder.resolve("all.cir");
    Files.writeString(all, control);
    Path printed = folder.resolve("printed.txt");
    Process process =
        new ProcessBuilder(program.toString(), "-b", all.toString())
            .directory(folder.toFile())
            // Apart: its notes come unbuffered and would tear the lines of the answers.
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .redirectOutput(printed.toFile())
            .start();
    process.getOutputStream().close();
    try {
      int code = process.waitFor();
      if (code != 0) {
        throw new IllegalStateException("ngspice ended with " + code);
      }
    } catch (InterruptedException e) {
      process.destroyForcibly();
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while ngspice ran", e);
    }
    return answers(decks, Files.readAllLines(printed, StandardCharsets.UTF_8));
  }

  private static Map<String, Map<String, Double>> answers(List<Deck> decks, List<String> lines) {
    Map<String, Map<String, Double>> all = new LinkedHashMap<>();
    decks.forEach(d -> all.put(d.name(), new LinkedHashMap<>()));
    Map<String, Double> into = new LinkedHashMap<>();
    for (String line : lines) {
      Matcher start = START.matcher(line);
      if (start.matches()) {
        into = all.getOrDefault(decks.get(Integer.parseInt(start.group(1))).name(), into);
        continue;
      }
      Matcher answer = ANSWER.matcher(line);
      if (answer.matches()) {
        into.put(answer.group(1), Double.valueOf(answer.group(2)));
      }
    }
    return all;
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
