package org.coilwright.cli;

import java.util.Map;
import org.coilwright.solve.CoilReading;
import org.coilwright.solve.LoadReading;
import org.coilwright.solve.State;
import org.coilwright.solve.StateTable;
import org.coilwright.solve.TurnOff;

/**
 * What {@code states --as json} prints: every state by itself, none merged, and which contacts,
 * coils and loads act on one another. Where the combinations are too many ({@code everyCombination}
 * is false), each circuit's states are there with the others at rest.
 */
final class StatesJson {
  private StatesJson() {}

  static String of(String file, StatesView view) {
    JsonWriter json = new JsonWriter();
    json.object().key("coilwright").number(1).key("file").text(file);
    json.key("columns").texts(view.study().columns());
    json.key("states").array();
    for (State state : view.study().states()) {
      state(json, view, state);
    }
    json.endArray().key("everyCombination").truth(view.study().listsEveryCombination());
    json.key("circuits").array();
    for (StateTable table : view.tables()) {
      json.object().key("columns").texts(table.columns());
      json.key("coils").texts(table.relays()).key("loads").texts(table.loads()).endObject();
    }
    json.endArray().key("odd").array();
    for (StatesView.Oddity odd : view.oddities()) {
      json.object().key("kind").text(odd.kind()).key("message").text(odd.sentence());
      json.key("positions").array();
      for (Map<String, Boolean> positions : odd.positions()) {
        json.object();
        positions.forEach((name, operated) -> json.key(name).truth(operated));
        json.endObject();
      }
      json.endArray().endObject();
    }
    json.endArray().key("switchedOff").array();
    view.turnOffs().forEach(off -> turnOff(json, off));
    return json.endArray().endObject().toString();
  }

  /** Seconds and volts are left out where nothing takes the current, for the spark decides then. */
  private static void turnOff(JsonWriter json, TurnOff off) {
    json.object().key("relay").text(off.relay()).key("openedBy").texts(off.openedBy());
    json.key("amps").number(off.amps()).key("releaseAmps").number(off.releaseAmps());
    if (off.coilVolts().isPresent()) {
      json.key("seconds").number(off.seconds());
      json.key("coilVolts").number(off.coilVolts().getAsDouble());
      off.contactVolts().ifPresent(volts -> json.key("contactVolts").number(volts));
    }
    json.endObject();
  }

  private static void state(JsonWriter json, StatesView view, State state) {
    json.object().key("positions").object();
    for (String column : view.study().columns()) {
      json.key(column).text(view.position(column, state));
    }
    json.endObject().key("coils").object();
    for (String relay : view.relays()) {
      CoilReading coil = view.study().coil(relay, state);
      json.key(relay).object();
      json.key("volts").number(coil.volts());
      json.key("lowest").number(coil.lowest());
      json.key("highest").number(coil.highest());
      json.key("amps").number(coil.amps());
      json.key("on").truth(coil.pulledIn());
      json.key("halfPulled").truth(view.isHalfPulled(relay, state)).endObject();
    }
    json.endObject().key("loads").object();
    for (String load : view.loads()) {
      LoadReading reading = view.study().load(load, state);
      json.key(load).object();
      json.key("on").truth(reading.on());
      json.key("watts").number(reading.watts());
      json.key("lines").texts(reading.lines()).endObject();
    }
    json.endObject().endObject();
  }
}
