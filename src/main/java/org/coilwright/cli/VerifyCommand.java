package org.coilwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Texts;
import org.coilwright.pdf.Look;
import org.coilwright.pdf.Returned;
import org.coilwright.pdf.SignatureCheck;
import org.coilwright.pdf.SignatureReport;
import org.coilwright.pdf.TrustedCertificates;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code coilwright verify FILE.pdf}. */
final class VerifyCommand extends SheetCommand {
  private static final String TRUST = "--trust";
  private static final int MOST_BYTES = 1 << 20;

  VerifyCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    CommandSpec spec =
        spec(
            "Checks the netlist that travels in a checklist again, and says what comes out"
                + " otherwise.",
            "",
            "The checklist may be empty, filled in or a final record. A difference is named with"
                + " the",
            "rule or row it shows in and the tables whose figures have changed.",
            "",
            "Of a final record it judges the filled-in sheet inside again, draws the record anew"
                + " and",
            "compares every row, the verdict, every attached file and every page. It says who"
                + " signed",
            "it and when, and whether the signature covers the whole file and fits it. With"
                + " --trust",
            "the certificate must be one of those in FILE (PEM or DER), or lead to one.",
            "",
            "Examples:",
            "  coilwright verify boiler.pdf",
            "  coilwright verify boiler-record.pdf --trust our-certificates.pem",
            "",
            "Ends with 0: the same, 1: different, changed or not validly signed, 2: the file"
                + " cannot",
            "be used, 3: a fault of coilwright itself.");
    Options.file(spec, "FILE.pdf", "Checklist; - reads standard input.");
    spec.addOption(
        OptionSpec.builder(TRUST)
            .paramLabel("FILE")
            .type(String.class)
            .description("Certificates you trust; a time stamp must lead to one as well.")
            .build());
    return spec;
  }

  @Override
  int run(ParseResult parsed) {
    String file = Options.file(parsed);
    String trust = parsed.matchedOptionValue(TRUST, "");
    Optional<TrustedCertificates> trusted = Optional.empty();
    if (!trust.isEmpty()) {
      trusted = trusted(trust);
      if (trusted.isEmpty()) {
        return Exit.UNUSABLE;
      }
    }
    SheetFile.Opened opened = SheetFile.open(file, console().in());
    return opened.returned() instanceof Returned.Sheet record && isRecord(record)
        ? record(file, opened, record, trusted)
        : sheet(file, opened);
  }

  /** One whose readings were taken out is none the less meant to be read as one. */
  private static boolean isRecord(Returned.Sheet sheet) {
    return KeptSheets.isRecord(sheet)
        || sheet.fields().containsKey(Blanks.recordSignature().name());
  }

  private int sheet(String file, SheetFile.Opened opened) {
    Optional<Sheet> sheet = open(file, opened);
    if (sheet.isEmpty()) {
      return Exit.UNUSABLE;
    }
    Remade remade = sheet.get().remade();
    Origin again = remade.again();
    Differences differences = Differences.between(remade.origin(), again);
    StringBuilder out = new StringBuilder();
    head(out, file, remade.origin().program(), remade.origin().printed().toString(), again);
    List<String> pages = pages(sheet.get());
    section(out, "Pages that differ", pages);
    differences(out, differences);
    boolean compared = remade.origin().program().equals(again.program());
    Lines.wrap(
        out,
        "",
        (compared
                ? ""
                : "Its pages were not compared: only "
                    + remade.origin().program()
                    + " can do that. ")
            + "What was filled in was not looked at, nor any signature; coilwright readback looks"
            + " at what was filled in. "
            + TextReport.CAUTION,
        outStyle().width());
    console().out().print(out);
    return differences.isSame() && pages.isEmpty() ? Exit.NOTHING_FOUND : Exit.FINDINGS;
  }

  /** What is on the pages, compared with what this program prints. */
  private static List<String> pages(Sheet sheet) {
    return Readback.pages(sheet).stream()
        .map(oddity -> oddity.sentence(Texts.english()))
        .distinct()
        .toList();
  }

  private int record(
      String file,
      SheetFile.Opened opened,
      Returned.Sheet record,
      Optional<TrustedCertificates> trusted) {
    SignatureReport signature = SignatureCheck.of(opened.bytes(), trusted, Instant.now());
    RecordCheck.Checked checked = RecordCheck.of(opened.bytes(), record);
    List<String> faults = new ArrayList<>(checked.faults());
    boolean signed = signature.signer().isPresent();
    if (checked.signed() && !signed) {
      faults.add(
          "The record says that it is signed by certificate, and no valid signature is there.");
    }
    if (trusted.isPresent() && !signed) {
      faults.add("It is not signed, so that --trust has no certificate to look at.");
    }
    Remade.Outcome outcome = Remade.from(record, Look.of(opened.bytes()));
    StringBuilder out = new StringBuilder();
    boolean same = false;
    if (outcome instanceof Remade.Made made) {
      Origin again = made.remade().again();
      Differences differences = Differences.between(made.remade().origin(), again);
      head(out, file, made.remade().origin().program(), "", again);
      same = differences.isSame();
      section(out, "Signature", SignatureText.of(signature));
      section(out, "What does not agree in the record", faults);
      verdict(out, checked);
      differences(out, differences);
    } else {
      Lines.wrap(out, "", file + ": a final record.", outStyle().width());
      if (outcome instanceof Remade.Refused refused) {
        faults.add("The record itself: " + refused.what() + ".");
      } else {
        faults.add("The record itself: its netlist cannot be read by this coilwright.");
      }
      section(out, "Signature", SignatureText.of(signature));
      section(out, "What does not agree in the record", faults);
      verdict(out, checked);
      out.append('\n');
    }
    boolean holds = same && faults.isEmpty() && signature.faults().isEmpty();
    Lines.wrap(
        out,
        "",
        holds
            ? "The record agrees with the filled-in sheet inside. " + TextReport.CAUTION
            : "This record must not be relied on. " + TextReport.CAUTION,
        outStyle().width());
    console().out().print(out);
    return holds ? Exit.NOTHING_FOUND : Exit.FINDINGS;
  }

  private void verdict(StringBuilder out, RecordCheck.Checked checked) {
    section(
        out,
        "The filled-in sheet inside, judged again",
        List.of(checked.verdict().orElse("It could not be judged.")));
  }

  private Optional<TrustedCertificates> trusted(String file) {
    try (InputStream in = Files.newInputStream(Path.of(file))) {
      byte[] bytes = in.readNBytes(MOST_BYTES + 1);
      if (bytes.length > MOST_BYTES) {
        throw new GeneralSecurityException("far larger than any list of certificates");
      }
      return Optional.of(TrustedCertificates.from(bytes));
    } catch (IOException | InvalidPathException | GeneralSecurityException e) {
      refuse(file + " after --trust cannot be used: it must hold certificates, as PEM or DER.");
      return Optional.empty();
    }
  }

  private void head(StringBuilder out, String file, String then, String printed, Origin now) {
    Lines.wrap(
        out,
        "",
        file
            + (printed.isEmpty() ? ": final record of a sheet made by " : ": made by ")
            + then
            + (printed.isEmpty() ? "" : " on " + printed)
            + ", checked again by "
            + now.program()
            + ".",
        outStyle().width());
  }

  private void differences(StringBuilder out, Differences differences) {
    section(out, "Results that differ", differences.outcomes());
    section(out, "Expected readings that differ", differences.rows());
    section(out, "Tables whose figures have changed", differences.tables());
    out.append('\n');
    Lines.wrap(out, "", differences.sentence(), outStyle().width());
  }

  private void section(StringBuilder out, String head, List<String> lines) {
    if (!lines.isEmpty()) {
      out.append('\n').append(head).append('\n');
      lines.forEach(line -> Lines.wrap(out, "  ", line, outStyle().width()));
    }
  }
}
