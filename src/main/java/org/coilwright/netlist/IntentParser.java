package org.coilwright.netlist;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.coilwright.netlist.Tree.Leaf;
import org.coilwright.quantity.Parsed;
import org.coilwright.quantity.Parsed.Bad;
import org.coilwright.quantity.Parsed.Good;

/** Reads {@code U1.heat and (S1 or not B1)}; {@code not} binds closest, then {@code and}. */
final class IntentParser {
  static final String CONTACT = WirePhrase.DESIGNATION + "(\\." + WirePhrase.DESIGNATION + ")?";

  private static final Pattern ONE_CONTACT = Pattern.compile(CONTACT);
  private static final Pattern WORD = Pattern.compile("[()]|[^()\\s]+");
  private static final int MOST_WORDS = 200;
  private static final int DEEPEST = 20;
  private static final String EXAMPLE = "write it like U1.heat and (S1 or not B1)";

  private final Leaf leaf;
  private final List<Written<String>> words = new ArrayList<>();
  private final List<Integer> offsets = new ArrayList<>();
  private int at;
  private int depth;

  private IntentParser(Leaf leaf) {
    this.leaf = leaf;
    Matcher matcher = WORD.matcher(leaf.text());
    while (matcher.find() && words.size() <= MOST_WORDS) {
      words.add(leaf.piece(matcher.start(), matcher.end() - matcher.start()));
      offsets.add(matcher.start());
    }
  }

  static Parsed<Intent> parse(Leaf leaf) {
    IntentParser parser = new IntentParser(leaf);
    try {
      if (parser.words.size() > MOST_WORDS) {
        throw parser.trouble("the expression is longer than anyone can follow", "shorten it");
      }
      Intent intent = parser.or();
      if (parser.at < parser.words.size()) {
        throw parser.trouble("\"" + parser.shown() + "\" does not belong here", EXAMPLE);
      }
      return new Good<>(intent);
    } catch (Trouble e) {
      return e.bad;
    }
  }

  private Intent or() {
    Intent left = and();
    while (take("or")) {
      left = new Intent.Or(left, and());
    }
    return left;
  }

  private Intent and() {
    Intent left = not();
    while (take("and")) {
      left = new Intent.And(left, not());
    }
    return left;
  }

  private Intent not() {
    if (++depth > DEEPEST) {
      throw trouble("the expression is nested too deeply", "take brackets and \"not\" out");
    }
    try {
      return take("not") ? new Intent.Not(not()) : primary();
    } finally {
      depth--;
    }
  }

  private Intent primary() {
    if (take("(")) {
      Intent inner = or();
      if (!take(")")) {
        throw trouble("a bracket is not closed", "add )");
      }
      return inner;
    }
    if (at >= words.size()) {
      throw trouble("the expression ends too early", EXAMPLE);
    }
    String word = words.get(at).text();
    boolean operator = List.of("and", "or", "not", ")").contains(word);
    if (operator || !ONE_CONTACT.matcher(word).matches()) {
      String what =
          operator
              ? "a contact is missing before \"" + word + "\""
              : "\"" + shown() + "\" is not a contact";
      throw trouble(what, EXAMPLE);
    }
    return new Intent.Name(words.get(at++));
  }

  private boolean take(String word) {
    boolean here = at < words.size() && words.get(at).text().equals(word);
    at += here ? 1 : 0;
    return here;
  }

  private String shown() {
    return Problems.shown(words.get(at).text());
  }

  private Trouble trouble(String what, String remedy) {
    boolean end = at >= words.size();
    int offset = end ? 0 : offsets.get(at);
    int length = end ? Math.max(1, leaf.text().length()) : words.get(at).text().length();
    return new Trouble(new Bad<>(offset, length, what, remedy));
  }

  /** Ends the parse; it never leaves this class. */
  private static final class Trouble extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final transient Bad<Intent> bad;

    Trouble(Bad<Intent> bad) {
      super(bad.what(), null, false, false);
      this.bad = bad;
    }
  }
}
