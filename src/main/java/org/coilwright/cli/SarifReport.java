package org.coilwright.cli;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.ReadingProblem;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Outcome.Satisfied;
import org.coilwright.rule.Outcome.Undecided;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.rule.Place;
import org.coilwright.rule.Report;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Weight;

/**
 * What {@code check --as sarif} prints: SARIF 2.1.0, one run, every outcome kept. Satisfied is kind
 * {@code pass}, undecided is kind {@code open}.
 */
final class SarifReport {
  private static final String SCHEMA =
      "https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json";

  private final JsonWriter json = new JsonWriter();
  private final Map<String, Integer> ruleIndex = new LinkedHashMap<>();
  private final Map<String, Integer> seen = new LinkedHashMap<>();

  private SarifReport() {}

  static String of(List<Inspection> inspections, List<RuleFacts> rules) {
    SarifReport sarif = new SarifReport();
    sarif.write(inspections, rules);
    return sarif.json.toString();
  }

  private void write(List<Inspection> inspections, List<RuleFacts> rules) {
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
    invocation(inspections);
    json.key("artifacts").array();
    inspections.forEach(this::artifact);
    json.endArray();
    json.key("results").array();
    for (Inspection inspection : inspections) {
      if (inspection instanceof Inspection.Done done) {
        results(done.report());
      }
    }
    json.endArray();
    json.endObject().endArray().endObject();
  }

  private void rule(RuleFacts rule) {
    json.object().key("id").text(rule.id());
    message("shortDescription", rule.title());
    message("fullDescription", rule.what());
    message("help", rule.why() + " " + rule.remedy());
    json.key("defaultConfiguration").object();
    json.key("level").text(level(rule.weight())).endObject();
    json.endObject();
  }

  private void invocation(List<Inspection> inspections) {
    boolean all = inspections.stream().allMatch(Inspection.Done.class::isInstance);
    json.key("invocations").array().object().key("executionSuccessful").truth(all);
    json.key("toolExecutionNotifications").array();
    for (Inspection inspection : inspections) {
      if (inspection instanceof Inspection.Unusable unusable) {
        unusable.problems().forEach(this::notification);
      }
    }
    json.endArray().endObject().endArray();
  }

  private void notification(ReadingProblem problem) {
    json.object().key("level").text("error");
    message("message", problem.what() + " " + problem.remedy());
    json.key("locations").array().object().key("physicalLocation").object();
    json.key("artifactLocation").object().key("uri").text(uri(problem.file())).endObject();
    problem.mark().ifPresent(this::region);
    json.endObject().endObject().endArray().endObject();
  }

  private void artifact(Inspection inspection) {
    json.object().key("location").object().key("uri").text(uri(inspection.file())).endObject();
    if (inspection instanceof Inspection.Done done) {
      json.key("hashes").object();
      json.key("sha-256").text(done.report().netlist().text().sha256()).endObject();
    }
    json.endObject();
  }

  private void results(Report report) {
    for (Violated finding : report.findings()) {
      finding(report, finding);
    }
    for (Satisfied satisfied : report.satisfied()) {
      begin(satisfied, "pass", "none", JsonReport.message(satisfied));
      location(new Place(satisfied.mark(), ""));
      properties(satisfied.basis());
      json.endObject();
    }
    for (Undecided undecided : report.undecided()) {
      String text = undecided.sentence() + " Missing: " + undecided.missing() + ".";
      begin(undecided, "open", "none", text);
      location(new Place(undecided.mark(), ""));
      json.endObject();
    }
  }

  private void finding(Report report, Violated finding) {
    begin(
        finding,
        "fail",
        level(finding.weight()),
        JsonReport.message(finding) + " " + finding.remedy());
    location(finding.places().get(0));
    List<Place> others = finding.places().subList(1, finding.places().size());
    if (!others.isEmpty()) {
      json.key("relatedLocations").array();
      for (int i = 0; i < others.size(); i++) {
        json.object().key("id").number(i + 1);
        physical(others.get(i).mark());
        message("message", others.get(i).label());
        json.endObject();
      }
      json.endArray();
    }
    Netlist.Accepted accepted = report.accepted().get(finding);
    if (accepted != null) {
      json.key("suppressions").array().object().key("kind").text("inSource");
      json.key("status").text(report.counts(finding) ? "rejected" : "accepted");
      json.key("justification").text(accepted.because() + " (" + accepted.by() + ")");
      json.endObject().endArray();
    }
    properties(finding.basis());
    json.endObject();
  }

  private void begin(Outcome outcome, String kind, String level, String text) {
    String id = outcome.rule().id();
    json.object().key("ruleId").text(id);
    Integer index = ruleIndex.get(id);
    if (index != null) {
      json.key("ruleIndex").number(index);
    }
    json.key("kind").text(kind).key("level").text(level);
    message("message", text);
    json.key("partialFingerprints").object();
    json.key("coilwright/v1").text(fingerprint(outcome)).endObject();
  }

  private void location(Place place) {
    json.key("locations").array().object();
    physical(place.mark());
    if (!place.label().isBlank()) {
      message("message", place.label());
    }
    json.endObject().endArray();
  }

  private void physical(Mark mark) {
    json.key("physicalLocation").object();
    json.key("artifactLocation").object().key("uri").text(uri(mark.file())).endObject();
    region(mark);
    json.endObject();
  }

  private void region(Mark mark) {
    json.key("region").object();
    json.key("startLine").number(mark.line()).key("startColumn").number(mark.column());
    json.key("endLine").number(mark.line()).key("endColumn").number(mark.endColumn());
    json.endObject();
  }

  private void properties(Basis basis) {
    json.key("properties").object();
    json.key("standing").text(basis.standing().word());
    json.key("sources").texts(basis.sources()).endObject();
  }

  private void message(String key, String text) {
    json.key(key).object().key("text").text(text).endObject();
  }

  private static String level(Weight weight) {
    return switch (weight) {
      case STOP -> "error";
      case FIX -> "warning";
      case NOTE -> "note";
    };
  }

  /**
   * Names an outcome by what it is about, not by where it stands, so that it is known again after
   * lines have moved. Like ones are numbered.
   */
  private String fingerprint(Outcome outcome) {
    String about =
        outcome.mark().file() + "|" + outcome.rule().id() + "|" + String.join("|", outcome.at());
    int nth = seen.merge(about, 1, Integer::sum);
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256")
              .digest((about + "|" + nth).getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest, 0, 16);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
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
