package org.coilwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Judge;
import org.coilwright.checklist.Judgement;
import org.coilwright.checklist.TestRow;
import org.coilwright.checklist.Texts;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code coilwright readback FILLED.pdf}. */
final class ReadbackCommand extends SheetCommand {
  private static final String OUTPUT = "--output";
  private static final String SIGN = "--sign";

  ReadbackCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    CommandSpec spec =
        spec(
            "Reads a filled-in checklist and says what is missing or outside its limits.",
            "",
            "It does not matter which program filled it in. The netlist that travels in it must be",
            "the one it was made from. A reading that can be understood in two ways is asked about.",
            "",
            "With -o it also writes the final record: the sheet drawn anew with what was filled in,",
            "behind a verdict, with every file that travels in it and the filled-in file itself.",
            "--sign signs it with a PKCS#12 keystore, whose password comes from the environment",
            "variable COILWRIGHT_KEYSTORE_PASSWORD or is asked for.",
            "",
            "Examples:",
            "  coilwright readback boiler-filled.pdf",
            "  coilwright readback boiler-filled.pdf --as json",
            "  coilwright readback boiler-filled.pdf -o boiler-record.pdf --sign me.p12",
            "",
            "Ends with 0: complete and every reading within its limits, 1: something is missing,",
            "unclear or outside, 2: the file cannot be used, 3: a fault of coilwright itself.");
    Options.file(spec, "FILLED.pdf", "Filled-in checklist; - reads standard input.");
    Options.form(spec, "result");
    spec.addOption(
        OptionSpec.builder("-o", OUTPUT)
            .paramLabel("FINAL.pdf")
            .type(String.class)
            .description("Final record to write as well.")
            .build());
    spec.addOption(
        OptionSpec.builder(SIGN)
            .paramLabel("KEYSTORE")
            .type(String.class)
            .description("PKCS#12 keystore to sign the final record with.")
            .build());
    return spec;
  }

  @Override
  int run(ParseResult parsed) {
    String file = Options.file(parsed);
    String output = parsed.matchedOptionValue(OUTPUT, "");
    String keystore = parsed.matchedOptionValue(SIGN, "");
    if (output.isEmpty() && !keystore.isEmpty()) {
      return refuse("--sign signs the final record: name it with -o.");
    }
    Optional<Sheet> opened = open(file);
    if (opened.isEmpty() || !fits(file, opened.get())) {
      return Exit.UNUSABLE;
    }
    Sheet sheet = opened.get();
    Checklist checklist = sheet.remade().checklist();
    Judgement judgement =
        Judge.of(checklist, sheet.returned().filledIn(), sheet.remade().diagnosis());
    console()
        .out()
        .print(
            switch (Options.form(parsed)) {
              case TEXT -> ReadbackText.of(file, checklist, judgement, outStyle());
              case JSON -> ReadbackJson.of(file, checklist, judgement);
            });
    if (!output.isEmpty()
        && !new FinalRecord(console(), sheet, judgement).write(output, keystore, file)) {
      return Exit.UNUSABLE;
    }
    return judgement.isComplete() ? Exit.NOTHING_FOUND : Exit.FINDINGS;
  }

  /** A reading is judged by what stood beside it, so the sheet must still be the same. */
  private boolean fits(String file, Sheet sheet) {
    if (KeptSheets.isRecord(sheet.returned())) {
      refuse(
          file,
          "this is a final record; the filled-in sheet is attached in it as "
              + SheetFiles.FILLED_IN,
          "take that file out of it and read it back; coilwright verify takes the record itself");
      return false;
    }
    Remade remade = sheet.remade();
    List<String> other = otherRows(remade);
    if (!other.isEmpty()) {
      refuse(
          file,
          "this "
              + remade.checklist().title().program()
              + " expects other readings than the sheet has printed ("
              + shortened(other)
              + ")",
          "read it back with "
              + remade.origin().program()
              + "; coilwright verify says what has changed");
      return false;
    }
    Map<String, Blank.Kind> fields = sheet.returned().fields();
    List<String> missing = new ArrayList<>();
    for (Blank blank : Blanks.all(remade.checklist())) {
      Blank.Kind wanted = blank.kind() == Blank.Kind.LINES ? Blank.Kind.LINE : blank.kind();
      Blank.Kind found = fields.get(blank.name());
      if (found == null) {
        missing.add(blank.name());
      } else if (found != wanted) {
        refuse(
            file,
            "its form field " + blank.name() + " is of another type than printed",
            "fill in the sheet as coilwright wrote it");
        return false;
      }
    }
    if (!missing.isEmpty()) {
      refuse(
          file,
          "it lacks form fields of the sheet (" + shortened(missing) + ")",
          fields.isEmpty()
              ? "save the filled-in form itself; a printed or flattened copy has no fields"
              : "fill in the sheet as coilwright wrote it");
      return false;
    }
    return true;
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
