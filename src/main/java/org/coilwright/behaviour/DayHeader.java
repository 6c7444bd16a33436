package org.coilwright.behaviour;

import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The columns of a {@link DayFile}, and how a row of them is read. */
final class DayHeader {
  private static final int MILLIS = 1000;

  /** Nothing on a house connection is larger; a column in the wrong unit is. */
  static final double MOST_WATTS = 1e6;

  /** Three thousand years: whoever counts from another moment than midnight stays below. */
  static final double MOST_SECONDS = 1e11;

  /** As many as a house has loads; more is another kind of file. */
  private static final int MOST_COLUMNS = 100;

  private static final int LAST_YEAR = 9999;

  private final char separator;
  private final List<String> names = new ArrayList<>();
  private final List<Double> factors = new ArrayList<>();
  private final List<DayFile.Problem> problems = new ArrayList<>();

  /** How a time is written. */
  enum Form {
    SECONDS,
    LOCAL,
    WITH_OFFSET
  }

  /**
   * A time as written.
   *
   * @param millis what distances are measured on: the instant where the offset is written, so that
   *     a change of the clock is no gap
   * @param ofDay milliseconds since midnight by the clock on the wall
   */
  record Time(long millis, int ofDay, Form form) {
    private static final long DAY = 86_400_000;

    private static Time local(long millis, Form form) {
      return new Time(millis, (int) Math.floorMod(millis, DAY), form);
    }
  }

  /**
   * One row.
   *
   * @param fault empty if the row is sound
   */
  record Row(Time time, double pv, double other, String fault, String remedy) {
    private static Row bad(String fault, String remedy) {
      return new Row(NO_TIME, 0, 0, fault, remedy);
    }
  }

  private static final Time NO_TIME = new Time(0, 0, Form.SECONDS);

  private DayHeader(char separator) {
    this.separator = separator;
  }

  static DayHeader of(String line) {
    DayHeader header = new DayHeader(line.indexOf(';') >= 0 ? ';' : ',');
    long columns = 1 + line.chars().filter(c -> c == header.separator).count();
    if (columns > MOST_COLUMNS) {
      header.tell(
          "the first line names %s columns; at most %s are read".formatted(columns, MOST_COLUMNS),
          "keep time, pv, house and the loads that count");
      return header;
    }
    for (String cell : header.cells(line)) {
      header.column(cell);
    }
    for (String must : List.of("time", "pv", "house")) {
      if (!header.names.contains(must)) {
        header.tell("no column is named " + must, "name the columns: time,pv W,house W");
      }
    }
    return header;
  }

  List<DayFile.Problem> problems() {
    return problems;
  }

  /** The loads beside the house. */
  List<String> loads() {
    return names.stream().filter(n -> !List.of("time", "pv", "house").contains(n)).toList();
  }

  char separator() {
    return separator;
  }

  /** Watts for one of what each column is in; 0 for the time. */
  double[] factors() {
    return factors.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** Which column is the generation. */
  int sun() {
    return names.indexOf("pv");
  }

  private void column(String cell) {
    String text = cell.replace('[', ' ').replace(']', ' ').replace('(', ' ').replace(')', ' ');
    String[] words = text.strip().split("\\s+", -1);
    String name = words[0].toLowerCase(Locale.ROOT);
    if (name.isEmpty()) {
      tell("a column has no name", "name every column");
    } else if (names.contains(name)) {
      tell("two columns are named " + name, "give each its own name");
    }
    names.add(name);
    if (name.equals("time")) {
      factors.add(0.0);
      return;
    }
    String unit = words.length > 1 ? words[1] : "";
    switch (unit) {
      case "W" -> factors.add(1.0);
      case "kW" -> factors.add(1000.0);
      default -> {
        factors.add(1.0);
        tell(
            unit.isEmpty()
                ? "the column %s has no unit".formatted(name)
                : "the column %s is in %s, which is no unit of power here".formatted(name, unit),
            "write %s W or %s kW".formatted(name, name));
      }
    }
  }

  private void tell(String what, String remedy) {
    problems.add(new DayFile.Problem(1, what, remedy));
  }

  Row row(String line) {
    Time time = NO_TIME;
    double pv = 0;
    double other = 0;
    int from = 0;
    for (int i = 0; i < names.size(); i++) {
      boolean last = i == names.size() - 1;
      int to = last ? line.length() : line.indexOf(separator, from);
      if (to < 0 || (last && line.indexOf(separator, from) >= 0)) {
        return Row.bad(
            "%s values are needed, one for each column; this row has %s"
                .formatted(names.size(), cells(line).size()),
            "write one value for each column, with a point for decimals");
      }
      String cell = line.substring(from, to).strip();
      from = to + 1;
      try {
        if (names.get(i).equals("time")) {
          time = time(cell);
          continue;
        }
        double watts = number(cell) * factors.get(i);
        if (!(Math.abs(watts) <= MOST_WATTS)) {
          return Row.bad(
              "%s is %s: more than a house connection carries".formatted(names.get(i), cell),
              "check the unit in the first line");
        }
        if (watts < 0) {
          return Row.bad(
              "%s is negative: %s".formatted(names.get(i), cell),
              "generation and loads are written as positive power");
        }
        if (names.get(i).equals("pv")) {
          pv = watts;
        } else {
          other += watts;
        }
      } catch (NumberFormatException | DateTimeParseException e) {
        return Row.bad(
            "%s is no %s: \"%s\""
                .formatted(
                    names.get(i), names.get(i).equals("time") ? "time" : "number", shown(cell)),
            names.get(i).equals("time")
                ? "write seconds since midnight, or 2026-06-01T12:00:00"
                : "write a number with a point for decimals");
      }
    }
    return new Row(time, pv, other, "", "");
  }

  /** Digits, sign, point and exponent; not the further forms that Java knows. */
  private static double number(String cell) {
    for (int i = 0; i < cell.length(); i++) {
      if ("0123456789.+-eE".indexOf(cell.charAt(i)) < 0) {
        throw new NumberFormatException(cell);
      }
    }
    return Double.parseDouble(cell);
  }

  private static String shown(String cell) {
    String plain = cell.replaceAll("\\p{Cntrl}", "?");
    return plain.length() > 24 ? plain.substring(0, 24) + "…" : plain;
  }

  private List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    int from = 0;
    for (int to = line.indexOf(separator); to >= 0; to = line.indexOf(separator, from)) {
      cells.add(line.substring(from, to).strip());
      from = to + 1;
    }
    cells.add(line.substring(from).strip());
    return cells;
  }

  private static Time time(String cell) {
    if (cell.indexOf('T') > 0 || cell.indexOf('-') > 0) {
      String iso = cell.indexOf('T') > 0 ? cell : cell.replace(' ', 'T');
      if (iso.endsWith("Z") || iso.indexOf('+') > 0 || iso.lastIndexOf('-') > 10) {
        OffsetDateTime at = OffsetDateTime.parse(iso);
        refuseBeyond(at.getYear(), cell);
        int ofDay = (int) (at.toLocalTime().toNanoOfDay() / 1_000_000);
        return new Time(at.toInstant().toEpochMilli(), ofDay, Form.WITH_OFFSET);
      }
      LocalDateTime local = LocalDateTime.parse(iso);
      refuseBeyond(local.getYear(), cell);
      return Time.local(local.toInstant(ZoneOffset.UTC).toEpochMilli(), Form.LOCAL);
    }
    double seconds = number(cell);
    if (!(seconds >= 0 && seconds < MOST_SECONDS)) {
      throw new NumberFormatException(cell);
    }
    return Time.local(Math.round(seconds * MILLIS), Form.SECONDS);
  }

  /** Years of five digits and before the first are a slip, and their milliseconds may not fit. */
  private static void refuseBeyond(int year, String cell) {
    if (year < 0 || year > LAST_YEAR) {
      throw new NumberFormatException(cell);
    }
  }
}
