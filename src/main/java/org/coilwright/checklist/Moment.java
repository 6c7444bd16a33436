package org.coilwright.checklist;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A date, with or without a time, as people write it: {@code 2026-11-25 14:30}, {@code 25.11.2026
 * 14:30}. One that can be read in two ways has no meaning here.
 */
record Moment(LocalDate date, Optional<LocalTime> time) {
  private static final String TIME = "(?:[ ,T]+(?<hour>[0-9]{1,2})[:.h](?<minute>[0-9]{2}).*)?";
  private static final Pattern ISO =
      Pattern.compile("(?<year>[0-9]{4})-(?<month>[0-9]{1,2})-(?<day>[0-9]{1,2})" + TIME);
  private static final Pattern POINTS =
      Pattern.compile("(?<day>[0-9]{1,2})\\. ?(?<month>[0-9]{1,2})\\. ?(?<year>[0-9]{4})" + TIME);
  private static final Pattern SLASHES =
      Pattern.compile("(?<one>[0-9]{1,2})/(?<two>[0-9]{1,2})/(?<year>[0-9]{4})" + TIME);
  private static final int MONTHS = 12;

  /** True if it was earlier for certain: of two on one day, both must say their time. */
  boolean isBefore(Moment other) {
    return date.isBefore(other.date)
        || (date.equals(other.date)
            && time.isPresent()
            && other.time.isPresent()
            && time.get().isBefore(other.time.get()));
  }

  /** What the text means. */
  static Optional<Moment> of(String text) {
    String plain = text.replaceAll("[\\s\\u00a0\\u202f]+", " ").strip();
    for (Pattern pattern : new Pattern[] {ISO, POINTS}) {
      Matcher matcher = pattern.matcher(plain);
      if (matcher.matches()) {
        return moment(matcher, matcher.group("day"), matcher.group("month"));
      }
    }
    Matcher slashes = SLASHES.matcher(plain);
    if (slashes.matches()) {
      int one = Integer.parseInt(slashes.group("one"));
      int two = Integer.parseInt(slashes.group("two"));
      // which comes first depends on the country, unless one of them cannot be a month
      if (one > MONTHS || one == two) {
        return moment(slashes, slashes.group("one"), slashes.group("two"));
      } else if (two > MONTHS) {
        return moment(slashes, slashes.group("two"), slashes.group("one"));
      }
    }
    return Optional.empty();
  }

  private static Optional<Moment> moment(Matcher matcher, String day, String month) {
    try {
      LocalDate date =
          LocalDate.of(
              Integer.parseInt(matcher.group("year")),
              Integer.parseInt(month),
              Integer.parseInt(day));
      Optional<String> hour = Optional.ofNullable(matcher.group("hour"));
      Optional<LocalTime> time =
          hour.map(
              h -> LocalTime.of(Integer.parseInt(h), Integer.parseInt(matcher.group("minute"))));
      return Optional.of(new Moment(date, time));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}
