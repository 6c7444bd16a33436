package org.coilwright.cli;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.coilwright.sizing.Choice;
import org.coilwright.sizing.Chooser;
import org.coilwright.sizing.Question;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A choice as text: the question, one line for each thing worked out, and what it rests on. */
final class ChooseText {
  private static final int LABEL = 20;
  private static final int TABLE_FROM = 20;
  private static final int TABLE_TO = 75;
  private static final int TABLE_STEP = 5;

  private ChooseText() {}

  static String of(Choice choice, Style style) {
    StringBuilder text = new StringBuilder();
    text.append(style.strong(choice.question().title())).append('\n');
    for (Choice.Line line : choice.lines()) {
      text.append(wrapped(line.label(), line.text(), style.width()));
    }
    Map<String, Set<String>> sources = new LinkedHashMap<>();
    for (Cited<?> cited : choice.cited()) {
      sources
          .computeIfAbsent(cited.source().cite(), k -> new LinkedHashSet<>())
          .add(cited.place() + (cited.standing() == Standing.FROM_MEMORY ? " (from memory)" : ""));
    }
    text.append(sources.isEmpty() ? "" : "\n");
    sources.forEach(
        (cite, places) ->
            text.append(wrapped("from", cite + ": " + String.join("; ", places), style.width())));
    if (choice.standing() == Standing.FROM_MEMORY) {
      text.append("\nIt rests on figures from memory: confirm before relying on it.\n");
    }
    text.append(
        "\nThe data sheet of the device you buy wins over every figure here. The local"
            + "\ncodes apply, and a licensed electrician decides.\n");
    return text.toString();
  }

  private static String wrapped(String label, String words, int width) {
    StringBuilder out = new StringBuilder();
    StringBuilder line = new StringBuilder("  " + label);
    line.append(" ".repeat(Math.max(1, LABEL - line.length())));
    boolean fresh = true;
    for (String word : words.split(" ", -1)) {
      if (!fresh && line.length() + 1 + word.length() > width) {
        out.append(line).append('\n');
        line = new StringBuilder(" ".repeat(LABEL));
        fresh = true;
      }
      line.append(fresh ? "" : " ").append(word);
      fresh = false;
    }
    return out.append(line.toString().stripTrailing()).append('\n').toString();
  }

  /** The rating needed and chosen, against the air around the contactor. */
  static String table(Question question, Tables tables) {
    StringBuilder text = new StringBuilder(question.title()).append('\n');
    text.append("air      needs     choose\n");
    for (int air = TABLE_FROM; air <= TABLE_TO; air += TABLE_STEP) {
      Choice choice = Chooser.answer(question.inAir(air), tables);
      OptionalDouble needs = choice.value("needs");
      OptionalDouble rating = choice.value("choose");
      text.append(
          String.format(
              Locale.ROOT,
              "%2s °C    %-8s  %s\n",
              air,
              needs.isPresent() ? String.format(Locale.ROOT, "%.1f A", needs.getAsDouble()) : "–",
              rating.isPresent()
                  ? String.format(Locale.ROOT, "%.0f A", rating.getAsDouble())
                  : needs.isPresent()
                      ? "nothing in this series fits"
                      : "outside the table of warm air"));
    }
    return text.toString();
  }
}
