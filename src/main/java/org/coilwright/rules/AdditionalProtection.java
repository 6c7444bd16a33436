package org.coilwright.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.rule.Basis;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/**
 * Why a residual-current device of 30 mA is asked for before a load.
 *
 * @param mark where the reason is written
 * @param words a sentence with the reason
 * @param label the reason under a caret
 */
record AdditionalProtection(Mark mark, String words, String label, Basis basis) {
  private static final Map<String, String> WHERE =
      Map.of(
          "bathroom", "It stands in a room with a bath or shower.",
          "socket-outlet", "It is plugged into a socket-outlet for ordinary persons.",
          "outdoors", "It is mobile equipment outdoors.",
          "dwelling-lighting", "It is a luminaire circuit in a dwelling.");

  /** The reason that is written, or else what practice iec asks for elements that heat water. */
  static Optional<AdditionalProtection> of(Part load, Site site, Tables tables) {
    return load.head()
        .additional()
        .map(
            place ->
                new AdditionalProtection(
                    place.mark(),
                    WHERE.getOrDefault(place.value(), place.value()),
                    "asks for 30 mA",
                    clause(place.value(), tables)))
        .or(() -> water(load, site, tables));
  }

  private static Optional<AdditionalProtection> water(Part load, Site site, Tables tables) {
    return load instanceof Part.Heater heater && site.practice().value() == Site.Practice.IEC
        ? heater
            .vessel()
            .map(
                vessel ->
                    new AdditionalProtection(
                        vessel.mark(),
                        "It heats water.",
                        "water",
                        new Basis(
                            List.of(
                                tables.source("common-practice").cite()
                                    + ": elements that heat water"),
                            Standing.COMMON_PRACTICE)))
        : Optional.empty();
  }

  private static Basis clause(String place, Tables tables) {
    String cite =
        place.equals("bathroom")
            ? tables.source("iec-60364-7-701").cite() + ", 701.411.3.3"
            : tables.source("iec-60364-4-41").cite()
                + (place.equals("dwelling-lighting") ? ", 411.3.4" : ", 411.3.3");
    return new Basis(List.of(cite), Standing.PUBLISHED);
  }
}
