package org.coilwright.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.FilledIn;
import org.coilwright.checklist.Judge;
import org.coilwright.checklist.Judgement;
import org.coilwright.checklist.Oddity;
import org.coilwright.checklist.TestRow;
import org.coilwright.checklist.Texts;
import org.coilwright.pdf.ChecklistPdf;
import org.coilwright.pdf.Look;
import org.coilwright.pdf.LookedOver;
import org.coilwright.pdf.Returned;

/** Judges a filled-in sheet; the same whether it lies there alone or travels in a record. */
final class Readback {
  private static final String AGAIN = "fill in the sheet as coilwright wrote it";

  private final SheetCommand.Sheet sheet;

  Readback(SheetCommand.Sheet sheet) {
    this.sheet = sheet;
  }

  /** Judged, with everything about the file that is not as it was printed. */
  Judgement judgement() {
    Remade remade = sheet.remade();
    return Judge.of(
        remade.checklist(), sheet.returned().filledIn(), remade.diagnosis(), oddities());
  }

  private List<Oddity> oddities() {
    Remade remade = sheet.remade();
    Checklist checklist = remade.checklist();
    FilledIn filledIn = sheet.returned().filledIn();
    List<Oddity> oddities =
        new ArrayList<>(LookedOver.within(sheet.look(), filledIn, Blanks.all(checklist)));
    oddities.addAll(pages(sheet));
    if (!remade.origin().program().equals(checklist.title().program())) {
      oddities.add(Oddity.of(Oddity.Kind.PROGRAM, "pages", remade.origin().program()));
    }
    Differences differences = Differences.between(remade.origin(), remade.again());
    if (!differences.isSame()) {
      oddities.add(Oddity.of(Oddity.Kind.RESULTS, "results", differences.sentence()));
    }
    return oddities;
  }

  /** Where the pages are not those that were printed; those of another version are not compared. */
  static List<Oddity> pages(SheetCommand.Sheet sheet) {
    Remade remade = sheet.remade();
    return remade.origin().program().equals(remade.checklist().title().program())
        ? LookedOver.against(sheet.look(), Look.of(printed(remade)))
        : List.of();
  }

  /** The sheet as it was before anybody filled it in. */
  private static byte[] printed(Remade remade) {
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    try {
      ChecklistPdf.write(remade.checklist(), remade.files(), pdf);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return pdf.toByteArray();
  }

  /** Why it cannot be judged; empty if it can. A reading is judged by what stood beside it. */
  Optional<Remade.Refused> refusal() {
    Returned.Sheet returned = sheet.returned();
    if (KeptSheets.isRecord(returned)) {
      return refused(
          "this is a final record; the filled-in sheet is attached in it as "
              + SheetFiles.FILLED_IN,
          "take that file out of it and read it back; coilwright verify takes the record itself");
    }
    Remade remade = sheet.remade();
    List<String> other = otherRows(remade);
    if (!other.isEmpty()) {
      return refused(
          "this "
              + remade.checklist().title().program()
              + " expects other readings than the sheet has printed ("
              + shortened(other)
              + ")",
          "read it back with "
              + remade.origin().program()
              + "; coilwright verify says what has changed");
    }
    Map<String, Blank.Kind> fields = returned.fields();
    List<String> missing = new ArrayList<>();
    for (Blank blank : Blanks.all(remade.checklist())) {
      Blank.Kind wanted = blank.kind() == Blank.Kind.LINES ? Blank.Kind.LINE : blank.kind();
      Blank.Kind found = fields.get(blank.name());
      if (found == null) {
        missing.add(blank.name());
      } else if (found != wanted) {
        return refused(
            "its form field " + blank.name() + " is of another type than printed", AGAIN);
      }
    }
    return missing.isEmpty()
        ? Optional.empty()
        : refused(
            "it lacks form fields of the sheet (" + shortened(missing) + ")",
            fields.isEmpty()
                ? "save the filled-in form itself; a printed or flattened copy has no fields"
                : AGAIN);
  }

  private static Optional<Remade.Refused> refused(String what, String remedy) {
    return Optional.of(new Remade.Refused(what, remedy));
  }

  private static List<String> otherRows(Remade remade) {
    Map<String, String> printed = remade.origin().rows();
    Texts english = Texts.english();
    List<String> other = new ArrayList<>();
    for (TestRow row : remade.checklist().rows()) {
      if (!row.expected().text(english).equals(printed.get(row.name()))) {
        other.add(row.name());
      }
    }
    if (other.isEmpty() && printed.size() != remade.checklist().rows().size()) {
      other.add("some rows are gone");
    }
    return other;
  }

  private static String shortened(List<String> names) {
    int most = 5;
    String first = String.join(", ", names.subList(0, Math.min(most, names.size())));
    return names.size() > most ? first + " and " + (names.size() - most) + " more" : first;
  }
}
