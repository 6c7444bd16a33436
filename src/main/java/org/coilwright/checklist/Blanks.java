package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.checklist.Blank.Kind;
import org.coilwright.checklist.Checklist.AcceptedEntry;
import org.coilwright.checklist.Checklist.FindingEntry;
import org.coilwright.checklist.Checklist.Instrument;
import org.coilwright.checklist.Checklist.OpenPoint;
import org.coilwright.checklist.Checklist.SatisfiedEntry;
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
        if (takingTemperature(checklist.steps()).equals(Optional.of(section))) {
          all.add(temperature());
        }
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
    for (SatisfiedEntry entry : checklist.satisfied()) {
      if (entry.grounds().confirm()) {
        all.add(confirmed(entry));
      }
    }
    return List.copyOf(all);
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

  /** That a finding was mended. */
  public static Blank mended(FindingEntry finding) {
    return tick(finding.name() + ".mended", "tip.mended", finding.rule(), finding.at());
  }

  /** That the figure a finding rests on was confirmed. */
  public static Blank confirmed(FindingEntry finding) {
    return tick(finding.name() + ".confirmed", "tip.confirmed", finding.rule(), finding.at());
  }

  /** Initials of whoever agrees with an accepted deviation. */
  public static Blank initials(AcceptedEntry accepted) {
    return line(
        accepted.name() + ".initials", "tip.accepted-initials", accepted.rule(), accepted.at());
  }

  /** That the figures behind the satisfied checks of a rule were confirmed. */
  public static Blank confirmed(SatisfiedEntry entry) {
    return tick(entry.name() + ".confirmed", "tip.satisfied-confirmed", entry.rule());
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

  private static List<Blank> row(TestRow row) {
    List<Blank> blanks = new ArrayList<>();
    if (row.grounds().confirm()) {
      blanks.add(confirmed(row));
    }
    if (isRead(row)) {
      blanks.add(reading(row));
    }
    blanks.addAll(List.of(pass(row), fail(row), initials(row)));
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
        unit.isEmpty() ? "tip.setting" : "tip.reading",
        row.number(),
        row.action(),
        row.where(),
        row.expected(),
        unit);
  }

  /** That the row came out as expected. */
  public static Blank pass(TestRow row) {
    return tick(row.name() + ".pass", "tip.pass", row.number(), row.action(), row.where());
  }

  /** That the row did not come out as expected. */
  public static Blank fail(TestRow row) {
    return tick(row.name() + ".fail", "tip.fail", row.number(), row.action(), row.where());
  }

  /** Initials of whoever did the row. */
  public static Blank initials(TestRow row) {
    return line(row.name() + ".initials", "tip.row-initials", row.number());
  }

  /** That the limit from memory was confirmed. */
  public static Blank confirmed(TestRow row) {
    return tick(row.name() + ".confirmed", "tip.row-confirmed", row.number());
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

  /** How many rows were met, not met and not done. */
  public static List<Blank> counts() {
    return List.of(
        line("sign-off.met", "tip.met"),
        line("sign-off.not-met", "tip.not-met"),
        line("sign-off.not-done", "tip.not-done"));
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
