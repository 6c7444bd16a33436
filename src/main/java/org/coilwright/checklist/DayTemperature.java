package org.coilwright.checklist;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.checklist.Remark.Kind;

/**
 * How warm it was when the coils were measured, as written on the sheet.
 *
 * @param filledIn the whole sheet
 */
record DayTemperature(FilledIn filledIn, Texts texts) {
  private static final String UNIT = "°C";

  /** Nobody wires at less, in °C. */
  private static final double COLDEST = -30;

  /** Or at more. */
  private static final double WARMEST = 60;

  /** In °C; empty if it is not stated or cannot be read in one way. */
  OptionalDouble celsius() {
    return filledIn
        .text(Blanks.temperature())
        .flatMap(
            text ->
                ReadingText.read(text, UNIT, texts) instanceof Reading.Exact exact
                        && exact.value() >= COLDEST
                        && exact.value() <= WARMEST
                    ? Optional.of(OptionalDouble.of(exact.value()))
                    : Optional.empty())
        .orElse(OptionalDouble.empty());
  }

  /** As it stands behind a band: that it is not stated is said as well. */
  String text() {
    return celsius().isPresent()
        ? texts.of("judge.temperature", texts.figure(plain(celsius().getAsDouble())))
        : texts.of("judge.temperature-not-stated");
  }

  private static String plain(double celsius) {
    return BigDecimal.valueOf(celsius).stripTrailingZeros().toPlainString();
  }

  /** What is wrong with it; the rows are then judged by their wide bands. */
  Optional<Remark> remark() {
    Blank blank = Blanks.temperature();
    Optional<String> written = filledIn.text(blank);
    if (celsius().isPresent()) {
      return Optional.empty();
    }
    return Optional.of(
        Remark.of(
            written.isEmpty() ? Kind.MISSING : Kind.UNCLEAR,
            texts.of("temperature.label"),
            blank.name(),
            written.isEmpty()
                ? texts.of("judge.no-temperature")
                : texts.of("judge.temperature-unclear", written.get())));
  }
}
