package org.coilwright.cli;

import org.coilwright.sizing.Choice;
import org.coilwright.table.Cited;

/** A choice as JSON. */
final class ChooseJson {
  private ChooseJson() {}

  static String of(Choice choice) {
    JsonWriter json = new JsonWriter().object();
    json.key("question").text(choice.question().title());
    json.key("fits").truth(choice.fits());
    json.key("standing").text(choice.standing().word());
    json.key("lines").array();
    for (Choice.Line line : choice.lines()) {
      json.object();
      json.key("key").text(line.key());
      json.key("label").text(line.label());
      json.key("text").text(line.text());
      if (line.value().isPresent()) {
        json.key("value").number(line.value().getAsDouble());
        json.key("unit").text(line.unit());
      }
      json.endObject();
    }
    json.endArray();
    json.key("sources").array();
    for (Cited<?> cited : choice.cited().stream().distinct().toList()) {
      json.object();
      json.key("source").text(cited.source().cite());
      json.key("place").text(cited.place());
      json.key("standing").text(cited.standing().word());
      json.endObject();
    }
    json.endArray();
    return json.endObject().toString();
  }
}
