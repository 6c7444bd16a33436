package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.checklist.Blank.Kind;
import org.coilwright.checklist.Checklist.AcceptedEntry;
import org.coilwright.checklist.Checklist.FindingEntry;
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
    checklist.instruments().forEach(instrument -> all.addAll(instrument(instrument)));
    for (FindingEntry finding : checklist.findings()) {
      all.add(mended(finding));
      if (finding.grounds().confirm()) {
        all.add(confirmed(finding));
      }
    }
    checklist.accepted().forEach(accepted -> all.add(initials(accepted)));
    for (OpenPoint point : checklist.openPoints()) {
      all.add(found(point));
      all.add(initials(point));
    }
    checklist.wires().forEach(wire -> all.add(wired(wire)));
    for (Step step : checklist.steps()) {
      if (step instanceof Section section) {
        section.rows().forEach(row -> all.addAll(row(row)));
        all.addAll(List.of(time(section), initials(section)));
      } else if (step instanceof Hold hold) {
        numbered(hold.conditions(), (n, condition) -> all.add(condition(hold, n, condition)));
        all.addAll(hold(hold));
      }
    }
    all.addAll(counts());
    all.add(remarks());
    checklist.signers().forEach(signer -> all.addAll(signer(signer)));
    numbered(
        checklist.satisfied(),
        (n, entry) -> {
          if (entry.grounds().confirm()) {
            all.add(satisfiedConfirmed(n));
          }
        });
    return List.copyOf(all);
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
        line(of + "make", instrument.text() + ": make"),
        line(of + "number", instrument.text() + ": serial number"),
        line(of + "calibrated", instrument.text() + ": calibrated until, such as 2027-03-31"));
  }

  /** That a finding was mended. */
  public static Blank mended(FindingEntry finding) {
    return tick(finding.name() + ".mended", about(finding) + ": mended");
  }

  /** That the figure a finding rests on was confirmed. */
  public static Blank confirmed(FindingEntry finding) {
    return tick(finding.name() + ".confirmed", about(finding) + ": figure from memory confirmed");
  }

  private static String about(FindingEntry finding) {
    return "Finding " + finding.rule() + " at " + finding.at();
  }

  /** Initials of whoever agrees with an accepted deviation. */
  public static Blank initials(AcceptedEntry accepted) {
    return line(
        accepted.name() + ".initials",
        "Accepted deviation " + accepted.rule() + " at " + accepted.at() + ": initials");
  }

  /** That the figure behind a satisfied check was confirmed. */
  public static Blank satisfiedConfirmed(int entry) {
    return tick(
        "satisfied." + entry + ".confirmed",
        "Figure from memory of satisfied check " + entry + " confirmed");
  }

  /** What was found out about an open point. */
  public static Blank found(OpenPoint point) {
    return line(point.name() + ".found", "Point " + point.number() + ", found: " + point.what());
  }

  /** Initials of whoever settled an open point. */
  public static Blank initials(OpenPoint point) {
    return line(point.name() + ".initials", "Point " + point.number() + ": initials");
  }

  /** That a wire is in and fast at both ends. */
  public static Blank wired(WireRow wire) {
    return tick(
        wire.name(),
        "Wire " + wire.number() + " from " + wire.from() + " to " + wire.to() + " wired");
  }

  private static List<Blank> row(TestRow row) {
    List<Blank> blanks = new ArrayList<>();
    if (isRead(row)) {
      blanks.add(reading(row));
    }
    blanks.addAll(List.of(pass(row), fail(row), initials(row)));
    if (row.grounds().confirm()) {
      blanks.add(confirmed(row));
    }
    return blanks;
  }

  /** True if something is written down; what is only seen has no space for it. */
  public static boolean isRead(TestRow row) {
    return !(row.expected() instanceof Expected.Seen);
  }

  /** The reading of a row. */
  public static Blank reading(TestRow row) {
    String unit = row.expected().unit();
    return line(
        row.name() + ".reading",
        about(row, unit.isEmpty() ? "reading" : "reading in " + unit)
            + ", expected "
            + row.expected().text());
  }

  /** That the row came out as expected. */
  public static Blank pass(TestRow row) {
    return tick(row.name() + ".pass", about(row, "PASS"));
  }

  /** That the row did not come out as expected. */
  public static Blank fail(TestRow row) {
    return tick(row.name() + ".fail", about(row, "FAIL"));
  }

  /** Initials of whoever did the row. */
  public static Blank initials(TestRow row) {
    return line(row.name() + ".initials", "Row " + row.number() + ": initials");
  }

  /** That the limit from memory was confirmed. */
  public static Blank confirmed(TestRow row) {
    return tick(row.name() + ".confirmed", "Row " + row.number() + ": limit from memory confirmed");
  }

  private static String about(TestRow row, String what) {
    String where = row.where().isBlank() ? "" : " " + row.where();
    return "Row " + row.number() + ", " + what + ": " + row.action() + where;
  }

  /** When a section was done. */
  public static Blank time(Section section) {
    return line(
        section.name() + ".time",
        "Section " + section.number() + " complete: date and time, such as 2026-11-25 14:30");
  }

  /** Who did a section. */
  public static Blank initials(Section section) {
    return line(
        section.name() + ".initials", "Section " + section.number() + " complete: initials");
  }

  /**
   * That a condition of a hold point is met.
   *
   * @param number from 1
   */
  public static Blank condition(Hold hold, int number, String text) {
    return tick(
        hold.name() + ".condition-" + number, "Hold " + hold.title() + ", condition: " + text);
  }

  /** Name, signature, date and time at a hold point. */
  public static List<Blank> hold(Hold hold) {
    String of = hold.name() + ".";
    String tip = "Hold " + hold.title() + ": ";
    return List.of(
        line(of + "name", tip + "name of who lets the work go on"),
        new Blank(of + "signature", Kind.SIGNATURE, tip + "signature"),
        line(of + "time", tip + "date and time, such as 2026-11-25 14:30"));
  }

  /** How many rows were met, not met and not done. */
  public static List<Blank> counts() {
    return List.of(
        line("sign-off.met", "How many rows are marked PASS"),
        line("sign-off.not-met", "How many rows are marked FAIL"),
        line("sign-off.not-done", "How many rows were not done"));
  }

  /** Remarks. */
  public static Blank remarks() {
    return new Blank(
        "sign-off.remarks", Kind.LINES, "Remarks, rows not met and what was done about them");
  }

  /** Name, licence, date and signature of a signer. */
  public static List<Blank> signer(Signer signer) {
    String of = signer.name() + ".";
    return List.of(
        line(of + "name", signer.text() + ": name"),
        line(of + "licence", signer.text() + ": licence or card number"),
        line(of + "date", signer.text() + ": date, such as 2026-11-25"),
        new Blank(of + "signature", Kind.SIGNATURE, signer.text() + ": signature"));
  }

  private static Blank line(String name, String tip) {
    return new Blank(name, Kind.LINE, tip);
  }

  private static Blank tick(String name, String tip) {
    return new Blank(name, Kind.TICK, tip);
  }
}
