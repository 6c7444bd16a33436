package org.coilwright.cli;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Netlist;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Outcome.Satisfied;
import org.coilwright.rule.Outcome.Undecided;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.rule.Place;
import org.coilwright.rule.Report;
import org.coilwright.rule.Weight;

/** The results of one report, as members of the array of results that is open in SARIF. */
final class SarifResults {
  private final JsonWriter json;
  private final Map<String, Integer> ruleIndex;
  private final Report report;
  private final Map<String, Integer> seen = new HashMap<>();

  /**
   * The results of a report.
   *
   * @param ruleIndex place of each rule among those of the tool
   */
  SarifResults(JsonWriter json, Map<String, Integer> ruleIndex, Report report) {
    this.json = json;
    this.ruleIndex = ruleIndex;
    this.report = report;
  }

  void write() {
    for (Violated finding : report.findings()) {
      finding(finding);
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

  private void finding(Violated finding) {
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
        message(json, "message", others.get(i).label());
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
    message(json, "message", text);
    json.key("partialFingerprints").object();
    json.key("coilwright/v1").text(fingerprint(outcome)).endObject();
  }

  private void location(Place place) {
    json.key("locations").array().object();
    physical(place.mark());
    if (!place.label().isBlank()) {
      message(json, "message", place.label());
    }
    json.endObject().endArray();
  }

  private void physical(Mark mark) {
    json.key("physicalLocation").object();
    json.key("artifactLocation").object().key("uri").text(SarifReport.uri(mark.file())).endObject();
    region(json, mark);
    json.endObject();
  }

  static void region(JsonWriter json, Mark mark) {
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

  static void message(JsonWriter json, String key, String text) {
    json.key(key).object().key("text").text(text).endObject();
  }

  static String level(Weight weight) {
    return switch (weight) {
      case STOP -> "error";
      case FIX -> "warning";
      case NOTE -> "note";
    };
  }

  /**
   * Names an outcome by what it is about, not by where it stands, so that it is known again after
   * lines have moved. Like ones of a netlist are numbered; what stands in an included file is told
   * apart by the netlist that includes it.
   */
  private String fingerprint(Outcome outcome) {
    String file = outcome.mark().file();
    String netlist = report.netlist().text().file();
    String about =
        (file.equals(netlist) ? "" : netlist + "|")
            + file
            + "|"
            + outcome.rule().id()
            + "|"
            + String.join("|", outcome.path());
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
}
