package org.coilwright.cli;

import java.util.Optional;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Judgement;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code coilwright readback FILLED.pdf}. */
final class ReadbackCommand extends SheetCommand {
  private static final String OUTPUT = "--output";
  private static final String SIGN = "--sign";
  private static final String TIMESTAMP = "--timestamp";

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
            "the one it was made from. A reading that can be understood in two ways is asked"
                + " about.",
            "",
            "With -o it also writes the final record: the sheet drawn anew with what was filled"
                + " in,",
            "behind a verdict, with every file that travels in it and the filled-in file itself.",
            "--sign signs it with a PKCS#12 keystore, whose password comes from the environment",
            "variable COILWRIGHT_KEYSTORE_PASSWORD or is asked for. --timestamp has a server (RFC",
            "3161) confirm the time; it learns a digest and nothing else.",
            "",
            "While the netlist in the sheet has a STOP, or a FIX that it does not accept, no sheet"
                + " is",
            "complete, whatever was ticked.",
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
    spec.addOption(
        OptionSpec.builder(TIMESTAMP)
            .paramLabel("URL")
            .type(String.class)
            .description("Time stamp server that confirms when it was signed.")
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
    String address = parsed.matchedOptionValue(TIMESTAMP, "");
    Optional<TimestampServer> server = TimestampServer.at(address);
    if (!address.isEmpty() && keystore.isEmpty()) {
      return refuse("--timestamp confirms when the record was signed: sign it with --sign.");
    }
    if (!address.isEmpty() && server.isEmpty()) {
      return refuse(address + " is no address of a time stamp server: it begins with https://.");
    }
    Optional<Sheet> opened = open(file);
    if (opened.isEmpty()) {
      return Exit.UNUSABLE;
    }
    Sheet sheet = opened.get();
    Readback readback = new Readback(sheet);
    Optional<Remade.Refused> refused = readback.refusal();
    if (refused.isPresent()) {
      refuse(file, refused.get().what(), refused.get().remedy());
      return Exit.UNUSABLE;
    }
    Checklist checklist = sheet.remade().checklist();
    Judgement judgement = readback.judgement();
    console()
        .out()
        .print(
            switch (Options.form(parsed)) {
              case TEXT -> ReadbackText.of(file, checklist, judgement, outStyle());
              case JSON -> ReadbackJson.of(file, checklist, judgement);
            });
    if (!output.isEmpty()
        && !new FinalRecord(console(), sheet, judgement).write(output, keystore, server, file)) {
      return Exit.UNUSABLE;
    }
    return judgement.isComplete() ? Exit.NOTHING_FOUND : Exit.FINDINGS;
  }
}
