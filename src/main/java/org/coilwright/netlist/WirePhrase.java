package org.coilwright.netlist;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.coilwright.netlist.Tree.Leaf;
import org.coilwright.quantity.Parsed;
import org.coilwright.quantity.Parsed.Bad;
import org.coilwright.quantity.Parsed.Good;

/** A wire said in one phrase: {@code U1.2 to K1.A1 in W1}. */
record WirePhrase(Written<Terminal> from, Written<Terminal> to, Optional<Written<String>> run) {

  static final String DESIGNATION = "[A-Za-z][A-Za-z0-9_-]{0,39}";
  static final String PIN = "[A-Za-z0-9+~/_-]{1,16}";
  static final String TERMINAL = DESIGNATION + "\\." + PIN;
  static final String PHRASE =
      "\\s*" + TERMINAL + "\\s+to\\s+" + TERMINAL + "(\\s+in\\s+" + DESIGNATION + ")?\\s*";

  private static final Pattern WORD = Pattern.compile("\\S+");
  private static final Pattern ONE_TERMINAL =
      Pattern.compile("(?<part>" + DESIGNATION + ")\\.(?<pin>" + PIN + ")");

  static Parsed<WirePhrase> parse(Leaf leaf) {
    String text = leaf.text();
    Matcher words = WORD.matcher(text);
    int[] starts = new int[6];
    int[] ends = new int[6];
    int n = 0;
    while (n < 6 && words.find()) {
      starts[n] = words.start();
      ends[n++] = words.end();
    }
    boolean joined = n >= 2 && text.substring(starts[1], ends[1]).equals("to");
    boolean laid = n < 4 || text.substring(starts[3], ends[3]).equals("in");
    if (!joined || !laid || (n != 3 && n != 5)) {
      return new Bad<>(
          0,
          text.length(),
          "\"" + Problems.shown(text) + "\" is not a wire",
          "write it like U1.2 to K1.A1, or U1.2 to K1.A1 in W1");
    }
    Parsed<Written<Terminal>> from = terminal(leaf, starts[0], ends[0]);
    Parsed<Written<Terminal>> to = terminal(leaf, starts[2], ends[2]);
    if (!(from instanceof Good<Written<Terminal>> first)) {
      return bad(from);
    }
    if (!(to instanceof Good<Written<Terminal>> second)) {
      return bad(to);
    }
    Optional<Written<String>> run =
        n == 5 ? Optional.of(leaf.piece(starts[4], ends[4] - starts[4])) : Optional.empty();
    return new Good<>(new WirePhrase(first.value(), second.value(), run));
  }

  static Parsed<Written<Terminal>> terminal(Leaf leaf, int start, int end) {
    Written<String> piece = leaf.piece(start, end - start);
    Matcher matcher = ONE_TERMINAL.matcher(piece.text());
    if (!matcher.matches()) {
      return new Bad<>(
          start,
          end - start,
          "\"" + Problems.shown(piece.text()) + "\" is not a pin of a part",
          "write the part, a point and the pin: K1.A1");
    }
    Terminal terminal = new Terminal(matcher.group("part"), matcher.group("pin"));
    return new Good<>(new Written<>(terminal, piece.text(), piece.mark()));
  }

  private static <T> Parsed<T> bad(Parsed<?> parsed) {
    if (parsed instanceof Bad<?> bad) {
      return new Bad<>(bad.offset(), bad.length(), bad.what(), bad.remedy());
    }
    throw new IllegalStateException("only a bad result can be passed on");
  }
}
