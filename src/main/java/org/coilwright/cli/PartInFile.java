package org.coilwright.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rules.AllRules;
import org.coilwright.sizing.Choice;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/** Whether the contactor that is in the file already fits, as the rules about it say. */
final class PartInFile {
  private static final Set<String> ASKED =
      Set.of(
          "contactor.current",
          "contactor.voltage",
          "contactor.category",
          "contactor.making",
          PartInFile.TOO_WARM);

  /** It says nothing of how large a part is, only that this one may not be where it is. */
  private static final String TOO_WARM = "enclosure.too-warm";

  private PartInFile() {}

  /** The choice with a line about the part, after what is to be chosen. */
  static Choice judged(Choice choice, String name, Study study, Tables tables) {
    List<Choice.Line> lines = new ArrayList<>(choice.lines());
    int after = 0;
    for (int i = 0; i < lines.size(); i++) {
      after = lines.get(i).key().equals("choose") ? i + 1 : after;
    }
    lines.add(
        after == 0 ? lines.size() : after,
        new Choice.Line(
            "in-file", name + " itself", words(name, study, tables), OptionalDouble.empty(), ""));
    return new Choice(choice.question(), choice.fits(), List.copyOf(lines), choice.cited());
  }

  private static String words(String name, Study study, Tables tables) {
    Set<String> against = new LinkedHashSet<>();
    Set<String> open = new LinkedHashSet<>();
    Set<String> carries = new LinkedHashSet<>();
    for (Rule rule : AllRules.of(tables)) {
      if (!ASKED.contains(rule.facts().id())) {
        continue;
      }
      for (Outcome outcome : rule.check(study)) {
        if (outcome.at().isEmpty() || !isOf(name, outcome.at().get(0))) {
          continue;
        }
        if (outcome instanceof Outcome.Violated violated) {
          against.add(violated.headline());
        } else if (outcome instanceof Outcome.Undecided undecided
            && !rule.facts().id().equals(TOO_WARM)) {
          open.add(undecided.sentence());
        } else if (outcome instanceof Outcome.Satisfied satisfied
            && rule.facts().id().equals("contactor.current")) {
          carries.add(satisfied.sentence());
        }
      }
    }
    if (!against.isEmpty()) {
      return "does not fit: " + String.join("; ", against);
    }
    if (!open.isEmpty()) {
      return "could not be checked. " + String.join(" ", open);
    }
    return carries.isEmpty()
        ? "could not be checked: no rule judges it"
        : "is large enough by its ratings in the file. "
            + carries.stream().collect(Collectors.joining(" "));
  }

  private static boolean isOf(String name, String at) {
    return at.equals(name) || at.startsWith(name + ".");
  }
}
