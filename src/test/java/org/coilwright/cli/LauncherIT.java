// Over 250 lines: one way of starting after the other.
package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The launcher that the build made, as a user starts it. */
class LauncherIT {
  private static final Path BUILT = Path.of("target").toAbsolutePath();
  private static final Path EXAMPLES = Path.of("wiring-examples").toAbsolutePath();
  private static final String CLEAR = EXAMPLES.resolve("wash-room-tub.yaml").toString();

  @TempDir Path folder;
  private Path elsewhere = Path.of("");

  /** No archive is made for a launcher that stands in a folder which is soon gone. */
  private final Map<String, String> environment = new HashMap<>(Map.of("COILWRIGHT_CACHE", ""));

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
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .directory(elsewhere.toFile())
            .redirectOutput(out.toFile())
            .redirectError(err.toFile());
    builder.environment().putAll(environment);
    int code = builder.start().waitFor();
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
  void the_class_archive_that_the_build_made_fits_and_is_used() throws Exception {
    Path log = folder.resolve("classes.txt");
    Ended ended =
        start(
            Path.of(ProcessHandle.current().info().command().orElseThrow()),
            "-XX:SharedArchiveFile=" + BUILT.resolve("coilwright.jsa"),
            "-Xshare:auto",
            "-Xlog:disable",
            "-Xlog:class+load:file=" + log,
            "-XX:+UseG1GC",
            "-Xmx256m",
            "-cp",
            BUILT.resolve("coilwright.jar").toString(),
            "org.coilwright.cli.Launch",
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
    String version = start(BUILT.resolve("coilwright"), "--version").out;
    assertTrue(version.contains(BUILT.resolve("coilwright.jsa") + " is in use."), version);
  }

  /** What the build made, without its archive, in a folder of another name. */
  private Path copied(String name) throws IOException {
    Path home = Files.createDirectories(folder.resolve(name));
    for (String file : List.of("coilwright", "coilwright.jar", "classes.lst")) {
      Files.copy(BUILT.resolve(file), home.resolve(file));
    }
    Path lib = Files.createDirectory(home.resolve("lib"));
    try (Stream<Path> jars = Files.list(BUILT.resolve("lib"))) {
      for (Path jar : jars.toList()) {
        Files.copy(jar, lib.resolve(jar.getFileName()));
      }
    }
    assertTrue(home.resolve("coilwright").toFile().setExecutable(true));
    return home;
  }

  private Ended shell(String line) throws Exception {
    return start(Path.of("/bin/sh"), "-c", line);
  }

  private static void oneLine(int code, String words, Ended ended) {
    assertEquals(code, ended.code, ended.err);
    assertEquals(1, ended.err.lines().count(), ended.err);
    assertTrue(ended.err.startsWith("coilwright: ") && ended.err.contains(words), ended.err);
  }

  @Test
  void it_works_from_a_path_with_blanks_and_through_links() throws Exception {
    Path home = copied("my tools/coil wright");
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
    oneLine(3, "is missing", ended);
  }

  @Test
  void a_library_that_is_missing_is_said_so_in_one_line() throws Exception {
    Path home = copied("part");
    Path launcher = home.resolve("coilwright");
    for (String jar : List.of("pdfbox-[0-9]", "snakeyaml-", "picocli-")) {
      assertEquals(0, shell("rm '" + home + "'/lib/" + jar + "*").code);
      Ended ended = start(launcher, "checklist", CLEAR, "-o", "sheet.pdf");
      oneLine(3, "its folder lib is not complete", ended);
    }
    assertEquals(0, shell("rm -r '" + home + "/lib'").code);
    oneLine(3, "lib is missing", start(launcher, "check", CLEAR));
  }

  @Test
  void a_program_that_is_cut_off_does_not_end_as_if_it_had_found_something() throws Exception {
    Path home = copied("cut");
    byte[] jar = Files.readAllBytes(home.resolve("coilwright.jar"));
    Files.write(home.resolve("coilwright.jar"), Arrays.copyOf(jar, jar.length / 2));
    Ended ended = start(home.resolve("coilwright"), "check", CLEAR);
    assertEquals(3, ended.code, ended.err);
    assertTrue(ended.err.endsWith("could not start it. Nothing was judged.\n"), ended.err);
  }

  @Test
  void a_java_that_is_too_old_or_broken_is_said_so_and_another_one_taken() throws Exception {
    Path home = folder.resolve("old");
    Path old = Files.createDirectories(home.resolve("bin"));
    Files.writeString(old.resolve("java"), "#!/bin/sh\nexit 1\n");
    assertTrue(old.resolve("java").toFile().setExecutable(true));
    Path launcher = BUILT.resolve("coilwright");
    String path = System.getenv("PATH");
    environment.put("JAVA_HOME", home.toString());
    for (String said : List.of("does not run", "is Java 11.0.2", "is Java 1.8.0_392")) {
      if (said.startsWith("is Java ")) {
        String version = said.substring("is Java ".length());
        Files.writeString(
            old.resolveSibling("release"), "JAVA_VERSION=\"" + version + "\"\nOS_NAME=\"x\"\n");
      }
      environment.put("PATH", old.toString());
      oneLine(2, old.resolve("java") + " " + said, start(launcher, "check", CLEAR));
      environment.put("PATH", old + ":" + path);
      assertEquals(0, start(launcher, "check", CLEAR).code);
    }
  }

  @Test
  void what_the_environment_says_to_all_java_programs_is_left_out() throws Exception {
    for (String name : List.of("JAVA_TOOL_OPTIONS", "JDK_JAVA_OPTIONS", "_JAVA_OPTIONS")) {
      environment.put(name, "-XX:NoSuchOption");
    }
    Ended ended = start(BUILT.resolve("coilwright"), "check", CLEAR);
    assertEquals(0, ended.code, ended.err);
    assertEquals("", ended.err);
  }

  @Test
  void a_stream_that_is_closed_or_full_is_noticed() throws Exception {
    String launcher = "'" + BUILT.resolve("coilwright") + "' ";
    oneLine(2, "could not be written", shell(launcher + "check " + CLEAR + " >&-"));
    assertEquals(2, shell(launcher + "check - <&-").code);
    assertEquals(0, shell(launcher + "checklist " + CLEAR + " -o s.pdf <&- >&- 2>&-").code);
    assertTrue(Files.size(elsewhere.resolve("s.pdf")) > 10_000);
    if (Files.exists(Path.of("/dev/full"))) {
      oneLine(2, "could not be written", shell(launcher + "schema >/dev/full"));
    }
  }

  /** The shell would end with 1 at a redirection that fails, which reads as findings. */
  @Test
  void without_a_null_device_it_does_not_start() throws Exception {
    String alone = "unshare -r -m sh -c ";
    if (shell(alone + "'mount -t tmpfs none /dev'").code == 0) {
      String start = "exec " + BUILT.resolve("coilwright") + " check " + CLEAR;
      Ended ended = shell(alone + "'mount -t tmpfs none /dev && " + start + "'");
      oneLine(3, "/dev/null is missing", ended);
    }
  }

  @Test
  void in_a_new_place_an_archive_is_made_once_and_nothing_is_said() throws Exception {
    Path home = copied("a new place");
    Path cache = folder.resolve("a cache");
    environment.put("COILWRIGHT_CACHE", cache.toString());
    Path launcher = Files.createSymbolicLink(folder.resolve("link"), home.resolve("coilwright"));
    Ended first = start(launcher, "--version");
    assertEquals(0, first.code);
    assertTrue(first.out.contains("Class archive: none was named."), first.out);
    List<Path> made = List.of();
    for (int tenths = 0; tenths < 3000 && made.isEmpty(); tenths++) {
      Thread.sleep(100);
      try (Stream<Path> files = Files.walk(cache)) {
        made = files.filter(f -> f.toString().endsWith(".jsa")).toList();
      }
    }
    assertEquals(1, made.size());
    Ended second = start(launcher, "--version");
    assertTrue(second.out.contains("Class archive: " + made.get(0) + " is in use."), second.out);
    assertEquals("", first.err + second.err);
  }

  @Test
  void what_ends_the_launcher_ends_java_as_well() throws Exception {
    ProcessBuilder builder =
        new ProcessBuilder(BUILT.resolve("coilwright").toString(), "check", "-");
    builder.environment().putAll(environment);
    Process launcher = builder.start();
    List<ProcessHandle> java = List.of();
    for (int tenths = 0; tenths < 600 && java.isEmpty(); tenths++) {
      Thread.sleep(100);
      java =
          launcher
              .descendants()
              .filter(p -> p.info().command().orElse("").endsWith("java"))
              .toList();
    }
    assertEquals(1, java.size());
    Thread.sleep(1000);
    launcher.toHandle().destroy();
    assertEquals(143, launcher.waitFor());
    assertFalse(java.get(0).isAlive());
  }

  @Test
  void the_distribution_holds_all_and_works_where_it_is_unpacked() throws Exception {
    String version =
        start(BUILT.resolve("coilwright"), "--version").out.lines().findFirst().orElseThrow();
    String name = version.replace(' ', '-');
    Path place = Files.createDirectory(folder.resolve("un packed"));
    Ended unpacked = shell("tar -xzf '" + BUILT.resolve(name + ".tar.gz") + "' -C '" + place + "'");
    assertEquals(0, unpacked.code, unpacked.err);
    Path home = place.resolve(name);
    for (String file :
        List.of(
            "coilwright.cmd",
            "classes.lst",
            "LICENSE",
            "README.md",
            "THIRD-PARTY.txt",
            "coilwright.cdx.json",
            "completions/coilwright.bash",
            "completions/coilwright.fish",
            "completions/coilwright.ps1",
            "man/man1/coilwright.1",
            "wiring-examples/wash-room-tub.yaml")) {
      assertTrue(Files.size(home.resolve(file)) > 100, file);
    }
    String licences = Files.readString(home.resolve("THIRD-PARTY.txt"));
    String list = Files.readString(home.resolve("coilwright.cdx.json"));
    try (Stream<Path> jars = Files.list(home.resolve("lib"))) {
      for (Path jar : jars.toList()) {
        String library = jar.getFileName().toString().replaceFirst("-[0-9][0-9.]*\\.jar$", "");
        assertTrue(licences.contains("\n  " + library + " "), library);
        assertTrue(list.contains("\"" + library + "\""), library);
      }
    }
    Ended ended = start(home.resolve("coilwright"), "check", CLEAR);
    assertEquals(0, ended.code, ended.err);
    assertEquals("", ended.err);
    try (ZipFile zip = new ZipFile(BUILT.resolve(name + ".zip").toFile())) {
      assertTrue(zip.getEntry(name + "/coilwright.cmd") != null);
    }
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
