package org.coilwright.behaviour;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Switching;
import org.coilwright.netlist.Written;
import org.coilwright.solve.Study;
import org.coilwright.solve.SwitchedLoads;
import org.coilwright.table.Tables;

/**
 * What a rehearsal needs of a netlist.
 *
 * @param output such as {@code U1.heat}
 * @param loads what hangs on it
 * @param relays what operates with it
 * @param byThermostat those of the relays that a thermostat moves as well, so that they operate
 *     more often than the output
 * @param wants keys without which it cannot be rehearsed
 */
public record Stage(
    String output,
    SwitchedLoads loads,
    List<Part.Relay> relays,
    Set<String> byThermostat,
    Scene scene,
    List<String> wants) {
  /** Keys that measurements stand for. */
  private static final List<String> MEASURED =
      List.of(
          "switching.plant.pv-peak", "switching.plant.base-load", "switching.plant.largest-step");

  /**
   * Sets the stage.
   *
   * @param measured true if generation and loads come from measurements
   */
  public static Stage of(Study study, Tables tables, boolean measured) {
    Netlist netlist = study.circuit().netlist();
    Optional<Switching> switching = netlist.switching();
    Optional<String> output = switching.flatMap(Switching::output).map(Written::value);
    SwitchedLoads loads =
        output.map(o -> SwitchedLoads.of(study, o)).orElse(new SwitchedLoads(List.of(), 0));
    List<String> wants = new ArrayList<>();
    if (switching.isEmpty()) {
      wants.add("switching");
    } else if (output.isEmpty()) {
      wants.add("switching.output");
    } else if (loads.loads().isEmpty()) {
      wants.add("a load on " + output.get());
    } else {
      loads.unknownPower().ifPresent(wants::add);
    }
    Scene scene = switching.map(s -> Scene.of(s, loads.watts(), tables)).orElse(Scene.nothing());
    scene.missing().stream()
        .filter(key -> !measured || !MEASURED.contains(key))
        .forEach(wants::add);
    return new Stage(
        output.orElse(""),
        loads,
        output.map(o -> SwitchedLoads.relaysOf(study, o)).orElse(List.of()),
        byThermostat(study),
        scene,
        List.copyOf(wants));
  }

  private static Set<String> byThermostat(Study study) {
    return study.circuit().netlist().parts().values().stream()
        .filter(p -> p instanceof Part.Thermal t && !t.isCutOut())
        .flatMap(p -> SwitchedLoads.relaysOf(study, p.name()).stream())
        .map(Part.Relay::name)
        .collect(Collectors.toUnmodifiableSet());
  }
}
