package org.coilwright.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.FilledIn;
import org.coilwright.checklist.Oddity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Forms filled in by programs that know nothing of this one. Where a program is installed it fills
 * in today's form; a form that it filled in before is kept and read each time. {@code
 * -Daccept=true} keeps today's instead. With {@code COILWRIGHT_LIVE} set, a program that is not
 * there fails the test.
 */
class FilledElsewhereTest {
  private static final Path KEPT = Path.of("src/test/resources/filled");
  private static final String NETLIST = "circuit: {title: Größe, 2 ½ mm²}\n";
  private static final Checklist SHEET = SampleChecklists.ordinary();
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir Path folder;

  private static byte[] form() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Attachment netlist =
        new Attachment(
            "größe.yaml",
            "application/yaml",
            Attachment.Relation.SOURCE,
            "netlist",
            NETLIST.getBytes(StandardCharsets.UTF_8));
    ChecklistPdf.write(SHEET, List.of(netlist), out);
    return out.toByteArray();
  }

  /** Umlauts, commas, brackets and backslashes in every text; every other box ticked. */
  private static FilledIn values(boolean beyondLatin) {
    Map<String, String> texts = new HashMap<>();
    Set<String> ticked = new HashSet<>();
    int number = 0;
    for (Blank blank : Blanks.all(SHEET)) {
      number++;
      switch (blank.kind()) {
        case TICK -> {
          if (number % 2 == 0) {
            ticked.add(blank.name());
          }
        }
        case LINE ->
            texts.put(
                blank.name(),
                beyondLatin
                    ? "> " + number + ",8 MΩ, Žižka & Łukasz (\\ §) ±3 °C"
                    : number + ",8 ohm, Jörg Äußerlich & Søn (\\ §) ±3 °C");
        case LINES -> texts.put(blank.name(), "Zeile eins, über\nZeile zwei");
        case SIGNATURE -> {}
      }
    }
    return new FilledIn(texts, ticked, Set.of(), Set.of());
  }

  private static void nothingIsLost(byte[] filled, FilledIn expected) {
    Returned returned = SheetReader.read(filled);
    assertTrue(returned instanceof Returned.Sheet, returned::toString);
    Returned.Sheet sheet = (Returned.Sheet) returned;
    assertEquals(expected.ticked(), sheet.filledIn().ticked());
    assertEquals(Set.of(), sheet.filledIn().disputed());
    assertEquals(expected.texts(), sheet.filledIn().texts());
    assertArrayEquals(NETLIST.getBytes(StandardCharsets.UTF_8), sheet.files().get("größe.yaml"));
  }

  /** No other program makes a page or a field look as if somebody had meddled with it. */
  private static void looksAsPrinted(byte[] filled, FilledIn values, boolean drawsNoField)
      throws IOException {
    Look look = Look.of(filled);
    assertEquals(List.of(), LookedOver.against(look, Look.of(form())));
    List<Oddity> within = LookedOver.within(look, values, Blanks.all(SHEET));
    assertEquals(
        drawsNoField ? Set.of(Oddity.Kind.BLANK) : Set.of(),
        within.stream().map(Oddity::kind).collect(Collectors.toSet()),
        within::toString);
  }

  /** Live where it can be, and in any case what was kept. */
  private void read(String name, Optional<byte[]> live, boolean beyondLatin) throws IOException {
    if (live.isEmpty() && System.getenv("COILWRIGHT_LIVE") != null) {
      throw new IllegalStateException(name + " is not there to be tried");
    }
    Path kept = KEPT.resolve(name + ".pdf");
    if (live.isPresent()) {
      nothingIsLost(live.get(), values(beyondLatin));
      looksAsPrinted(live.get(), values(beyondLatin), name.equals("qpdf"));
      Set<String> fields = ((Returned.Sheet) SheetReader.read(live.get())).fields().keySet();
      assertEquals(Blanks.all(SHEET).size(), fields.size());
      if (Boolean.getBoolean("accept")) {
        Files.write(kept, live.get());
      }
    }
    // of another form, if the sample has changed since: only what was written counts
    Returned.Sheet sheet = (Returned.Sheet) SheetReader.read(Files.readAllBytes(kept));
    List<String> wanted =
        values(beyondLatin).texts().values().stream()
            .map(text -> text.replaceAll("[0-9]+,8", "n,8"))
            .distinct()
            .sorted()
            .toList();
    assertEquals(
        wanted,
        sheet.filledIn().texts().values().stream()
            .map(text -> text.replaceAll("[0-9]+,8", "n,8"))
            .distinct()
            .sorted()
            .toList());
    assertTrue(sheet.filledIn().texts().size() > 50 && sheet.filledIn().ticked().size() > 20);
    assertEquals(Set.of(), sheet.filledIn().disputed());
    assertTrue(sheet.files().containsKey("größe.yaml"));
  }

  @Test
  void by_pdf_lib() throws IOException, InterruptedException {
    read("pdf-lib", pdfLib(values(false)), false);
  }

  private Optional<byte[]> pdfLib(FilledIn values) throws IOException, InterruptedException {
    Optional<Tool> node = Tool.onPath("node");
    Optional<Tool> npm = Tool.onPath("npm");
    if (node.isEmpty() || npm.isEmpty()) {
      return Optional.empty();
    }
    Path home = Files.createDirectories(Path.of("target/pdf-lib")).toAbsolutePath();
    if (!Files.isDirectory(home.resolve("node_modules/pdf-lib"))) {
      Tool.Ran installed =
          npm.get().run(home, "install", "--no-audit", "--no-fund", "pdf-lib@1.17.1");
      if (installed.code() != 0) {
        return Optional.empty();
      }
    }
    Path script = Files.copy(KEPT.resolve("fill.mjs"), home.resolve("fill.mjs"), REPLACE);
    Path form = Files.write(folder.resolve("form.pdf"), form());
    ObjectNode json = JSON.createObjectNode();
    json.set("texts", JSON.valueToTree(values.texts()));
    json.set("ticks", JSON.valueToTree(values.ticked()));
    Path wanted = Files.write(folder.resolve("values.json"), JSON.writeValueAsBytes(json));
    Path filled = folder.resolve("filled.pdf");
    Tool.Ran ran =
        node.get()
            .run(home, script.toString(), form.toString(), wanted.toString(), filled.toString());
    assertEquals("", ran.said());
    return Optional.of(Files.readAllBytes(filled));
  }

  private static final java.nio.file.StandardCopyOption REPLACE =
      java.nio.file.StandardCopyOption.REPLACE_EXISTING;

  @Test
  void by_qpdf() throws IOException, InterruptedException {
    read("qpdf", qpdf(values(true)), true);
  }

  /** Through its JSON form: written out, every value put in, read in again. */
  private Optional<byte[]> qpdf(FilledIn values) throws IOException, InterruptedException {
    Optional<Tool> qpdf = Tool.onPath("qpdf");
    if (qpdf.isEmpty()) {
      return Optional.empty();
    }
    Path form = Files.write(folder.resolve("form.pdf"), form());
    Path fields = folder.resolve("fields.json");
    Path json = folder.resolve("form.json");
    Tool.Ran listed =
        qpdf.get()
            .run(folder, "--json=2", "--json-key=acroform", form.toString(), fields.toString());
    assertEquals("", listed.said());
    Tool.Ran written = qpdf.get().run(folder, "--json-output", form.toString(), json.toString());
    assertEquals("", written.said());
    JsonNode all = JSON.readTree(Files.readAllBytes(json));
    for (JsonNode field : JSON.readTree(Files.readAllBytes(fields)).get("acroform").get("fields")) {
      String name = field.get("fullname").asText();
      String object = "obj:" + field.get("object").asText();
      ObjectNode value = (ObjectNode) all.get("qpdf").get(1).get(object).get("value");
      if (values.texts().containsKey(name)) {
        value.put("/V", "u:" + values.texts().get(name));
      } else if (values.ticked().contains(name)) {
        value.put("/V", "/" + FormWriter.ON).put("/AS", "/" + FormWriter.ON);
      }
    }
    Path wanted = Files.write(folder.resolve("wanted.json"), JSON.writeValueAsBytes(all));
    Path filled = folder.resolve("filled.pdf");
    Tool.Ran ran =
        qpdf.get()
            .run(
                folder,
                "--json-input",
                "--object-streams=generate",
                wanted.toString(),
                filled.toString());
    assertEquals("", ran.said());
    return Optional.of(Files.readAllBytes(filled));
  }
}
