package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Runner;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Many files in one run: a fault in one does not lose the others, and none is kept. */
class ManyFilesTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  private static final String NETLIST =
      """
      coilwright: 1
      circuit: {title: "%s"}
      site: {practice: iec}
      parts:
        G1: {is: dc-supply, output: {plus: 1, minus: 2}}
      wires: []
      """;

  private static final RuleFacts FACTS = Samples.facts("wiring.brittle", Weight.FIX, List.of());

  /** Throws at one netlist and has something to say of every other. */
  private record Brittle(Throwable fault) implements Rule {
    @Override
    public RuleFacts facts() {
      return FACTS;
    }

    @Override
    public List<Outcome> check(Study study) {
      if (study.circuit().netlist().about().title().value().equals("faulty")) {
        if (fault instanceof Error error) {
          throw error;
        }
        throw (RuntimeException) fault;
      }
      return List.of(Samples.undecided(FACTS, 1, "a key", "G1"));
    }
  }

  @TempDir Path folder;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private final List<String> files = new ArrayList<>();

  @BeforeEach
  void write() throws IOException {
    for (String title : List.of("first", "faulty", "last")) {
      Path file = folder.resolve(title + ".yaml");
      files.add(Files.writeString(file, NETLIST.formatted(title)).toString());
    }
  }

  private Console console() {
    return new Console(
        InputStream.nullInputStream(),
        new PrintStream(out, false, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8),
        Map.of(),
        Set.of(),
        () -> LocalDate.EPOCH);
  }

  private int judge(Throwable fault, Function<PrintStream, Account> account) {
    Tables tables = Tables.load();
    Runner runner =
        new Runner(
            List.of(new Brittle(fault)),
            Samples.facts("record.not-checked", Weight.NOTE, List.of()),
            Samples.ACCEPTED_NOTHING);
    Console console = console();
    int code =
        new ManyFiles(new Inspector(tables, runner), console, unusable -> {})
            .judge(files, account.apply(console.out()), Weight.FIX);
    console.out().flush();
    return code;
  }

  private String printed() {
    return out.toString(StandardCharsets.UTF_8);
  }

  @Test
  void json_tells_of_the_fault_and_of_every_other_file() throws IOException {
    assertEquals(Exit.DEFECT, judge(new IllegalStateException("a slip"), JsonReport::to));
    JsonNode files = JSON.readTree(printed()).get("files");
    assertEquals(3, files.size());
    assertEquals("NOTE", files.get(0).get("verdict").asText());
    assertTrue(files.get(1).get("verdict").isNull());
    assertTrue(files.get(1).get("fault").asText().contains("a slip"));
    assertEquals("NOTE", files.get(2).get("verdict").asText());
    String said = err.toString(StandardCharsets.UTF_8);
    assertTrue(said.contains("faulty.yaml was not judged"), said);
    assertFalse(said.contains("last.yaml"), said);
  }

  @Test
  void sarif_tells_of_the_fault_and_of_every_other_file() throws IOException {
    assertEquals(
        Exit.DEFECT,
        judge(new StackOverflowError(), stream -> new SarifReport(stream, List.of(FACTS))));
    JsonNode run = JSON.readTree(printed()).get("runs").get(0);
    assertEquals(3, run.get("artifacts").size());
    assertFalse(run.get("artifacts").get(1).has("hashes"));
    assertTrue(run.get("artifacts").get(2).has("hashes"));
    JsonNode invocation = run.get("invocations").get(0);
    assertFalse(invocation.get("executionSuccessful").asBoolean());
    assertEquals(1, invocation.get("toolExecutionNotifications").size());
    assertEquals(4, run.get("results").size());
  }

  @Test
  void the_total_counts_the_faulty_file_as_not_checked() {
    assertEquals(
        Exit.DEFECT,
        judge(
            new IllegalStateException("a slip"),
            stream -> new TotalText(stream, files, Style.PLAIN)));
    String text = printed();
    assertTrue(text.contains("faulty.yaml  not checked: a fault of coilwright itself."), text);
    assertTrue(text.contains("3 files, 1 not checked; NOTE: 0 to stop"), text);
  }

  @Test
  void a_fault_while_telling_leaves_nothing_half_told() throws IOException {
    JsonWriter json = new JsonWriter();
    json.object().key("files").array();
    json.whole(() -> json.text("one"));
    try {
      json.whole(
          () -> {
            json.object().key("file");
            throw new IllegalStateException("a slip");
          });
    } catch (IllegalStateException expected) {
      json.whole(() -> json.text("two"));
    }
    JsonNode files = JSON.readTree(json.endArray().endObject().toString()).get("files");
    assertEquals("[\"one\",\"two\"]", files.toString());
  }

  /** What was told of a file has left the program before the next is looked at. */
  @ParameterizedTest
  @ValueSource(strings = {"json", "sarif", "text"})
  void each_file_is_told_before_the_next_is_read(String form) {
    PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
    Account account =
        switch (form) {
          case "json" -> JsonReport.to(stream);
          case "sarif" -> new SarifReport(stream, List.of());
          default -> new TotalText(stream, files, Style.PLAIN);
        };
    int before = 0;
    for (String file : files) {
      account.add(Inspector.standard().inspect(file, console()));
      stream.flush();
      assertTrue(out.size() > before, file);
      before = out.size();
    }
    account.end();
    stream.flush();
    assertTrue(out.size() > before);
  }

  /** What is too large is no fault of the program, and the next may be smaller. */
  @Test
  void memory_that_runs_out_at_one_file_is_told_as_a_file_that_is_too_large() {
    assertEquals(2, judge(new OutOfMemoryError("Java heap space"), JsonReport::lines));
    List<String> lines = printed().lines().toList();
    assertEquals(3, lines.size());
    assertTrue(lines.get(1).contains("did not suffice for it"), lines.get(1));
    assertFalse(printed().contains("OutOfMemory"));
    assertEquals("", err.toString(StandardCharsets.UTF_8));
  }
}
