package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Languages that have digits, a calendar, letters or a decimal sign of their own change no byte.
 * The commands run in this process, so that {@link Main#main} does not settle the language first.
 */
class LocalesTest {
  private static final List<String> LANGUAGES =
      List.of(
          "ar-EG",
          "fa-IR",
          "ne-NP",
          "my-MM",
          "bn-BD",
          "mr-IN",
          "ckb-IQ",
          "th-TH-u-ca-buddhist-nu-thai",
          "tr-TR",
          "de-CH");

  private static final String NETLIST = "wiring-examples/wash-room-tub.yaml";

  private static final Pattern NUMBER = Pattern.compile("%[-0-9.,+(#]*[dfeEgG]");
  private static final Pattern LITERAL = Pattern.compile("\"(?:[^\"\\\\]|\\\\.)*\"");

  @TempDir Path folder;

  /** Everything that the commands print and write, by command. */
  private Map<String, String> said() throws IOException {
    Path sheet = folder.resolve("sheet.pdf");
    Path drawing = folder.resolve("drawing.svg");
    Path plot = folder.resolve("plot.svg");
    List<List<String>> commands =
        List.of(
            List.of("check", NETLIST),
            List.of("check", "--as", "json", "wiring-examples/attic-mistakes.yaml"),
            List.of("check", "--as", "sarif", "wiring-examples/attic-mistakes.yaml"),
            List.of("check", "src/test/resources/netlists/no-such.yaml"),
            List.of("states", NETLIST),
            List.of("faults", NETLIST),
            List.of("draw", NETLIST, "-o", drawing.toString()),
            List.of("checklist", NETLIST, "-o", sheet.toString()),
            List.of("readback", sheet.toString()),
            List.of("verify", sheet.toString()),
            List.of("rehearse", NETLIST, "--plot", plot.toString()),
            List.of("choose", "--power", "9kW", "--voltage", "400V", "--phases", "3"),
            List.of("explain", "coil.too-low"),
            List.of("schema"),
            List.of("new"),
            List.of("--help"));
    Map<String, String> said = new LinkedHashMap<>();
    for (List<String> command : commands) {
      Cli.Ran ran = Cli.run(command.toArray(String[]::new));
      assertTrue(ran.code() < Exit.DEFECT, ran.err());
      said.put(String.join(" ", command), ran.code() + "\n" + ran.out() + ran.err());
    }
    for (Path file : List.of(sheet, drawing, plot)) {
      said.put(file.toString(), new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1));
      Files.delete(file);
    }
    return said;
  }

  @Test
  void ten_languages_give_the_bytes_of_the_english_ones() throws IOException {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.ENGLISH);
      Map<String, String> english = said();
      for (String language : LANGUAGES) {
        Locale.setDefault(Locale.forLanguageTag(language));
        said().forEach((command, said) -> assertEquals(english.get(command), said, language));
      }
    } finally {
      Locale.setDefault(before);
    }
  }

  /** Where a text is formatted once for all, no run shows in which language that was. */
  @Test
  void no_source_formats_a_number_in_the_language_of_the_machine() throws IOException {
    List<String> found = new ArrayList<>();
    try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).sorted().toList()) {
        String source = Files.readString(file);
        var literals = LITERAL.matcher(source);
        while (literals.find()) {
          String before = source.substring(Math.max(0, literals.start() - 80), literals.start());
          if (NUMBER.matcher(literals.group().replace("%%", "")).find()
              && !before.contains("Locale.ROOT")) {
            found.add(file + ": " + literals.group());
          }
        }
      }
    }
    assertEquals(List.of(), found, "write %s for a whole number, or String.format(Locale.ROOT, …)");
  }
}
