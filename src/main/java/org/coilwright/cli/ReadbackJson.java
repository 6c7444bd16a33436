package org.coilwright.cli;

import java.util.Optional;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Expected;
import org.coilwright.checklist.Judgement;
import org.coilwright.checklist.Judgement.RowResult;
import org.coilwright.checklist.Remark;
import org.coilwright.checklist.TestRecord;
import org.coilwright.checklist.Texts;

/** What {@code readback --as json} prints. The names are a contract: added to, never changed. */
final class ReadbackJson {
  private ReadbackJson() {}

  static String of(String file, Checklist checklist, Judgement judgement) {
    return of(file, checklist, judgement, Optional.empty());
  }

  /**
   * The same as it travels in a record.
   *
   * @param record what that is for; empty outside one
   */
  static String of(
      String file, Checklist checklist, Judgement judgement, Optional<TestRecord> record) {
    JsonWriter json = new JsonWriter();
    json.object().key("coilwright").number(1).key("file").text(file);
    json.key("sha256").text(checklist.title().sha256());
    json.key("printed").text(checklist.title().printed());
    json.key("complete").truth(judgement.isComplete());
    json.key("verdict").text(verdict(judgement));
    if (record.isPresent()) {
      TestRecord of = record.get();
      json.key("record").object().key("read-back").text(of.readBack());
      json.key("program").text(of.program());
      json.key("filled-in-sha256").text(of.sha256());
      json.key("signed").truth(of.signed()).endObject();
    }
    json.key("rows").array();
    for (RowResult result : judgement.rows()) {
      row(json, result);
    }
    json.endArray().key("remarks").array();
    for (Remark remark : judgement.remarks()) {
      json.object().key("kind").text(remark.kind().word()).key("name").text(remark.name());
      json.key("where").text(remark.where()).key("message").text(remark.sentence());
      json.key("means").texts(remark.means()).endObject();
    }
    return json.endArray().endObject().toString();
  }

  /** In one word; programs compare it. */
  private static String verdict(Judgement judgement) {
    if (judgement.isStopped()) {
      return "stop";
    }
    return judgement.isComplete() ? "complete" : "not complete";
  }

  private static void row(JsonWriter json, RowResult result) {
    Expected expected = result.row().expected();
    json.object().key("name").text(result.row().name());
    json.key("number").text(result.row().number());
    json.key("expected").text(expected.text(Texts.english()));
    json.key("unit").text(expected.unit());
    json.key("written");
    if (result.written().isPresent()) {
      json.text(result.written().get());
    } else {
      json.nothing();
    }
    json.key("value");
    if (result.value().isPresent()) {
      json.number(result.value().getAsDouble());
    } else {
      json.nothing();
    }
    json.key("state").text(result.state().word()).endObject();
  }
}
