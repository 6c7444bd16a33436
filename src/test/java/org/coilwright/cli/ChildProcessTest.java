package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.pdf.ThrowawayKeystore;
import org.coilwright.solve.Board;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What only a process of its own can show: which classes it loads, how much memory it needs. */
class ChildProcessTest {
  @TempDir Path folder;

  private record Ended(int code, String out, String err) {}

  private static List<String> command(List<String> options, String... args) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(options);
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.add("org.coilwright.cli.Main");
    command.addAll(List.of(args));
    return command;
  }

  private Ended java(List<String> options, String... args) throws Exception {
    List<String> command = command(options, args);
    Path out = folder.resolve("out.txt");
    Path err = folder.resolve("err.txt");
    Process process =
        new ProcessBuilder(command)
            .redirectOutput(out.toFile())
            .redirectError(err.toFile())
            .start();
    int code = process.waitFor();
    return new Ended(code, text(out), text(err));
  }

  private static String text(Path file) throws IOException {
    return Files.readString(file, StandardCharsets.UTF_8);
  }

  /** The launcher leaves Java little memory beside its heap. */
  @Test
  void a_large_file_of_somebody_else_is_looked_into_and_stays() throws Exception {
    byte[] large = new byte[9 << 20];
    Arrays.fill(large, (byte) ' ');
    for (String command : List.of("checklist sheet.pdf %PDF-1.7", "draw drawing.svg <svg>")) {
      String[] words = command.split(" ", -1);
      byte[] head = words[2].getBytes(StandardCharsets.US_ASCII);
      System.arraycopy(head, 0, large, 0, head.length);
      Path file = Files.write(folder.resolve(words[1]), large);
      String tub = "wiring-examples/wash-room-tub.yaml";
      Ended ended =
          java(List.of("-XX:MaxDirectMemorySize=8m"), words[0], tub, "-o", file.toString());
      assertEquals(2, ended.code, ended.err);
      assertTrue(ended.err.contains(words[1]), ended.err);
      assertFalse(ended.err.contains("memory"), ended.err);
    }
  }

  @Test
  void check_loads_no_class_for_pdf_drawing_or_fonts() throws Exception {
    Path log = folder.resolve("classes.txt");
    Ended ended =
        java(
            List.of("-Xlog:class+load:file=" + log), "check", "wiring-examples/wash-room-tub.yaml");
    assertEquals(0, ended.code, ended.err);
    List<String> loaded = Files.readAllLines(log);
    assertTrue(loaded.stream().anyMatch(l -> l.contains("org.coilwright.cli.TextReport ")));
    List<String> unwanted =
        loaded.stream()
            .filter(
                l ->
                    l.contains(" org.apache.pdfbox")
                        || l.contains(" org.apache.fontbox")
                        || l.contains(" java.awt.")
                        || l.contains(" sun.awt.")
                        || l.contains(" sun.font.")
                        || l.contains(" javax.imageio")
                        || l.contains(" org.coilwright.pdf.")
                        || l.contains(" org.coilwright.drawing."))
            .toList();
    assertEquals(List.of(), unwanted);
  }

  /** Libraries would write their warnings on standard error; tests silence them otherwise. */
  @Test
  void signing_prints_no_line_but_its_own() throws Exception {
    Path sheet = Sheets.of("wiring-examples/wash-room-tub.yaml", folder.resolve("sheet.pdf"));
    Path keystore =
        Files.write(folder.resolve("me.p12"), ThrowawayKeystore.bytes("EC", "pa55 wort"));
    Path record = folder.resolve("record.pdf");
    List<String> command =
        command(
            List.of(),
            "readback",
            sheet.toString(),
            "-o",
            record.toString(),
            "--sign",
            keystore.toString());
    leaveOutLogs(command);
    Path err = folder.resolve("err.txt");
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .redirectOutput(folder.resolve("out.txt").toFile())
            .redirectError(err.toFile());
    builder.environment().put("COILWRIGHT_KEYSTORE_PASSWORD", "pa55 wort");
    assertEquals(1, builder.start().waitFor(), text(err));
    assertEquals(List.of("Wrote " + record + ", signed."), Files.readAllLines(err));
  }

  /** The library finds much to say about each of these, and then opens it or not. */
  @Test
  void a_damaged_sheet_prints_no_line_of_a_library() throws Exception {
    Path sheet = Sheets.of("wiring-examples/wash-room-tub.yaml", folder.resolve("sheet.pdf"));
    byte[] sound = Files.readAllBytes(sheet);
    for (int at : List.of(20, sound.length / 3, sound.length - 30)) {
      byte[] damaged = sound.clone();
      Arrays.fill(damaged, at, at + 12, (byte) 'x');
      Path file = Files.write(folder.resolve("damaged.pdf"), damaged);
      List<String> command = command(List.of(), "readback", file.toString());
      leaveOutLogs(command);
      Path err = folder.resolve("err.txt");
      new ProcessBuilder(command)
          .redirectOutput(folder.resolve("out.txt").toFile())
          .redirectError(err.toFile())
          .start()
          .waitFor();
      List<String> foreign =
          Files.readAllLines(err).stream()
              .filter(line -> line.matches(".*(pdfbox|Exception|SEVERE|WARN|INFO|SLF4J).*"))
              .toList();
      assertEquals(List.of(), foreign);
    }
  }

  /** The program has no library for logs of its own; the tests have, to keep others quiet. */
  private static void leaveOutLogs(List<String> command) {
    int classPath = command.indexOf("-cp") + 1;
    command.set(
        classPath,
        Stream.of(command.get(classPath).split(File.pathSeparator, -1))
            .filter(entry -> !entry.contains("slf4j"))
            .collect(Collectors.joining(File.pathSeparator)));
  }

  /** A pipe cannot seek, as a file that stands in for standard input can. */
  @Test
  void a_netlist_comes_through_a_pipe() throws Exception {
    Process process =
        new ProcessBuilder(command(List.of(), "check", "--as", "json", "-"))
            .redirectErrorStream(true)
            .start();
    try (OutputStream pipe = process.getOutputStream()) {
      Files.copy(Path.of("wiring-examples/wash-room-tub.yaml"), pipe);
    }
    String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, process.waitFor(), printed);
    assertTrue(printed.contains("\"file\": \"-\""), printed);
  }

  @Test
  void hostile_files_are_refused_within_300_megabytes() throws Exception {
    Path deep = Files.writeString(folder.resolve("deep.yaml"), "a: " + "[".repeat(2_000_000));
    Path long10 = Files.write(folder.resolve("long.yaml"), new byte[10 << 20]);
    Path wide = folder.resolve("wide.yaml");
    Files.writeString(wide, "parts: {" + "x: {is: diode}, ".repeat(120_000) + "}\n");
    Path aliases = folder.resolve("aliases.yaml");
    Files.writeString(aliases, "a: &a {x: 1}\nb: [" + "*a, ".repeat(400_000) + "]\n");
    Ended ended =
        java(
            List.of("-Xmx300m"),
            "check",
            deep.toString(),
            long10.toString(),
            wide.toString(),
            aliases.toString());
    assertEquals(2, ended.code, ended.err);
    assertFalse(ended.err.contains("Exception"), ended.err);
    assertFalse(ended.err.contains("OutOfMemory"), ended.err);
  }

  @Test
  void ten_thousand_circuits_are_refused_before_the_work_where_memory_is_short() throws Exception {
    Path board = folder.resolve("board.yaml");
    Files.write(board, new Board(10_000, 5, 1, false).bytes());
    for (String command : List.of("check", "states", "faults", "checklist --coverage")) {
      String[] words = (command + " " + board).split(" ");
      Ended ended = java(List.of("-Xmx256m"), words);
      assertEquals(2, ended.code, ended.err);
      assertTrue(ended.err.contains("MiB are too much for this process"), ended.err);
      assertFalse(ended.err.contains("Exception"), ended.err);
      assertFalse(ended.err.contains("OutOfMemory"), ended.err);
    }
  }

  @Test
  void text_is_utf8_whatever_the_default_charset() throws Exception {
    Ended ended =
        java(
            List.of("-Dfile.encoding=US-ASCII"),
            "check",
            "--as",
            "json",
            "wiring-examples/attic-mistakes.yaml");
    assertEquals(1, ended.code, ended.err);
    assertFalse(ended.out.contains("\ufffd"));
    assertTrue(ended.out.codePoints().anyMatch(c -> c > 0x7f));
  }
}
