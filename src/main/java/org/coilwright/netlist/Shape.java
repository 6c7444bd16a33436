// Over 250 lines: every shape of one sealed type.
package org.coilwright.netlist;

import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.coilwright.netlist.Tree.Leaf;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Parsed;
import org.coilwright.quantity.Parsed.Bad;
import org.coilwright.quantity.Parsed.Good;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.QuantityParser;
import org.coilwright.quantity.Rating;
import org.coilwright.quantity.Wanted;
import org.coilwright.quantity.Worded;
import org.coilwright.quantity.Words;

/**
 * What may stand at a place of the netlist. The whole format is one value of this type; the reader
 * and the JSON Schema both follow it, so they cannot differ.
 */
sealed interface Shape {

  /** A single word or value. */
  sealed interface Scalar<T> extends Shape {
    /** What the word means, or what is wrong with it. */
    Parsed<T> parse(Leaf leaf);
  }

  /** Free text, not empty; line ends in it become spaces. */
  record Text() implements Scalar<String> {
    static final int LONGEST = 1000;
    private static final Pattern LINE_END = Pattern.compile("\\s*[\\r\\n\\t]+\\s*");

    @Override
    public Parsed<String> parse(Leaf leaf) {
      String text = LINE_END.matcher(leaf.text().strip()).replaceAll(" ");
      if (text.codePoints().anyMatch(FileText::isHarmful)) {
        return new Bad<>(0, 1, "a control character stands in this text", "take it out");
      }
      return text.codePointCount(0, text.length()) <= LONGEST
          ? new Good<>(text)
          : new Bad<>(0, 1, "the text is longer than " + LONGEST + " characters", "shorten it");
    }
  }

  /**
   * Text of a certain form.
   *
   * @param pattern for the whole text, in the dialect of JSON Schema
   * @param noun what it is, in a sentence: {@code a pin}
   * @param hint how to write it
   */
  record Form(Pattern pattern, String noun, String hint) implements Scalar<String> {
    static Form of(String regex, String noun, String hint) {
      return new Form(Pattern.compile(regex), noun, hint);
    }

    boolean fits(String text) {
      return pattern.matcher(text).matches();
    }

    @Override
    public Parsed<String> parse(Leaf leaf) {
      return fits(leaf.text())
          ? new Good<>(leaf.text())
          : new Bad<>(
              0,
              leaf.text().length(),
              "\"" + Problems.shown(leaf.text()) + "\" is not " + noun,
              hint);
    }
  }

  /** One of a few words. */
  record Choice(List<String> words) implements Scalar<String> {
    static Choice of(String... words) {
      return new Choice(List.of(words));
    }

    static <E extends Enum<E> & Worded> Choice of(Class<E> list) {
      return new Choice(Worded.words(list));
    }

    @Override
    public Parsed<String> parse(Leaf leaf) {
      String text = leaf.text();
      if (words.contains(text)) {
        return new Good<>(text);
      }
      String what = "\"" + Problems.shown(text) + "\" cannot stand here";
      String remedy =
          Meant.by(text, words)
              .or(() -> NearNames.advice(text, words, ""))
              .orElse("write " + Words.either(words));
      return new Bad<>(0, text.length(), what, remedy);
    }
  }

  /** Yes or no. */
  record YesNo() implements Scalar<Boolean> {
    static final List<String> YES = List.of("true", "True", "TRUE", "yes", "Yes", "YES");
    static final List<String> NO = List.of("false", "False", "FALSE", "no", "No", "NO");

    @Override
    public Parsed<Boolean> parse(Leaf leaf) {
      return YES.contains(leaf.text())
          ? new Good<>(true)
          : NO.contains(leaf.text())
              ? new Good<>(false)
              : new Bad<>(
                  0,
                  leaf.text().length(),
                  "\"" + Problems.shown(leaf.text()) + "\" is neither yes nor no",
                  "write true or false");
    }
  }

  /** A whole number. */
  record Whole(int least, int most) implements Scalar<Integer> {
    static final Pattern DIGITS = Pattern.compile("[1-9][0-9]{0,8}|0");

    @Override
    public Parsed<Integer> parse(Leaf leaf) {
      if (DIGITS.matcher(leaf.text()).matches()) {
        int number = Integer.parseInt(leaf.text());
        if (number >= least && number <= most) {
          return new Good<>(number);
        }
      }
      String range = least == most ? "write " + least : "write one from " + least + " to " + most;
      String what = "\"" + Problems.shown(leaf.text()) + "\" is not a whole number that fits";
      return new Bad<>(0, leaf.text().length(), what, range);
    }
  }

  /**
   * A value with its unit.
   *
   * @param kindNeeded true if AC or DC must be written
   */
  record Measure(Wanted wanted, boolean kindNeeded) implements Scalar<Quantity> {
    @Override
    public Parsed<Quantity> parse(Leaf leaf) {
      Parsed<Quantity> parsed = QuantityParser.quantity(leaf.text(), wanted);
      if (kindNeeded
          && parsed instanceof Good<Quantity> good
          && good.value().kind() == CurrentKind.UNSTATED) {
        String text = leaf.text().strip();
        return new Bad<>(
            0,
            leaf.text().length(),
            "AC or DC is missing",
            "write " + text + " DC or " + text + " AC");
      }
      return parsed;
    }
  }

  /** A mains voltage: {@code 230 V ± 10 %}, or {@code 120/240 V} for split mains. */
  record MainsVoltage() implements Scalar<Quantity> {
    private static final Pattern SPLIT = Pattern.compile("\\s*[0-9.]+\\s*/.*");
    static final Wanted WANTED = Wanted.of(org.coilwright.quantity.Dimension.VOLTAGE);

    @Override
    public Parsed<Quantity> parse(Leaf leaf) {
      return isSplit(leaf.text())
          ? QuantityParser.splitVoltage(leaf.text())
          : QuantityParser.quantity(leaf.text(), WANTED);
    }

    /** True for a text with two voltages. */
    static boolean isSplit(String text) {
      return SPLIT.matcher(text).matches();
    }
  }

  /** A value that holds under a condition. */
  record Rated(Wanted amount, Optional<Wanted> at, boolean perPole) implements Scalar<Rating> {
    @Override
    public Parsed<Rating> parse(Leaf leaf) {
      return QuantityParser.rating(leaf.text(), amount, at, perPole);
    }
  }

  /** A conductor's cross-section. */
  record Size() implements Scalar<ConductorSize> {
    @Override
    public Parsed<ConductorSize> parse(Leaf leaf) {
      return QuantityParser.conductorSize(leaf.text());
    }
  }

  /** A pin of a part: {@code K1.A1}. */
  record Pin() implements Scalar<Written<Terminal>> {
    @Override
    public Parsed<Written<Terminal>> parse(Leaf leaf) {
      return WirePhrase.terminal(leaf, 0, leaf.text().length());
    }
  }

  /** A wire as a phrase: {@code U1.2 to K1.A1 in W1}. */
  record Phrase() implements Scalar<WirePhrase> {
    @Override
    public Parsed<WirePhrase> parse(Leaf leaf) {
      return WirePhrase.parse(leaf);
    }
  }

  /** When a load shall be on. */
  record Expression() implements Scalar<Intent> {
    @Override
    public Parsed<Intent> parse(Leaf leaf) {
      return IntentParser.parse(leaf);
    }
  }

  /** A list. */
  record Listing(Shape item, int least, int most) implements Shape {}

  /**
   * Keys that the user names.
   *
   * @param noun what one is called, in a sentence: {@code a part}
   */
  record Named(String noun, Scalar<String> key, Shape value, int least) implements Shape {}

  /** A phrase, or the same in keys. */
  record Either(Scalar<?> phrase, Fields fields) implements Shape {}

  /**
   * A part, its keys chosen by the word after {@code is:}.
   *
   * @param whole false for a type: the parts that use it add the keys it lacks
   */
  record ByKind(Map<String, Fields> kinds, boolean whole) implements Shape {}

  /**
   * A fixed set of keys.
   *
   * @param noun what it describes, in a sentence: {@code a coil}
   * @param sets key sets of which exactly one must be there, whole; none if empty
   */
  record Fields(String noun, Map<String, Key> byName, List<List<String>> sets) implements Shape {
    static Fields of(String noun, Key... keys) {
      return of(noun, List.of(keys));
    }

    static Fields of(String noun, List<Key> keys) {
      Map<String, Key> byName = new LinkedHashMap<>();
      keys.forEach(key -> byName.put(key.name(), key));
      return new Fields(noun, Collections.unmodifiableMap(byName), List.of());
    }

    /** The same, with key sets of which exactly one must be there. */
    Fields either(String... sets) {
      return new Fields(
          noun, byName, Arrays.stream(sets).map(set -> List.of(set.split(" "))).toList());
    }

    /** What is wrong with the choice among the key sets that these keys make; empty if nothing. */
    Optional<String> choiceAmong(Set<String> written) {
      List<List<String>> begun =
          sets.stream().filter(set -> set.stream().anyMatch(written::contains)).toList();
      if (sets.isEmpty() || (begun.size() == 1 && written.containsAll(begun.get(0)))) {
        return Optional.empty();
      }
      String ways = String.join(", or ", sets.stream().map(set -> Words.all(set)).toList());
      return Optional.of(noun + (begun.size() > 1 ? " has either " : " needs ") + ways);
    }

    Optional<Key> key(String name) {
      return Optional.ofNullable(byName.get(name));
    }

    Collection<Key> keys() {
      return byName.values();
    }

    List<String> names() {
      return List.copyOf(byName.keySet());
    }
  }
}
