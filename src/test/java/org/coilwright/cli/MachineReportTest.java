package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.coilwright.cli.Cli.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** JSON and SARIF as another program sees them, read by another parser. */
class MachineReportTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String FAULTY = "wiring-examples/attic-mistakes.yaml";
  private static final String CLEAR = "wiring-examples/wash-room-tub.yaml";

  private static JsonNode json(String... files) throws IOException {
    return JSON.readTree(run("json", files).out());
  }

  private static JsonNode sarif(String... files) throws IOException {
    return JSON.readTree(run("sarif", files).out());
  }

  private static Ran run(String form, String... files) {
    String[] line = new String[files.length + 3];
    line[0] = "check";
    line[1] = "--as";
    line[2] = form;
    System.arraycopy(files, 0, line, 3, files.length);
    return Cli.run(line);
  }

  private static List<JsonNode> list(JsonNode array) {
    List<JsonNode> nodes = new java.util.ArrayList<>();
    array.forEach(nodes::add);
    return nodes;
  }

  @Test
  void json_holds_what_the_contract_names() throws IOException {
    JsonNode root = json(FAULTY, CLEAR);
    assertEquals(1, root.get("coilwright").asInt());
    assertEquals(2, root.get("files").size());
    JsonNode faulty = root.get("files").get(0);
    assertEquals(FAULTY, faulty.get("file").asText());
    assertEquals("STOP", faulty.get("verdict").asText());
    assertFalse(faulty.get("findings").isEmpty());
    for (JsonNode finding : faulty.get("findings")) {
      for (String key :
          List.of("rule", "weight", "at", "line", "column", "message", "sources", "standing")) {
        assertNotNull(finding.get(key), key + " in " + finding);
      }
      assertTrue(finding.has("value") && finding.has("limit"), finding.toString());
      assertTrue(finding.get("at").isArray() && !finding.get("at").isEmpty(), finding.toString());
      assertTrue(finding.get("line").asInt() >= 1);
      assertTrue(Set.of("STOP", "FIX", "NOTE").contains(finding.get("weight").asText()));
      assertTrue(
          Set.of("published", "common-practice", "from-memory")
              .contains(finding.get("standing").asText()));
    }
    JsonNode clear = root.get("files").get(1);
    assertTrue(Set.of("NOTE", "CLEAR").contains(clear.get("verdict").asText()));
    assertFalse(clear.get("satisfied").isEmpty());
    assertTrue(clear.get("undecided").isArray());
  }

  @Test
  void json_measures_are_numbers_with_units() throws IOException {
    long measured = 0;
    for (JsonNode finding : json(FAULTY).get("files").get(0).get("findings")) {
      if (!finding.get("value").isNull()) {
        measured++;
        assertTrue(finding.get("value").get("number").isNumber(), finding.toString());
        assertTrue(finding.get("value").get("unit").isTextual(), finding.toString());
      }
    }
    assertTrue(measured > 0);
  }

  @Test
  void json_of_a_file_that_cannot_be_read_has_no_verdict() throws IOException {
    JsonNode file = json("no-such-file.yaml").get("files").get(0);
    assertTrue(file.get("verdict").isNull());
    assertEquals(1, file.get("problems").size());
  }

  @Test
  void a_satisfied_check_from_memory_says_so_in_json() throws IOException {
    for (JsonNode satisfied : json(CLEAR).get("files").get(0).get("satisfied")) {
      assertEquals(
          satisfied.get("standing").asText().equals("from-memory"),
          satisfied.get("message").asText().contains("confirm before relying on it"),
          satisfied.toString());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        FAULTY,
        CLEAR,
        "wiring-examples/guest-house-cylinder.yaml",
        "wiring-examples/cabin-water-heater.yaml",
        "no-such-file.yaml"
      })
  void sarif_is_valid_by_the_schema_of_its_standard(String file) throws IOException {
    Set<ValidationMessage> faults = schema().validate(sarif(file));
    assertEquals(Set.of(), faults);
  }

  @Test
  void the_schema_refuses_what_sarif_must_not_lack() throws IOException {
    JsonNode broken = sarif(CLEAR);
    ((com.fasterxml.jackson.databind.node.ObjectNode)
            broken.get("runs").get(0).get("tool").get("driver"))
        .remove("name");
    assertFalse(schema().validate(broken).isEmpty());
  }

  private static JsonSchema schema() throws IOException {
    try (InputStream in =
        MachineReportTest.class.getResourceAsStream("/schema/sarif-schema-2.1.0.json")) {
      return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V7).getSchema(in);
    }
  }

  @Test
  void sarif_keeps_every_outcome_with_its_kind() throws IOException {
    JsonNode file = json(FAULTY).get("files").get(0);
    JsonNode run = sarif(FAULTY).get("runs").get(0);
    List<JsonNode> results = list(run.get("results"));
    assertEquals(file.get("findings").size(), count(results, "fail"));
    assertEquals(file.get("satisfied").size(), count(results, "pass"));
    assertEquals(file.get("undecided").size(), count(results, "open"));
    for (JsonNode result : results) {
      String level = result.get("level").asText();
      assertEquals(result.get("kind").asText().equals("fail"), !level.equals("none"), level);
    }
  }

  private static long count(List<JsonNode> results, String kind) {
    return results.stream().filter(r -> r.get("kind").asText().equals(kind)).count();
  }

  @Test
  void sarif_rules_are_known_and_levels_follow_the_weight() throws IOException {
    JsonNode run = sarif(FAULTY).get("runs").get(0);
    JsonNode rules = run.get("tool").get("driver").get("rules");
    for (JsonNode result : run.get("results")) {
      int index = result.get("ruleIndex").asInt(-1);
      assertEquals(result.get("ruleId").asText(), rules.get(index).get("id").asText());
    }
    assertTrue(
        list(run.get("results")).stream().anyMatch(r -> r.get("level").asText().equals("error")));
  }

  @Test
  void sarif_shows_the_other_places() throws IOException {
    JsonNode findings = json(FAULTY).get("files").get(0).get("findings");
    JsonNode results = sarif(FAULTY).get("runs").get(0).get("results");
    for (int i = 0; i < findings.size(); i++) {
      JsonNode related = results.get(i).get("relatedLocations");
      assertEquals(findings.get(i).get("places").size() - 1, related == null ? 0 : related.size());
    }
  }

  @Test
  void sarif_fingerprints_tell_results_apart_and_survive_moved_lines() throws IOException {
    Set<String> prints = new HashSet<>();
    JsonNode results = sarif(FAULTY).get("runs").get(0).get("results");
    for (JsonNode result : results) {
      assertTrue(prints.add(fingerprint(result)), result.toString());
    }
    byte[] bytes = java.nio.file.Files.readAllBytes(java.nio.file.Path.of(FAULTY));
    byte[] moved =
        ("# moved\n\n" + new String(bytes, java.nio.charset.StandardCharsets.UTF_8))
            .getBytes(java.nio.charset.StandardCharsets.UTF_8);
    Set<String> before = fingerprints(new Cli().stdin(bytes).with("check", "--as", "sarif", "-"));
    Set<String> after = fingerprints(new Cli().stdin(moved).with("check", "--as", "sarif", "-"));
    assertEquals(before, after);
  }

  private static Set<String> fingerprints(Ran ran) throws IOException {
    Set<String> prints = new HashSet<>();
    for (JsonNode result : JSON.readTree(ran.out()).get("runs").get(0).get("results")) {
      prints.add(fingerprint(result));
    }
    return prints;
  }

  private static String fingerprint(JsonNode result) {
    return result.get("partialFingerprints").get("coilwright/v1").asText();
  }

  @Test
  void sarif_names_files_as_uris() {
    assertEquals("a%20b/%CE%A9%23.yaml", SarifReport.uri("a b/Ω#.yaml"));
    assertEquals("file:///tmp/x.yaml", SarifReport.uri("/tmp/x.yaml"));
    assertEquals("a%3Ab.yaml", SarifReport.uri("a:b.yaml"));
  }

  @Test
  void json_escapes_what_json_must_not_hold_bare() throws IOException {
    String odd = "\"\\\u0000\u001b\n\ud800x😀\u007f";
    String written = new JsonWriter().object().key("k").text(odd).endObject().toString();
    assertEquals(odd, JSON.readTree(written).get("k").asText());
    assertFalse(written.contains("\u001b"));
  }

  @Test
  void json_numbers_have_nine_digits_and_nothing_infinite() throws IOException {
    String written =
        new JsonWriter()
            .array()
            .number(1.0 / 3)
            .number(2.3e7)
            .number(1e-30)
            .number(Double.POSITIVE_INFINITY)
            .number(-0.0)
            .endArray()
            .toString();
    JsonNode read = JSON.readTree(written);
    assertEquals(0.333333333, read.get(0).asDouble());
    assertEquals(2.3e7, read.get(1).asDouble());
    assertEquals(1e-30, read.get(2).asDouble());
    assertTrue(read.get(3).isNull());
    assertTrue(written.contains("23000000"), written);
  }
}
