// Over 250 lines: every place that is filled in, in one list.
package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.checklist.Blank.Kind;
import org.coilwright.checklist.Checklist.AcceptedEntry;
import org.coilwright.checklist.Checklist.Instrument;
import org.coilwright.checklist.Checklist.OpenPoint;
import org.coilwright.checklist.Checklist.Signer;
import org.coilwright.checklist.Checklist.WireRow;

/**
 * Every place of a sheet that is filled in. The names are a contract: whoever fills a sheet in by
 * program goes by them.
 */
public final class Blanks {
  private Blanks() {}

  /** All of them, in the order of the page. */
  public static List<Blank> all(Checklist checklist) {
    List<Blank> all = new ArrayList<>();
    checklist.accepted().forEach(accepted -> all.add(initials(accepted)));
    for (OpenPoint point : checklist.openPoints()) {
      all.add(found(point));
      all.add(initials(point));
    }
    checklist.instruments().forEach(instrument -> all.addAll(instrument(instrument)));
    for (Step step : checklist.steps()) {
      if (step instanceof Section section) {
        all.addAll(section(checklist, section));
      } else if (step instanceof Hold hold) {
        numbered(hold.conditions(), (n, condition) -> all.add(condition(hold, n, condition)));
        all.addAll(hold(hold));
      }
    }
    for (int line = 1; line <= AGAIN_LINES; line++) {
      all.addAll(again(line));
    }
    all.add(remarks());
    checklist.signers().forEach(signer -> all.addAll(signer(signer)));
    return List.copyOf(all);
  }

  private static List<Blank> section(Checklist checklist, Section section) {
    List<Blank> all = new ArrayList<>();
    if (takingTemperature(checklist.steps()).equals(Optional.of(section))) {
      all.add(temperature());
    }
    boolean listed = false;
    for (TestLine line : section.lines()) {
      if (line.first().wire().isEmpty()) {
        all.addAll(line(line));
      } else if (!listed) {
        listed = true;
        for (WireRow wire : checklist.wires()) {
          all.add(wired(wire));
          checklist.testOf(wire).ifPresent(row -> all.addAll(line(new TestLine(List.of(row)))));
        }
      }
    }
    if (section.confirm()) {
      all.add(confirmed(section));
    }
    all.addAll(List.of(time(section), initials(section)));
    return all;
  }

  /** The places of a line: its fields, then its boxes. */
  public static List<Blank> line(TestLine line) {
    List<Blank> blanks = new ArrayList<>();
    TestRow first = line.first();
    if (first.manner() == Manner.LISTED) {
      return List.of(pass(first), reading(first));
    } else if (first.manner() == Manner.SWITCHED) {
      return List.of(pass(first), initials(first));
    } else if (first.manner() == Manner.DONE) {
      return List.of(pass(first));
    }
    for (TestRow row : line.rows()) {
      if (isRead(row)) {
        blanks.add(reading(row));
      } else if (line.ticksAlone(row)) {
        blanks.add(pass(row));
      }
    }
    blanks.addAll(List.of(pass(first), fail(first)));
    return blanks;
  }

  /** The section at whose head the temperature is written: the first that measures a winding. */
  public static Optional<Section> takingTemperature(List<Step> steps) {
    return steps.stream()
        .filter(Section.class::isInstance)
        .map(Section.class::cast)
        .filter(section -> section.rows().stream().anyMatch(row -> isWinding(row.expected())))
        .findFirst();
  }

  private static boolean isWinding(Expected expected) {
    return expected instanceof Expected.Band band && band.winding().isPresent();
  }

  /** How warm it is where the coils are, in °C. */
  public static Blank temperature() {
    return line("site.temperature", "tip.temperature");
  }

  private interface Each<T> {
    void take(int number, T item);
  }

  private static <T> void numbered(List<T> items, Each<T> each) {
    for (int i = 0; i < items.size(); i++) {
      each.take(i + 1, items.get(i));
    }
  }

  /** Make, number and end of calibration of an instrument. */
  public static List<Blank> instrument(Instrument instrument) {
    String of = instrument.name() + ".";
    return List.of(
        line(of + "make", "tip.make", instrument.text()),
        line(of + "number", "tip.number", instrument.text()),
        line(of + "calibrated", "tip.calibrated", instrument.text()));
  }

  /** Initials of whoever agrees with an accepted deviation. */
  public static Blank initials(AcceptedEntry accepted) {
    return line(
        accepted.name() + ".initials", "tip.accepted-initials", accepted.rule(), accepted.at());
  }

  /** What was found out about an open point. */
  public static Blank found(OpenPoint point) {
    return line(point.name() + ".found", "tip.found", point.number(), point.what());
  }

  /** Initials of whoever settled an open point. */
  public static Blank initials(OpenPoint point) {
    return line(point.name() + ".initials", "tip.point-initials", point.number());
  }

  /** That a wire is in and fast at both ends. */
  public static Blank wired(WireRow wire) {
    return tick(wire.name(), "tip.wired", wire.number(), wire.from(), wire.to());
  }

  /** True if something is written down; what is only seen has no space for it. */
  public static boolean isRead(TestRow row) {
    return row.manner() == Manner.READ || row.manner() == Manner.LISTED;
  }

  /** The reading of a row. */
  public static Blank reading(TestRow row) {
    String unit = row.expected().unit();
    return line(
        row.name() + ".reading",
        unit.isEmpty() ? "tip.setting" : "tip.reading",
        row.number(),
        row.action(),
        (row.where() + " " + row.label()).strip(),
        row.expected(),
        unit);
  }

  /** That the row came out as expected. */
  public static Blank pass(TestRow row) {
    return tick(
        row.name() + ".pass",
        row.manner().isDone() ? "tip.done" : "tip.pass",
        row.number(),
        row.action(),
        (row.where() + " " + row.label()).strip());
  }

  /** That the row did not come out as expected. */
  public static Blank fail(TestRow row) {
    return tick(row.name() + ".fail", "tip.fail", row.number(), row.action(), row.where());
  }

  /** Initials of whoever did the row. */
  public static Blank initials(TestRow row) {
    return line(row.name() + ".initials", "tip.row-initials", row.number());
  }

  /** That the limits from memory of a section were confirmed. */
  public static Blank confirmed(Section section) {
    return tick(section.name() + ".confirmed", "tip.section-confirmed", section.number());
  }

  /** When a section was done. */
  public static Blank time(Section section) {
    return line(section.name() + ".time", "tip.section-time", section.number());
  }

  /** Who did a section. */
  public static Blank initials(Section section) {
    return line(section.name() + ".initials", "tip.section-initials", section.number());
  }

  /**
   * That a condition of a hold point is met.
   *
   * @param number from 1
   */
  public static Blank condition(Hold hold, int number, String text) {
    return tick(hold.name() + ".condition-" + number, "tip.condition", hold.title(), text);
  }

  /** Name, signature, date and time at a hold point. */
  public static List<Blank> hold(Hold hold) {
    String of = hold.name() + ".";
    return List.of(
        line(of + "name", "tip.hold-name", hold.title()),
        new Blank(of + "signature", Kind.SIGNATURE, "tip.hold-signature", List.of(hold.title())),
        line(of + "time", "tip.hold-time", hold.title()));
  }

  /** Lines for what was mended and done again. */
  public static final int AGAIN_LINES = 4;

  /**
   * A row that was mended and done again: which, what was done, the new reading, initials.
   *
   * @param line from 1
   */
  public static List<Blank> again(int line) {
    String of = "again-" + line + ".";
    return List.of(
        line(of + "row", "tip.again-row", line),
        line(of + "what", "tip.again-what", line),
        line(of + "reading", "tip.again-reading", line),
        line(of + "initials", "tip.again-initials", line));
  }

  /** Remarks. */
  public static Blank remarks() {
    return new Blank("sign-off.remarks", Kind.LINES, "sign-off.remarks", List.of());
  }

  /** Name, licence, date and signature of a signer. */
  public static List<Blank> signer(Signer signer) {
    String of = signer.name() + ".";
    return List.of(
        line(of + "name", "tip.signer-name", signer.text()),
        line(of + "licence", "tip.signer-licence", signer.text()),
        line(of + "date", "tip.signer-date", signer.text()),
        new Blank(
            of + "signature", Kind.SIGNATURE, "tip.signer-signature", List.of(signer.text())));
  }

  /** Signature of a final record; no part of the sheet itself. */
  public static Blank recordSignature() {
    return new Blank("record.signature", Kind.SIGNATURE, "record.signature", List.of());
  }

  private static Blank line(String name, String text, Object... arguments) {
    return new Blank(name, Kind.LINE, text, List.of(arguments));
  }

  private static Blank tick(String name, String text, Object... arguments) {
    return new Blank(name, Kind.TICK, text, List.of(arguments));
  }
}
