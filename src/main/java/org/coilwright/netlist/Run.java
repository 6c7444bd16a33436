package org.coilwright.netlist;

import java.util.List;
import java.util.Optional;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Quantity;
import org.jspecify.annotations.Nullable;

/** A cable, cord or conduit that holds several wires. */
public record Run(
    String name,
    Mark mark,
    Optional<Written<Quantity>> length,
    Optional<Written<ConductorSize>> size,
    Optional<Written<Quantity>> insulation,
    Optional<Written<Method>> installed,
    List<Written<String>> sharesWith,
    Optional<Written<String>> coreMaterial,
    Optional<Written<Boolean>> flexible,
    Optional<Written<String>> insulationMaterial,
    Optional<Written<Quantity>> clampTemperature) {
  /** Words of {@code insulation-material}. */
  public static final List<String> INSULATION_MATERIALS =
      List.of("pvc-60", "pvc-70", "pvc-75", "pvc-90", "xlpe-90", "rubber-60");

  /** A name stands at one place; everything else stands below it. */
  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof Run that && name.equals(that.name) && mark.equals(that.mark));
  }

  @Override
  public int hashCode() {
    return name.hashCode();
  }
}
