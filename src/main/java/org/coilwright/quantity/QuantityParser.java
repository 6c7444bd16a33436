package org.coilwright.quantity;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.coilwright.quantity.Cursor.Misread;

/**
 * Reads values as a netlist writes them: {@code 24 V DC}, {@code 24 V ± 10 %}, {@code 24 V +20 %
 * -15 %}, {@code 22..28 V}, {@code 16 A at 250 V}, {@code 18 AWG}.
 */
public final class QuantityParser {
  private static final Wanted AREA = Wanted.of(Dimension.AREA);
  private static final double MM2_OF_A_KCMIL = Math.PI / 4 * 0.0254 * 0.0254 * 1000;

  private static final String NUMBER = "(?<%s>[0-9]{1,2}(\\h*/0)?)";
  private static final Pattern GAUGE =
      Pattern.compile(
          "\\h*((?i:AWG)\\h*"
              + NUMBER.formatted("after")
              + "|"
              + NUMBER.formatted("before")
              + "\\h*(?i:AWG))\\h*");

  private QuantityParser() {}

  /** A value, with tolerance or range. */
  public static Parsed<Quantity> quantity(String text, Wanted wanted) {
    try {
      Cursor cursor = begin(text);
      Quantity quantity = ValueReader.value(cursor, wanted);
      end(cursor, wanted.dimensions().get(0).example());
      return new Parsed.Good<>(quantity);
    } catch (Misread e) {
      return e.asBad();
    }
  }

  /**
   * The mains of a split-phase service: {@code 120/240 V}, the second twice the first.
   *
   * @return the voltage line to line, the second one
   */
  public static Parsed<Quantity> splitVoltage(String text) {
    try {
      Cursor cursor = begin(text);
      BigDecimal half = cursor.number();
      if (!cursor.take("/")) {
        throw new Misread(
            0, text.length(), "split mains have two voltages", "write both: 120/240 V");
      }
      int second = cursor.at();
      Quantity whole = ValueReader.value(cursor, Wanted.of(Dimension.VOLTAGE));
      end(cursor, "120/240 V");
      if (Math.abs(whole.nominal() - 2 * half.doubleValue()) > 1e-9 * whole.nominal()) {
        throw new Misread(
            second,
            text.length() - second,
            "the second voltage of split mains is twice the first",
            "write them as 120/240 V");
      }
      return new Parsed.Good<>(whole);
    } catch (Misread e) {
      return e.asBad();
    }
  }

  /**
   * A value with the condition it holds at.
   *
   * @param at what may follow {@code at} or {@code for}; empty if nothing may
   * @param perPole true if {@code per pole} may follow
   */
  public static Parsed<Rating> rating(
      String text, Wanted amount, Optional<Wanted> at, boolean perPole) {
    try {
      Cursor cursor = begin(text);
      Quantity rated = ValueReader.value(cursor, amount);
      Optional<Quantity> condition = Optional.empty();
      int here = cursor.at();
      if (cursor.takeWord("at") || cursor.takeWord("for")) {
        if (at.isEmpty()) {
          throw new Misread(
              here, text.length() - here, "no condition is expected here", "end after the value");
        }
        condition = Optional.of(ValueReader.value(cursor, at.get()));
      }
      boolean each = perPole && cursor.takeWord("per") && cursor.takeWord("pole");
      String example = amount.dimensions().get(0).example();
      end(cursor, at.map(c -> example + " at " + c.dimensions().get(0).example()).orElse(example));
      return new Parsed.Good<>(new Rating(rated, condition, each));
    } catch (Misread e) {
      return e.asBad();
    }
  }

  /** A conductor's cross-section: {@code 2.5 mm²}, {@code 18 AWG}, {@code 2/0 AWG}. */
  public static Parsed<ConductorSize> conductorSize(String text) {
    try {
      Cursor cursor = begin(text);
      if (text.toUpperCase(Locale.ROOT).contains("AWG")) {
        return new Parsed.Good<>(gauge(text));
      }
      int start = cursor.at();
      BigDecimal number = cursor.number();
      if (cursor.takeWord("kcmil")) {
        end(cursor, "250 kcmil");
        return new Parsed.Good<>(positive(number.doubleValue() * MM2_OF_A_KCMIL, text));
      }
      cursor.back(start);
      Quantity area = ValueReader.value(cursor, AREA);
      end(cursor, "0.75 mm²");
      if (!area.isExact()) {
        throw new Misread(0, text.length(), "a conductor has one size", "write 0.75 mm² or 18 AWG");
      }
      return new Parsed.Good<>(positive(area.nominal(), text));
    } catch (Misread e) {
      return e.asBad();
    }
  }

  private static ConductorSize positive(double mm2, String text) {
    if (mm2 <= 0) {
      throw new Misread(0, text.length(), "a conductor size is above zero", "write 0.75 mm²");
    }
    return ConductorSize.ofMm2(mm2);
  }

  private static ConductorSize gauge(String text) {
    Matcher matcher = GAUGE.matcher(text);
    String digits =
        !matcher.matches()
            ? ""
            : matcher.group("after") == null ? matcher.group("before") : matcher.group("after");
    boolean aught = digits.endsWith("/0");
    int number = digits.isEmpty() ? -1 : Integer.parseInt(digits.split("[^0-9]", 2)[0]);
    boolean known =
        aught
            ? number >= 1 && number <= 1 - ConductorSize.THICKEST_AWG
            : number >= 1 && number <= ConductorSize.THINNEST_AWG;
    if (!known) {
      throw new Misread(
          0,
          text.length(),
          "there is no such gauge",
          "write a whole gauge from 36 AWG to 1 AWG, or 1/0 AWG to 4/0 AWG");
    }
    return ConductorSize.ofAwg(aught ? 1 - number : number);
  }

  private static Cursor begin(String text) {
    Cursor cursor = new Cursor(text);
    if (cursor.atEnd()) {
      throw new Misread(0, 1, "nothing is written here", "write a value");
    }
    return cursor;
  }

  private static void end(Cursor cursor, String example) {
    if (!cursor.atEnd()) {
      String rest = cursor.rest();
      throw new Misread(
          cursor.at(),
          rest.length(),
          "\"" + Words.shortened(rest) + "\" does not belong here",
          "write it like " + example);
    }
  }
}
