package org.coilwright.rules;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.CoreColour;
import org.coilwright.netlist.Site;
import org.coilwright.rule.Basis;
import org.coilwright.rules.CoreRole.Use;
import org.coilwright.table.Cited;
import org.coilwright.table.CitedTable;
import org.coilwright.table.Tables;

/**
 * The colours that a practice keeps for the protective conductor and for the neutral.
 *
 * @param practice as the table has it: {@code iec} or {@code nec}
 */
record KeptColours(String practice, Tables tables) {
  static KeptColours of(Site site, Tables tables) {
    return new KeptColours(site.practice().value() == Site.Practice.NEC ? "nec" : "iec", tables);
  }

  private List<Cited<String>> colours(Use use) {
    return tables.table("core-colours").rows().stream()
        .filter(r -> isWord(r, "practice", practice))
        .filter(r -> isWord(r, "use", use == Use.PROTECTIVE ? "protective" : "neutral"))
        .flatMap(r -> r.word("colour").stream())
        .toList();
  }

  private static boolean isWord(CitedTable.Row row, String column, String word) {
    return row.word(column).map(Cited::value).filter(word::equals).isPresent();
  }

  /** In letters. */
  Set<String> of(Use use) {
    return colours(use).stream()
        .map(Cited::value)
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  /** {@code white or grey}. */
  String words(Use use) {
    return of(use).stream().map(CoreColour::word).collect(Collectors.joining(" or "));
  }

  /** What they rest on; that a core without insulation has no colour needs no source. */
  Basis basis(Use use) {
    return Basis.of(colours(use).stream().filter(c -> !c.value().equals("bare")).toList());
  }
}
