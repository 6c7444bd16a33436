package org.coilwright.cli;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.ReadingProblem;
import org.coilwright.rule.RuleFacts;

/**
 * What {@code check --as sarif} prints: SARIF 2.1.0, one run, every outcome kept. Satisfied is kind
 * {@code pass}, undecided is kind {@code open}.
 */
final class SarifReport implements Account {
  private static final String SCHEMA =
      "https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json";

  private final JsonWriter json = new JsonWriter();
  private final PrintStream out;
  private final Map<String, Integer> ruleIndex = new LinkedHashMap<>();
  private final List<Artifact> artifacts = new ArrayList<>();
  private final List<ReadingProblem> problems = new ArrayList<>();
  private final List<Inspection.Faulted> faults = new ArrayList<>();

  /** What is kept of a file until the end. */
  private record Artifact(String file, Optional<String> sha256) {}

  /**
   * Begins the report: the tool first, then the results file by file, and at the end which files
   * there were and which could not be judged.
   *
   * @param out where it goes, file by file
   */
  SarifReport(PrintStream out, List<RuleFacts> rules) {
    this.out = out;
    json.object().key("$schema").text(SCHEMA).key("version").text("2.1.0");
    json.key("runs").array().object();
    json.key("tool").object().key("driver").object();
    json.key("name").text("coilwright").key("version").text(Version.text());
    json.key("rules").array();
    for (RuleFacts rule : rules) {
      ruleIndex.put(rule.id(), ruleIndex.size());
      rule(rule);
    }
    json.endArray().endObject().endObject();
    json.key("columnKind").text("unicodeCodePoints");
    json.key("results").array();
  }

  @Override
  public void add(Inspection inspection) {
    Optional<String> digest = Optional.empty();
    if (inspection instanceof Inspection.Done done) {
      json.whole(() -> new SarifResults(json, ruleIndex, done.report()).write());
      digest = Optional.of(done.report().netlist().text().sha256());
    } else if (inspection instanceof Inspection.Unusable unusable) {
      problems.addAll(unusable.problems());
    } else if (inspection instanceof Inspection.Faulted faulted) {
      faults.add(faulted);
    }
    artifacts.add(new Artifact(inspection.file(), digest));
    out.print(json.take());
  }

  @Override
  public void end() {
    json.endArray();
    json.key("artifacts").array();
    artifacts.forEach(this::artifact);
    json.endArray();
    invocation();
    out.print(json.endObject().endArray().endObject());
  }

  private void rule(RuleFacts rule) {
    json.object().key("id").text(rule.id());
    SarifResults.message(json, "shortDescription", rule.title());
    SarifResults.message(json, "fullDescription", rule.what());
    SarifResults.message(json, "help", rule.why() + " " + rule.remedy());
    json.key("defaultConfiguration").object();
    json.key("level").text(SarifResults.level(rule.weight())).endObject();
    json.endObject();
  }

  private void invocation() {
    boolean all = problems.isEmpty() && faults.isEmpty();
    json.key("invocations").array().object().key("executionSuccessful").truth(all);
    json.key("toolExecutionNotifications").array();
    problems.forEach(this::notification);
    faults.forEach(this::notification);
    json.endArray().endObject().endArray();
  }

  private void notification(Inspection.Faulted faulted) {
    json.object().key("level").text("error");
    SarifResults.message(
        json, "message", "A fault of coilwright itself, nothing was judged: " + faulted.fault());
    json.key("locations").array().object().key("physicalLocation").object();
    json.key("artifactLocation").object().key("uri").text(uri(faulted.file())).endObject();
    json.endObject().endObject().endArray().endObject();
  }

  private void notification(ReadingProblem problem) {
    json.object().key("level").text("error");
    SarifResults.message(json, "message", problem.what() + " " + problem.remedy());
    json.key("locations").array().object().key("physicalLocation").object();
    json.key("artifactLocation").object().key("uri").text(uri(problem.file())).endObject();
    problem.mark().ifPresent(mark -> SarifResults.region(json, mark));
    json.endObject().endObject().endArray().endObject();
  }

  private void artifact(Artifact artifact) {
    json.object().key("location").object().key("uri").text(uri(artifact.file())).endObject();
    artifact
        .sha256()
        .ifPresent(digest -> json.key("hashes").object().key("sha-256").text(digest).endObject());
    json.endObject();
  }

  /** A path as a URI reference, every byte that is not plain escaped. */
  static String uri(String file) {
    StringBuilder uri = new StringBuilder(file.startsWith("/") ? "file://" : "");
    for (byte b : file.replace('\\', '/').getBytes(StandardCharsets.UTF_8)) {
      char c = (char) (b & 0xff);
      boolean plain =
          (c >= 'a' && c <= 'z')
              || (c >= 'A' && c <= 'Z')
              || (c >= '0' && c <= '9')
              || "-._~/".indexOf(c) >= 0;
      if (plain) {
        uri.append(c);
      } else {
        uri.append('%').append(HexFormat.of().withUpperCase().toHexDigits(b));
      }
    }
    return uri.toString();
  }
}
