package org.coilwright.cli;

import java.util.List;
import java.util.Map;
import org.coilwright.circuit.Actuator;
import org.coilwright.rule.FaultWords;
import org.coilwright.solve.Fault;
import org.coilwright.solve.FaultCase;
import org.coilwright.solve.FaultClass;
import org.coilwright.solve.LoadEffect;

/** What {@code faults --as json} prints: faults that behave alike together, every one named. */
final class FaultsJson {
  private FaultsJson() {}

  static String of(String file, List<FaultClass> classes) {
    JsonWriter json = new JsonWriter();
    json.object().key("coilwright").number(1).key("file").text(file).key("faults").array();
    for (FaultClass alike : classes) {
      alike(json, alike);
    }
    return json.endArray().endObject().toString();
  }

  private static void alike(JsonWriter json, FaultClass alike) {
    FaultCase like = alike.like();
    json.object().key("harm").text(like.harm().name()).key("breaks").array();
    for (Fault fault : alike.faults()) {
      json.object().key("kind").text(fault.kind().name()).key("at").texts(fault.at());
      json.key("line").number(fault.mark().line()).key("column").number(fault.mark().column());
      json.key("message").text(fault.inWords());
      if (!fault.remark().isEmpty()) {
        json.key("remark").text(fault.remark());
      }
      json.endObject();
    }
    json.endArray().key("then").text(FaultWords.then(like));
    json.key("stops").text(FaultWords.stops(like)).key("effects").array();
    for (LoadEffect effect : like.effects()) {
      json.object().key("load").text(effect.load()).key("effect").text(effect.effect().name());
      json.key("stoppedBy").texts(effect.stoppedBy().stream().map(Actuator::name).toList());
      json.key("positions").array();
      for (Map<String, Boolean> positions : effect.positions()) {
        json.object();
        positions.forEach((name, operated) -> json.key(name).truth(operated));
        json.endObject();
      }
      json.endArray().endObject();
    }
    json.endArray().key("shorted").texts(like.shorted()).key("explored").truth(like.explored());
    like.crossing()
        .ifPresent(
            c ->
                json.key("crossing")
                    .object()
                    .key("pins")
                    .texts(c.pins())
                    .key("volts")
                    .number(c.volts())
                    .endObject());
    json.endObject();
  }
}
