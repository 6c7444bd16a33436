package org.coilwright.quantity;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Regular expressions for what {@link QuantityParser} reads, in the dialect of JSON Schema. They
 * are made of the same units. They cannot compare numbers, so they let pass some texts that the
 * parser refuses (a range that runs backwards), and never the other way round.
 */
public final class QuantityPattern {
  private static final String NUMBER = "[+\\-\u2212]?[0-9]{1,15}(\\.[0-9]{1,15})?";
  private static final String KIND = "(\\s*([Dd][Cc]|[Aa][Cc]))?";

  /** Spaces, those included that are not to be broken; some dialects leave them out of \\s. */
  private static final String GAP = "[\\s\\u00a0\\u2009\\u202f]";

  private static final String SIGN = "(±|\\+/-|\\+-)";

  private QuantityPattern() {}

  /** A value. */
  public static String quantity(Wanted wanted) {
    return whole(value(wanted));
  }

  /** A value for which AC or DC must be written. */
  public static String quantityWithKind(Wanted wanted) {
    return whole(value(wanted)).replaceFirst("\\^", "^(?=.*([Dd][Cc]|[Aa][Cc]))");
  }

  /** A mains voltage, split or not. */
  public static String mainsVoltage() {
    Wanted volts = Wanted.of(Dimension.VOLTAGE);
    return whole("(" + NUMBER + "\\s*/\\s*)?" + value(volts));
  }

  /** A value with its condition. */
  public static String rating(Wanted amount, Optional<Wanted> at, boolean perPole) {
    String condition = at.map(w -> "(\\s*([Aa][Tt]|[Ff][Oo][Rr])\\s*" + value(w) + ")?").orElse("");
    return whole(
        value(amount) + condition + (perPole ? "(\\s*[Pp][Ee][Rr]\\s+[Pp][Oo][Ll][Ee])?" : ""));
  }

  /** A conductor size. */
  public static String conductorSize() {
    String gauge = "[Aa][Ww][Gg]";
    String number = "[0-9]{1,2}(\\s*/0)?";
    return whole(
        "("
            + gauge
            + "\\s*"
            + number
            + "|"
            + number
            + "\\s*"
            + gauge
            + "|"
            + NUMBER
            + "\\s*[Kk][Cc][Mm][Ii][Ll]|"
            + value(Wanted.of(Dimension.AREA))
            + ")");
  }

  private static String value(Wanted wanted) {
    String unit = "(" + units(wanted.dimensions()) + (wanted.bare() ? "|" : "") + ")";
    boolean electric =
        wanted.dimensions().contains(Dimension.VOLTAGE)
            || wanted.dimensions().contains(Dimension.CURRENT);
    String kind = electric ? KIND : "";
    String range = NUMBER + "\\s*" + unit + "?" + kind + "\\s*\\.\\.\\s*" + NUMBER + "\\s*" + unit;
    String band = NUMBER + "\\s*(" + units(wanted.dimensions()) + "|%|K)?";
    String tolerance =
        "(\\s*"
            + SIGN
            + "\\s*"
            + band
            + "|\\s*[+\\-\u2212]\\s*"
            + band
            + "\\s*/?\\s*[+\\-\u2212]\\s*"
            + band
            + ")?";
    return "(" + range + kind + "|" + NUMBER + "\\s*" + unit + kind + tolerance + kind + ")";
  }

  private static String units(List<Dimension> dimensions) {
    return dimensions.stream()
        .flatMap(dimension -> Unit.of(dimension).stream())
        .map(unit -> unit.symbol().replace("^", "\\^"))
        .collect(Collectors.joining("|"));
  }

  private static String whole(String pattern) {
    return ("^\\s*" + pattern + "\\s*$").replace("\\s", GAP);
  }
}
