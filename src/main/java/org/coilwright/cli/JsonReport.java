package org.coilwright.cli;

import java.io.PrintStream;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.ReadingProblem;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome.Satisfied;
import org.coilwright.rule.Outcome.Undecided;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.rule.Place;
import org.coilwright.rule.Report;
import org.coilwright.table.Standing;

/**
 * What {@code check --as json} and {@code --as ndjson} print. The names are a contract: added to,
 * never changed.
 */
final class JsonReport {
  private final JsonWriter json;

  private JsonReport(JsonWriter json) {
    this.json = json;
  }

  /** An account of several files, written to {@code out} file by file. */
  static Account to(PrintStream out) {
    JsonWriter json = new JsonWriter();
    json.object().key("coilwright").number(1).key("files").array();
    return new Account() {
      @Override
      public void add(Inspection inspection) {
        json.whole(() -> new JsonReport(json).file(inspection));
        out.print(json.take());
      }

      @Override
      public void end() {
        out.print(json.endArray().endObject());
      }
    };
  }

  /** An account with a line a file, an object each, the same as a member of the other's list. */
  static Account lines(PrintStream out) {
    return new Account() {
      @Override
      public void add(Inspection inspection) {
        out.print(line(inspection) + "\n");
      }

      @Override
      public void end() {
        // each line stands for itself
      }
    };
  }

  /** One file as an object on one line, without its end. */
  static String line(Inspection inspection) {
    JsonWriter json = JsonWriter.onOneLine();
    json.object().key("coilwright").number(1);
    new JsonReport(json).members(inspection);
    return json.endObject().take();
  }

  /**
   * The results that travel in a checklist: the same with what the sheet was made from and of.
   *
   * @param sheet writes the value of the key {@code sheet}
   */
  static String of(Inspection.Done done, Consumer<JsonWriter> sheet) {
    JsonWriter json = new JsonWriter();
    json.object().key("coilwright").number(1).key("sheet");
    sheet.accept(json);
    json.key("files").array();
    new JsonReport(json).file(done);
    return json.endArray().endObject().toString();
  }

  private void file(Inspection inspection) {
    json.object();
    members(inspection);
    json.endObject();
  }

  private void members(Inspection inspection) {
    json.key("file").text(inspection.file());
    if (inspection instanceof Inspection.Done done) {
      Report report = done.report();
      json.key("sha256").text(report.netlist().text().sha256());
      json.key("verdict").text(report.verdict().name());
      json.key("findings").array();
      report.findings().forEach(f -> finding(report, f));
      json.endArray().key("satisfied").array();
      report.satisfied().forEach(this::satisfied);
      json.endArray().key("undecided").array();
      report.undecided().forEach(this::undecided);
      json.endArray();
    } else if (inspection instanceof Inspection.Faulted faulted) {
      unjudged();
      json.key("fault").text(faulted.fault());
    } else if (inspection instanceof Inspection.Unusable unusable) {
      unjudged();
      json.key("problems").array();
      unusable.problems().forEach(this::problem);
      json.endArray();
    }
  }

  /** No verdict at all: nothing may be taken for one. */
  private void unjudged() {
    json.key("verdict").nothing();
    json.key("findings").texts(List.of());
    json.key("satisfied").texts(List.of());
    json.key("undecided").texts(List.of());
  }

  private void finding(Report report, Violated finding) {
    json.object().key("rule").text(finding.rule().id());
    json.key("weight").text(finding.weight().name());
    json.key("at").texts(finding.at());
    json.key("path").texts(finding.path());
    place(finding.mark());
    measure("value", finding.value());
    measure("limit", finding.limit());
    json.key("message").text(message(finding));
    if (!finding.detail().isBlank()) {
      json.key("detail").text(finding.detail());
    }
    json.key("remedy").text(finding.remedy());
    basis(finding.basis());
    json.key("places").array();
    for (Place place : finding.places()) {
      json.object().key("file").text(place.mark().file());
      place(place.mark());
      json.key("endColumn").number(place.mark().endColumn());
      json.key("label").text(place.label()).endObject();
    }
    json.endArray();
    along("alsoSeen", report.silenced().getOrDefault(finding, List.of()));
    along("beside", report.beside().getOrDefault(finding, List.of()));
    json.key("counts").truth(report.counts(finding));
    Netlist.Accepted accepted = report.accepted().get(finding);
    if (accepted != null) {
      json.key("accepted").object().key("by").text(accepted.by());
      json.key("because").text(accepted.because()).endObject();
    }
    json.endObject();
  }

  /** Findings that are told along with one. */
  private void along(String key, List<Violated> told) {
    json.key(key).array();
    for (Violated one : told) {
      json.object().key("rule").text(one.rule().id());
      json.key("weight").text(one.weight().name());
      json.key("at").texts(one.at());
      json.key("path").texts(one.path());
      json.key("message").text(message(one)).endObject();
    }
    json.endArray();
  }

  private void satisfied(Satisfied satisfied) {
    json.object().key("rule").text(satisfied.rule().id());
    json.key("at").texts(satisfied.at());
    json.key("path").texts(satisfied.path());
    place(satisfied.mark());
    measure("value", satisfied.value());
    measure("limit", satisfied.limit());
    json.key("message").text(message(satisfied));
    basis(satisfied.basis());
    json.endObject();
  }

  private void undecided(Undecided undecided) {
    json.object().key("rule").text(undecided.rule().id());
    json.key("at").texts(undecided.at());
    json.key("path").texts(undecided.path());
    place(undecided.mark());
    json.key("missing").text(undecided.missing());
    json.key("message").text(undecided.sentence()).endObject();
  }

  private void problem(ReadingProblem problem) {
    json.object().key("file").text(problem.file());
    problem.mark().ifPresent(this::place);
    json.key("message").text(problem.what());
    json.key("remedy").text(problem.remedy()).endObject();
  }

  private void place(Mark mark) {
    json.key("line").number(mark.line()).key("column").number(mark.column());
  }

  private void measure(String name, Optional<Measure> measure) {
    json.key(name);
    if (measure.isPresent()) {
      json.object().key("number").number(measure.get().number());
      json.key("unit").text(measure.get().unit()).endObject();
    } else {
      json.nothing();
    }
  }

  private void basis(Basis basis) {
    json.key("sources").texts(basis.sources());
    json.key("standing").text(basis.standing().word());
  }

  static String message(Violated finding) {
    return finding.headline() + ". " + finding.numbers() + confirm(finding.basis());
  }

  /** A satisfied check that rests on memory is never a plain one. */
  static String message(Satisfied satisfied) {
    return satisfied.sentence() + confirm(satisfied.basis());
  }

  private static String confirm(Basis basis) {
    return basis.standing() == Standing.FROM_MEMORY
        ? " Rests on a figure from memory: " + TextReport.CONFIRM + "."
        : "";
  }
}
