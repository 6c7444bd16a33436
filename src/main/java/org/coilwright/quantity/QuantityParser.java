package org.coilwright.quantity;

import java.math.BigDecimal;
import java.util.Optional;
import org.coilwright.quantity.Cursor.Misread;

/**
 * Reads values as a netlist writes them: {@code 24 V DC}, {@code 24 V ± 10 %}, {@code 24 V +20 %
 * -15 %}, {@code 22..28 V}, {@code 16 A at 250 V}, {@code 18 AWG}.
 */
public final class QuantityParser {
  private static final Wanted AREA = Wanted.of(Dimension.AREA);
  private static final double MM2_OF_A_KCMIL = Math.PI / 4 * 0.0254 * 0.0254 * 1000;

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
      boolean before = cursor.takeWord("AWG");
      int start = cursor.at();
      BigDecimal number = cursor.number();
      boolean aught = cursor.take("/0");
      if (before || cursor.takeWord("AWG")) {
        end(cursor, "18 AWG");
        return new Parsed.Good<>(gauge(number, aught, start, text));
      }
      if (aught) {
        throw new Misread(0, text.length(), "this is a gauge number", "write AWG after it");
      }
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

  private static ConductorSize gauge(BigDecimal number, boolean aught, int start, String text) {
    String remedy = "write a whole gauge from 36 AWG to 1 AWG, or 1/0 AWG to 4/0 AWG";
    if (number.stripTrailingZeros().scale() > 0) {
      throw new Misread(start, text.length() - start, "a gauge is a whole number", remedy);
    }
    double gauge = aught ? 1 - number.doubleValue() : number.doubleValue();
    boolean known =
        aught
            ? gauge <= 0 && gauge >= ConductorSize.THICKEST_AWG
            : gauge >= 0 && gauge <= ConductorSize.THINNEST_AWG;
    if (!known) {
      throw new Misread(start, text.length() - start, "there is no such gauge", remedy);
    }
    return ConductorSize.ofAwg((int) gauge);
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
