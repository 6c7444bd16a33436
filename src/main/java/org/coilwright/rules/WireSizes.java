package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** The sizes in which wire is sold, by the tables of conductor resistance. */
final class WireSizes {
  private WireSizes() {}

  /** Those thicker than this one, of its own kind, the thinnest first. */
  static Stream<ConductorSize> above(ConductorSize now, Tables tables) {
    List<ConductorSize> sizes = new ArrayList<>();
    if (now.awg().isPresent()) {
      // even gauges are the ones sold
      for (int awg = now.awg().getAsInt() - 2; awg > 0; awg -= 2) {
        Optional<Cited<Double>> area =
            tables.lookup("conductor-resistance-awg", Map.of("awg", Integer.toString(awg)), "area");
        if (area.isPresent()) {
          sizes.add(new ConductorSize(area.get().value(), OptionalInt.of(awg)));
        }
      }
    } else {
      tables
          .table("conductor-resistance-mm2")
          .rows()
          .forEach(
              row ->
                  Optional.ofNullable(row.numbers().get("mm2"))
                      .ifPresent(
                          mm2 -> sizes.add(new ConductorSize(mm2.value(), OptionalInt.empty()))));
    }
    return sizes.stream().filter(s -> s.mm2() > now.mm2());
  }
}
