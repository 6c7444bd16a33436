package org.coilwright.checklist;

import java.util.OptionalDouble;

/**
 * A reading beside what its row expects.
 *
 * @param place where it lies
 * @param value in the unit of the row; infinite over the range of the instrument; empty if it has
 *     none
 * @param why why it is unclear; otherwise empty
 */
record Compared(Place place, OptionalDouble value, String why) {
  /** Where a reading lies. */
  enum Place {
    WITHIN,
    OUTSIDE,
    UNCLEAR
  }

  /** Compares a text with what is expected. */
  static Compared of(String written, Expected expected, Texts texts) {
    if (expected instanceof Expected.Band band) {
      return of(ReadingText.read(written, band.unit(), texts), band, texts);
    } else if (expected instanceof Expected.Setting setting) {
      return SettingText.compare(written, setting.value(), texts);
    }
    throw new IllegalArgumentException("nothing is written there: " + expected);
  }

  private static Compared of(Reading reading, Expected.Band band, Texts texts) {
    double min = band.shownMin();
    OptionalDouble max = band.shownMax();
    if (reading instanceof Reading.Exact exact) {
      boolean within = exact.value() >= min && exact.value() <= max.orElse(Double.MAX_VALUE);
      return placed(within ? Place.WITHIN : Place.OUTSIDE, exact.value());
    } else if (reading instanceof Reading.Above above) {
      if (max.isPresent()) {
        return above.bound() >= max.getAsDouble()
            ? placed(Place.OUTSIDE, Double.POSITIVE_INFINITY)
            : unclear(texts.of("reading.range-larger"));
      }
      return above.bound() >= min
          ? placed(Place.WITHIN, above.bound())
          : unclear(texts.of("reading.range-below"));
    } else if (reading instanceof Reading.Below below) {
      if (below.bound() <= max.orElse(Double.MAX_VALUE) && min == 0) {
        return placed(Place.WITHIN, below.bound());
      }
      return below.bound() <= min
          ? placed(Place.OUTSIDE, below.bound())
          : unclear(texts.of("reading.range-smaller"));
    } else if (reading instanceof Reading.OverRange) {
      return max.isPresent()
          ? placed(Place.OUTSIDE, Double.POSITIVE_INFINITY)
          : unclear(texts.of("reading.range-end"));
    } else if (reading instanceof Reading.Unclear unclear) {
      return unclear(unclear.why());
    }
    throw new IllegalStateException("a reading of no kind: " + reading);
  }

  private static Compared placed(Place place, double value) {
    return new Compared(place, OptionalDouble.of(value), "");
  }

  private static Compared unclear(String why) {
    return new Compared(Place.UNCLEAR, OptionalDouble.empty(), why);
  }
}
