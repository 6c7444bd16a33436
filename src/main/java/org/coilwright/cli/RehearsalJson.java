package org.coilwright.cli;

import java.util.List;
import java.util.Optional;
import org.coilwright.behaviour.Improvement;
import org.coilwright.behaviour.Rehearsed;
import org.coilwright.behaviour.Run;
import org.coilwright.behaviour.Scene;
import org.coilwright.behaviour.Stage;
import org.coilwright.behaviour.Tally;
import org.coilwright.netlist.Part;
import org.coilwright.rules.ContactLife;
import org.coilwright.table.Cited;

/** What {@code rehearse --as json} prints: watts, watt-hours, seconds, degrees Celsius. */
final class RehearsalJson {
  private RehearsalJson() {}

  static String of(
      String file, Stage stage, List<Rehearsed> all, Optional<Improvement> improvement) {
    JsonWriter json = new JsonWriter();
    json.object().key("coilwright").number(1).key("file").text(file);
    json.key("output").text(stage.output());
    json.key("loads").texts(stage.loads().loads().stream().map(Part::name).toList());
    json.key("watts").number(stage.loads().watts());
    json.key("falseStart").text(RehearsalText.DEFINITION);
    json.key("anythingTried").truth(all.stream().anyMatch(r -> !r.tally().runs().isEmpty()));
    json.key("assumed").array();
    for (Scene.Assumed assumed : stage.scene().assumed()) {
      Cited<Double> figure = assumed.figure();
      json.object().key("figure").text(figure.place()).key("value").number(figure.value());
      json.key("unit").text(assumed.unit());
      json.key("source").text(figure.source().cite());
      json.key("standing").text(figure.standing().word()).endObject();
    }
    json.endArray().key("situations").array();
    all.forEach(r -> situation(json, r));
    json.endArray().key("contacts").array();
    double perDay =
        all.stream()
            .filter(Rehearsed::isWholeDays)
            .mapToDouble(r -> r.tally().startsPerDay())
            .max()
            .orElse(Double.NaN);
    stage.relays().forEach(r -> contact(json, stage, r, perDay));
    json.endArray();
    improvement.ifPresent(i -> improvement(json, i));
    return json.endObject().toString();
  }

  private static void improvement(JsonWriter json, Improvement improvement) {
    json.key("improve").object();
    json.key("shortestConfirmAsSet").number(improvement.asSet().orElse(Double.NaN));
    json.key("thresholdThatKeepsOut").number(improvement.keepsOut().orElse(Double.NaN));
    json.key("shortestConfirmThere").number(improvement.atKeepsOut().orElse(Double.NaN));
    json.key("tried").array();
    for (Improvement.Cell cell : improvement.cells()) {
      json.object().key("confirm").number(cell.confirm()).key("threshold").number(cell.threshold());
      json.key("falseStarts").number(cell.falseStarts());
      json.key("unusedSurplus").number(cell.unusedWh());
      json.key("batteryAndGrid").number(cell.drawnWh()).endObject();
    }
    json.endArray().endObject();
  }

  private static void situation(JsonWriter json, Rehearsed r) {
    Tally t = r.tally();
    json.object().key("name").text(r.situation().name()).key("tells").text(r.situation().tells());
    json.key("seconds").number(t.steps() * r.secondsPerRow());
    json.key("starts").number(t.runs().size());
    json.key("startsPerDay").number(r.isWholeDays() ? t.startsPerDay() : Double.NaN);
    json.key("closedSeconds").number(r.closedSeconds());
    json.key("falseStarts").array();
    t.falseStarts().forEach(run -> run(json, r, run));
    json.endArray();
    json.key("energy").object().key("sun").number(r.pvWh()).key("battery").number(r.batteryWh());
    json.key("grid").number(r.gridWh()).key("unusedSurplus").number(t.unusedSurplusWh());
    json.endObject();
    json.key("battery").object().key("lowest").number(t.lowestFraction());
    json.key("end").number(t.endFraction()).endObject();
    json.key("water").object();
    json.key("hottest").number(t.hottestCelsius().orElse(Double.NaN));
    json.key("end").number(t.endCelsius().orElse(Double.NaN));
    json.key("hotAfterSeconds")
        .number(
            t.targetStep().isPresent()
                ? t.targetStep().getAsLong() * r.secondsPerRow()
                : Double.NaN);
    json.endObject().endObject();
  }

  private static void run(JsonWriter json, Rehearsed r, Run run) {
    json.object().key("at").text(r.clock(run.startStep()));
    json.key("seconds").number((run.endStep() - run.startStep()) * r.secondsPerRow());
    json.key("sun").number(run.pvWh()).key("battery").number(run.batteryWh());
    json.key("grid").number(run.gridWh()).endObject();
  }

  private static void contact(JsonWriter json, Stage stage, Part.Relay relay, double perDay) {
    Optional<ContactLife> life = ContactLife.of(relay);
    json.object().key("part").text(relay.name()).key("startsPerDay").number(perDay);
    json.key("alsoSwitchedByThermostat").truth(stage.byThermostat().contains(relay.name()));
    json.key("life").number(life.map(ContactLife::operations).orElse(Double.NaN));
    json.key("holdsFor");
    life.ifPresentOrElse(l -> json.text(l.words()), json::nothing);
    json.endObject();
  }
}
