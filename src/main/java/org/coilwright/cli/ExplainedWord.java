package org.coilwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.checklist.SafetyNotes;
import org.coilwright.netlist.Glossary;
import org.coilwright.netlist.PlainYaml;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Unit;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** Words that are no rule: parts, keys, units, categories, letters of pilot duty, safety notes. */
final class ExplainedWord {
  private static final String LETTERS = "[A-ENP-R](150|300|600)";

  private final Glossary glossary = new Glossary();
  private final PlainYaml categories = categories();
  private final Tables tables;
  private final Style style;

  ExplainedWord(Tables tables, Style style) {
    this.tables = tables;
    this.style = style;
  }

  private static PlainYaml categories() {
    try (InputStream in = ExplainedWord.class.getResourceAsStream("categories.yaml")) {
      if (in == null) {
        throw new IllegalStateException("the build left out categories.yaml");
      }
      return PlainYaml.of("categories.yaml", in.readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Every word that is known, for asking whether another was meant. */
  Set<String> names() {
    Set<String> names = new LinkedHashSet<>(glossary.parts());
    names.addAll(glossary.keys());
    names.addAll(glossary.categories());
    names.addAll(SafetyNotes.names());
    return names;
  }

  /** All that a word stands for; empty text if for nothing. */
  String text(String word) {
    List<String> parts = new ArrayList<>();
    part(word).ifPresent(parts::add);
    key(word).ifPresent(parts::add);
    unit(word).ifPresent(parts::add);
    category(word).ifPresent(parts::add);
    letter(word).ifPresent(parts::add);
    note(word).ifPresent(parts::add);
    return String.join("\n", parts);
  }

  private Optional<String> part(String word) {
    List<Glossary.Use> keys = glossary.keysOf(word);
    if (keys.isEmpty()) {
      return Optional.empty();
    }
    StringBuilder out = begun(word, "a part: K1: {is: %s, …}".formatted(word));
    for (Glossary.Use use : keys) {
      use(out, use, use.must() ? " (must be there)" : "");
    }
    return Optional.of(out.toString());
  }

  private Optional<String> key(String word) {
    Set<Glossary.Use> uses = glossary.usesOf(word);
    if (uses.isEmpty()) {
      return Optional.empty();
    }
    StringBuilder out = begun(word, "a key");
    for (Glossary.Use use : uses) {
      use(out, use, " Of " + use.place() + (use.must() ? ", where it must be." : "."));
    }
    return Optional.of(out.toString());
  }

  private void use(StringBuilder out, Glossary.Use use, String more) {
    Lines.wrap(out, "  ", use.example(), style.width());
    Lines.wrap(out, "      ", use.says() + more, style.width());
  }

  private Optional<String> unit(String word) {
    return Unit.of(word)
        .map(
            unit -> {
              StringBuilder out = begun(word, "a unit, of " + unit.dimension().noun());
              Lines.wrap(
                  out,
                  "  ",
                  "Written like %s. Of the same: %s."
                      .formatted(
                          unit.dimension().example(),
                          String.join(
                              ", ",
                              Unit.of(unit.dimension()).stream()
                                  .filter(Unit::listed)
                                  .map(Unit::symbol)
                                  .toList())),
                  style.width());
              return out.toString();
            });
  }

  private Optional<String> category(String word) {
    String upper = word.toUpperCase(Locale.ROOT);
    String name =
        upper.matches("[AD]C-?[0-9]+[A-E]?")
            ? upper.substring(0, 2)
                + "-"
                + upper.substring(2).replace("-", "").toLowerCase(Locale.ROOT)
            : word;
    return categories
        .word(name)
        .map(
            says -> {
              StringBuilder out = begun(name, "a utilization category, of contacts");
              Lines.wrap(out, "  ", "For " + says + ".", style.width());
              Lines.wrap(
                  out,
                  "  ",
                  "Written as ratings: {%s: 1 A at %s}; a rating in one category says nothing of"
                          .formatted(name, name.startsWith("D") ? "30 V" : "250 V")
                      + " another, nor of a higher voltage. From IEC 60947 and 61095 (from"
                      + " memory).",
                  style.width());
              return out.toString();
            });
  }

  private Optional<String> letter(String word) {
    if (!word.matches(LETTERS)) {
      return Optional.empty();
    }
    String letter = word.substring(0, 1);
    boolean direct = "NPQR".contains(letter);
    String volts = word.substring(1);
    Cited<Double> breaks = figure(letter, "break");
    Cited<Double> thermal = figure(letter, "thermal");
    StringBuilder out = begun(word, "a letter of pilot duty, of contacts that drive coils");
    Lines.wrap(
        out,
        "  ",
        "For %s current up to %s V: it breaks %s VA, and carries at most %s. That is %s; it says nothing of %s current. %s, %s."
            .formatted(
                direct ? "direct" : "alternating",
                volts,
                Math.round(breaks.value()),
                Printed.amps(thermal.value()),
                direct
                    ? "DC-13: %s at 24 V"
                        .formatted(Printed.amps(Math.min(breaks.value() / 24, thermal.value())))
                    : "AC-15: %s at 120 V, %s at 240 V"
                        .formatted(
                            Printed.amps(Math.min(breaks.value() / 120, thermal.value())),
                            Printed.amps(Math.min(breaks.value() / 240, thermal.value()))),
                direct ? "alternating" : "direct",
                breaks.source().cite(),
                breaks.place()),
        style.width());
    return Optional.of(out.toString());
  }

  private Cited<Double> figure(String letter, String column) {
    return tables
        .lookup("pilot-duty", Map.of("letter", letter), column)
        .orElseThrow(() -> new IllegalStateException("no letter " + letter));
  }

  private Optional<String> note(String word) {
    return SafetyNotes.text(word)
        .map(
            lines -> {
              StringBuilder out = begun(word, "a safety note: " + lines.get(0));
              lines.stream()
                  .skip(1)
                  .forEach(paragraph -> Lines.wrap(out, "  ", paragraph, style.width()));
              return out.toString();
            });
  }

  private StringBuilder begun(String word, String what) {
    return new StringBuilder(style.strong(word)).append("  ").append(what).append('\n');
  }
}
