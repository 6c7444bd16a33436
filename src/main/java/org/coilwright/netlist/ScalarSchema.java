package org.coilwright.netlist;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.coilwright.netlist.Shape.Choice;
import org.coilwright.netlist.Shape.Expression;
import org.coilwright.netlist.Shape.Form;
import org.coilwright.netlist.Shape.MainsVoltage;
import org.coilwright.netlist.Shape.Measure;
import org.coilwright.netlist.Shape.Phrase;
import org.coilwright.netlist.Shape.Pin;
import org.coilwright.netlist.Shape.Rated;
import org.coilwright.netlist.Shape.Scalar;
import org.coilwright.netlist.Shape.Size;
import org.coilwright.netlist.Shape.Text;
import org.coilwright.netlist.Shape.Whole;
import org.coilwright.netlist.Shape.YesNo;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.QuantityPattern;
import org.coilwright.quantity.Unit;
import org.coilwright.quantity.Wanted;

/**
 * Single values as JSON Schema. YAML turns bare digits into numbers, and YAML 1.1 the word NO into
 * false, where the reader sees text; so a number or a truth value is let pass wherever such a text
 * is a good one.
 */
final class ScalarSchema {
  private ScalarSchema() {}

  static Map<String, Object> of(Scalar<?> scalar) {
    Map<String, Object> schema = new LinkedHashMap<>();
    if (scalar instanceof Text) {
      schema.put("type", List.of("string", "number", "boolean"));
      schema.put("pattern", "\\S");
      schema.put("maxLength", Text.LONGEST);
    } else if (scalar instanceof Form form) {
      boolean anyWord = form.fits("1") && form.fits("NO");
      schema.put("type", anyWord ? List.of("string", "integer", "boolean") : "string");
      schema.put("pattern", "^(" + form.pattern().pattern() + ")$");
    } else if (scalar instanceof Choice choice) {
      schema.put("enum", words(choice));
    } else if (scalar instanceof YesNo) {
      List<Object> words = new ArrayList<>(List.of(true, false));
      words.addAll(YesNo.YES);
      words.addAll(YesNo.NO);
      schema.put("enum", words);
    } else if (scalar instanceof Whole whole) {
      schema.put("type", List.of("integer", "string"));
      schema.put("minimum", whole.least());
      schema.put("maximum", whole.most());
      schema.put("pattern", "^(" + Whole.DIGITS.pattern() + ")$");
    } else if (scalar instanceof Measure measure) {
      quantity(schema, measure.wanted());
      schema.put(
          "pattern",
          measure.kindNeeded()
              ? QuantityPattern.quantityWithKind(measure.wanted())
              : QuantityPattern.quantity(measure.wanted()));
    } else if (scalar instanceof MainsVoltage) {
      quantity(schema, MainsVoltage.WANTED);
      schema.put("pattern", QuantityPattern.mainsVoltage());
    } else if (scalar instanceof Rated rated) {
      quantity(schema, rated.amount());
      schema.put("pattern", QuantityPattern.rating(rated.amount(), rated.at(), rated.perPole()));
    } else if (scalar instanceof Size) {
      schema.put("type", "string");
      schema.put("pattern", QuantityPattern.conductorSize());
    } else if (scalar instanceof Pin) {
      schema.put("type", "string");
      schema.put("pattern", "^" + WirePhrase.TERMINAL + "$");
    } else if (scalar instanceof Phrase) {
      schema.put("type", "string");
      schema.put("pattern", "^" + WirePhrase.PHRASE + "$");
    } else if (scalar instanceof Expression) {
      schema.put("type", "string");
      schema.put("pattern", "^[\\sA-Za-z0-9_.()-]+$");
    }
    return schema;
  }

  /** What a value is called that stands in many places; empty for one that is written out. */
  static String name(Scalar<?> scalar) {
    if (scalar instanceof Measure measure) {
      return "value-" + name(measure.wanted()) + (measure.kindNeeded() ? "-ac-or-dc" : "");
    }
    if (scalar instanceof Rated rated) {
      String at = rated.at().map(wanted -> "-at-" + name(wanted)).orElse("");
      return "rating-" + name(rated.amount()) + at + (rated.perPole() ? "-per-pole" : "");
    }
    return scalar instanceof Size ? "value-conductor-size" : "";
  }

  private static String name(Wanted wanted) {
    String dimensions =
        wanted.dimensions().stream()
            .map(dimension -> dimension.name().toLowerCase(Locale.ROOT).replace('_', '-'))
            .collect(Collectors.joining("-or-"));
    String bare =
        wanted.bare() && wanted.dimensions().get(0) != Dimension.COUNT ? "-or-number" : "";
    String least =
        switch (wanted.least()) {
          case ANY -> "-of-any-sign";
          case ZERO -> "-or-zero";
          case ABOVE_ZERO -> "";
        };
    return dimensions + bare + least;
  }

  /** The same for the name of a key, which is always text. */
  static Map<String, Object> key(Scalar<String> scalar) {
    Map<String, Object> schema = of(scalar);
    schema.remove("type");
    return schema;
  }

  private static void quantity(Map<String, Object> schema, Wanted wanted) {
    schema.put("type", wanted.bare() ? List.of("string", "number") : "string");
    if (wanted.bare()) {
      if (wanted.dimensions().get(0) == Dimension.RATIO) {
        schema.put("maximum", 1);
      }
      switch (wanted.least()) {
        case ANY -> {}
        case ZERO -> schema.put("minimum", 0);
        case ABOVE_ZERO -> schema.put("exclusiveMinimum", 0);
      }
    }
    List<String> examples = new ArrayList<>();
    List<String> units = new ArrayList<>();
    for (Dimension dimension : wanted.dimensions()) {
      examples.add(dimension.example());
      Unit.of(dimension).stream().filter(Unit::listed).map(Unit::symbol).forEach(units::add);
    }
    schema.put("$comment", "units: " + String.join(", ", units));
    schema.put("examples", examples);
  }

  private static List<Object> words(Choice choice) {
    List<Object> words = new ArrayList<>();
    for (String word : choice.words()) {
      words.add(word);
      if (word.matches("[0-9]")) {
        words.add(Integer.valueOf(word));
      } else if (YesNo.NO.contains(word)) {
        words.add(false);
      }
    }
    return words;
  }
}
