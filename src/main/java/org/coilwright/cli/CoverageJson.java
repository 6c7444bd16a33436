package org.coilwright.cli;

import org.coilwright.checklist.Coverage;
import org.coilwright.checklist.Coverage.Entry;
import org.coilwright.checklist.Coverage.Fate;
import org.coilwright.checklist.Texts;

/** What {@code checklist --coverage --as json} prints. */
final class CoverageJson {
  private CoverageJson() {}

  static String of(String file, Coverage coverage) {
    JsonWriter json = new JsonWriter();
    json.object().key("coilwright").number(1).key("file").text(file);
    json.key("sentence").text(coverage.sentence(Texts.english()));
    json.key("mistakes").number(coverage.mistakes());
    json.key("beforeMains").number(coverage.count(Fate.BEFORE_MAINS));
    json.key("withMains").number(coverage.count(Fate.WITH_MAINS));
    json.key("byEye").number(coverage.count(Fate.BY_EYE));
    json.key("harmless").number(coverage.count(Fate.HARMLESS));
    json.key("addedRows").number(coverage.added().rows());
    json.key("triedReadings").number(coverage.added().tried());
    json.key("fewest").truth(coverage.added().fewest());
    json.key("lastStep").text(coverage.lastStep()).key("perStep").array();
    coverage
        .perStep()
        .forEach(
            (step, count) ->
                json.object().key("step").text(step).key("mistakes").number(count).endObject());
    json.endArray().key("entries").array();
    for (Entry entry : coverage.entries()) {
      json.object().key("mistake").text(entry.mistake()).key("fate").text(entry.fate().name());
      json.key("step").text(entry.step()).key("row").text(entry.row());
      json.key("expected").text(entry.expected()).key("reading").text(entry.reading()).endObject();
    }
    return json.endArray().endObject().toString();
  }
}
