package org.coilwright.sizing;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * What a wire is made of: its metal, its insulation and what its clamps stand.
 *
 * @param copper false for aluminium
 * @param insulation row word of the table of insulation materials; empty if it is not written
 * @param clamps °C the clamps at its ends are listed for; empty if it is not written
 */
public record Core(boolean copper, Optional<String> insulation, OptionalDouble clamps) {
  /** Copper in the insulation that is taken where nothing is written. */
  public static final Core ASSUMED = new Core(true, Optional.empty(), OptionalDouble.empty());

  private static final String TABLE = "insulation-materials";

  // written out: what the compiler makes of a record is put together at run time, at each start
  @Override
  public String toString() {
    return (copper ? "copper " : "aluminium ")
        + insulation.orElse("?")
        + (clamps.isPresent() ? " " + clamps.getAsDouble() + " °C" : "");
  }

  /** That of a wire of the circuit. */
  public static Core of(Conductor wire) {
    return new Core(wire.isCopper(), wire.insulationMaterial(), wire.clampTemperature());
  }

  /** Its insulation, or the one that is taken: 70 °C with metric sizes, 75 °C with gauges. */
  String material(ConductorSize size) {
    return insulation.orElse(size.awg().isPresent() ? "pvc-75" : "pvc-70");
  }

  /** How warm the core may get, °C. */
  public Cited<Double> celsius(ConductorSize size, Tables tables) {
    return tables
        .lookup(TABLE, Map.of("material", material(size)), "celsius")
        .orElseThrow(() -> new IllegalStateException("no insulation " + material(size)));
  }

  /** {@code XLPE 90 °C}, or {@code PVC 70 °C taken}. */
  public String words(ConductorSize size, Tables tables) {
    return word(size, "words", tables).orElse(material(size))
        + (insulation.isEmpty() ? " taken" : "")
        + (copper ? "" : ", aluminium");
  }

  /** The column of the capacity and air tables; empty if they have none for it. */
  Optional<String> column(ConductorSize size, Tables tables) {
    return word(size, size.awg().isPresent() ? "gauge" : "metric", tables);
  }

  /** The factor k of a live conductor in a short-circuit; empty if no table gives one. */
  public Optional<Cited<Double>> shortCircuitFactor(ConductorSize size, Tables tables) {
    return word(size, size.awg().isPresent() ? "gauge-k" : "metric-k", tables)
        .flatMap(
            row ->
                tables.lookup(
                    "adiabatic-k",
                    Map.of(
                        "material",
                        copper ? "copper" : "aluminium",
                        "use",
                        "live",
                        "insulation",
                        row),
                    "k"));
  }

  private Optional<String> word(ConductorSize size, String column, Tables tables) {
    return tables.table(TABLE).word(Map.of("material", material(size)), column).map(Cited::value);
  }
}
