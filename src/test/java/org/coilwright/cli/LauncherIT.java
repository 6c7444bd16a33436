package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The launcher that the build made, as a user starts it. */
class LauncherIT {
  private static final Path BUILT = Path.of("target").toAbsolutePath();
  private static final Path EXAMPLES = Path.of("wiring-examples").toAbsolutePath();
  private static final String CLEAR = EXAMPLES.resolve("wash-room-tub.yaml").toString();

  /** The launcher turns logs off; this puts one back behind that. */
  private static final String LOGGING_JAVA =
      """
      #!/bin/sh
      first=yes
      for word do
        [ -n "$first" ] && set --
        first=
        set -- "$@" "$word"
        [ "$word" = -Xlog:disable ] && set -- "$@" "-Xlog:class+load:file=%s"
      done
      exec "%s" "$@"
      """;

  @TempDir Path folder;
  private Path elsewhere = Path.of("");

  private record Ended(int code, String out, String err) {}

  @BeforeEach
  void an_empty_folder_to_stand_in() throws IOException {
    elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
  }

  private Ended start(Path launcher, String... args) throws Exception {
    List<String> command = new ArrayList<>(List.of(launcher.toString()));
    command.addAll(List.of(args));
    Path out = folder.resolve("out.txt");
    Path err = folder.resolve("err.txt");
    Process process =
        new ProcessBuilder(command)
            .directory(elsewhere.toFile())
            .redirectOutput(out.toFile())
            .redirectError(err.toFile())
            .start();
    int code = process.waitFor();
    return new Ended(code, Files.readString(out), Files.readString(err));
  }

  @Test
  void it_works_from_any_folder_and_says_nothing_but_the_result() throws Exception {
    Ended ended = start(BUILT.resolve("coilwright"), "check", "--as", "json", CLEAR);
    assertEquals(0, ended.code, ended.err);
    assertEquals("", ended.err);
    assertEquals(1, new ObjectMapper().readTree(ended.out).get("coilwright").asInt());
  }

  @Test
  void it_uses_the_class_archive_that_the_build_made() throws Exception {
    Path log = folder.resolve("classes.txt");
    Path java = Files.createDirectories(folder.resolve("java/bin")).resolve("java");
    Files.writeString(
        java, LOGGING_JAVA.formatted(log, ProcessHandle.current().info().command().orElseThrow()));
    assertTrue(java.toFile().setExecutable(true));
    Ended ended =
        start(
            Path.of("/usr/bin/env"),
            "JAVA_HOME=" + folder.resolve("java"),
            BUILT.resolve("coilwright").toString(),
            "check",
            CLEAR);
    assertEquals(0, ended.code, ended.err);
    List<String> loaded = Files.readAllLines(log);
    long own = loaded.stream().filter(l -> l.contains("org.coilwright.")).count();
    long archived =
        loaded.stream()
            .filter(l -> l.contains("org.coilwright.") && l.contains("shared objects file"))
            .count();
    assertTrue(own > 100, "the log shows " + own + " classes, too few to tell");
    assertTrue(archived > own * 9 / 10, archived + " of " + own + " classes are archived");
  }

  @Test
  void it_works_from_a_path_with_blanks_and_through_links() throws Exception {
    Path home = Files.createDirectories(folder.resolve("my tools/coil wright"));
    for (String name : List.of("coilwright", "coilwright.jar")) {
      Files.copy(BUILT.resolve(name), home.resolve(name));
    }
    Path lib = Files.createDirectory(home.resolve("lib"));
    try (Stream<Path> jars = Files.list(BUILT.resolve("lib"))) {
      for (Path jar : jars.toList()) {
        Files.copy(jar, lib.resolve(jar.getFileName()));
      }
    }
    assertTrue(home.resolve("coilwright").toFile().setExecutable(true));
    Path link = Files.createSymbolicLink(folder.resolve("a link"), home.resolve("coilwright"));
    Path second = Files.createSymbolicLink(elsewhere.resolve("again"), Path.of("..", "a link"));
    for (Path launcher : List.of(home.resolve("coilwright"), link, second)) {
      Ended ended = start(launcher, "check", CLEAR);
      assertEquals(0, ended.code, launcher + "\n" + ended.err);
      assertEquals("", ended.err, "a class archive that does not fit is no news to the user");
      assertTrue(ended.out.contains("checks satisfied"), ended.out);
    }
  }

  @Test
  void a_jar_that_is_missing_is_said_so() throws Exception {
    Path alone = Files.copy(BUILT.resolve("coilwright"), folder.resolve("coilwright"));
    assertTrue(alone.toFile().setExecutable(true));
    Ended ended = start(alone, "check", CLEAR);
    assertEquals(3, ended.code);
    assertTrue(ended.err.contains("coilwright.jar is missing"), ended.err);
  }

  @Test
  void it_passes_on_arguments_with_blanks_and_signs() throws Exception {
    Path file = elsewhere.resolve("Ω heater '1' $x.yaml");
    assertEquals(0, start(BUILT.resolve("coilwright"), "new", file.toString()).code);
    Ended ended = start(BUILT.resolve("coilwright"), "check", file.getFileName().toString());
    assertEquals(0, ended.code, ended.err);
  }

  @Test
  void it_writes_a_checklist() throws Exception {
    Ended ended = start(BUILT.resolve("coilwright"), "checklist", CLEAR, "-o", "sheet.pdf");
    assertEquals(0, ended.code, ended.err);
    assertTrue(Files.size(elsewhere.resolve("sheet.pdf")) > 10_000);
  }
}
