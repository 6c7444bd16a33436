package org.coilwright.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.coilwright.checklist.Judgement;
import org.coilwright.checklist.TestRecord;
import org.coilwright.pdf.Attachment;
import org.coilwright.pdf.Attachment.Relation;
import org.coilwright.pdf.ChecklistPdf;
import org.coilwright.pdf.RecordSigner;
import org.coilwright.pdf.TimeStamper;

/** Writes the final record of a filled-in sheet, signed if that is asked for. */
final class FinalRecord {
  private static final String PASSWORD = "COILWRIGHT_KEYSTORE_PASSWORD";

  private static final int MOST_BYTES = 1 << 20;

  private final Console console;
  private final SheetCommand.Sheet sheet;
  private final Judgement judgement;

  FinalRecord(Console console, SheetCommand.Sheet sheet, Judgement judgement) {
    this.console = console;
    this.sheet = sheet;
    this.judgement = judgement;
  }

  /**
   * Writes it whole or not at all, and says which.
   *
   * @param keystore empty if it is not to be signed
   * @param server gives a time stamp over the signature; none if there is to be none
   * @param input the filled-in file, which stays
   */
  boolean write(String output, String keystore, Optional<TimestampServer> server, String input) {
    boolean sign = !keystore.isEmpty();
    byte[] record = drawn(sheet, record(sheet, judgement, console.today().toString(), sign), input);
    if (sign) {
      Optional<byte[]> signed = signed(record, keystore, server);
      if (signed.isEmpty()) {
        return false;
      }
      record = signed.get();
    }
    OutputFile.Written written = new OutputFile(output).writePdf(record, List.of(input, keystore));
    if (written instanceof OutputFile.Refused refused) {
      return refuse(refused.why());
    }
    console
        .err()
        .println(
            "Wrote "
                + Lines.harmless(output)
                + (sign ? ", signed" : "")
                + (server.isPresent() ? " and time-stamped." : "."));
    return true;
  }

  /** What goes into the record of a sheet. */
  static TestRecord record(
      SheetCommand.Sheet sheet, Judgement judgement, String readBack, boolean signed) {
    return new TestRecord(
        sheet.returned().filledIn(),
        judgement,
        readBack,
        sheet.remade().checklist().title().program(),
        Digest.of(sheet.bytes()),
        signed);
  }

  /**
   * The record before it is signed.
   *
   * @param input name of the filled-in file
   */
  static byte[] drawn(SheetCommand.Sheet sheet, TestRecord record, String input) {
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    try {
      ChecklistPdf.writeRecord(
          sheet.remade().checklist(), record, files(sheet, record, input), pdf);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return pdf.toByteArray();
  }

  private static List<Attachment> files(SheetCommand.Sheet sheet, TestRecord record, String input) {
    Remade remade = sheet.remade();
    String readings =
        ReadbackJson.of(input, remade.checklist(), record.judgement(), Optional.of(record));
    List<Attachment> files = new ArrayList<>(remade.files());
    files.add(
        new Attachment(
            SheetFiles.READINGS,
            "application/json",
            Relation.DATA,
            "What was read back",
            readings.getBytes(StandardCharsets.UTF_8)));
    files.add(
        new Attachment(
            SheetFiles.FILLED_IN,
            "application/pdf",
            Relation.SOURCE,
            "The sheet as it was filled in",
            sheet.bytes()));
    return files;
  }

  private Optional<byte[]> signed(
      byte[] record, String keystore, Optional<TimestampServer> server) {
    Optional<byte[]> store = store(keystore);
    if (store.isEmpty()) {
      return Optional.empty();
    }
    Optional<char[]> password = password(keystore);
    if (password.isEmpty()) {
      refuse("The password of " + keystore + " is needed: set " + PASSWORD + ".");
      return Optional.empty();
    }
    try {
      RecordSigner signer = RecordSigner.from(store.get(), password.get());
      return Optional.of(signer.sign(record, Instant.now(), server.map(TimeStamper.class::cast)));
    } catch (GeneralSecurityException e) {
      return unusable(keystore, Objects.requireNonNullElse(e.getMessage(), "it is damaged"));
    } catch (IOException e) {
      refuse(
          "The time stamp server gives no time stamp: "
              + Objects.requireNonNullElse(e.getMessage(), "it cannot be reached")
              + ". Give another one after --timestamp, or leave that out.");
      return Optional.empty();
    } finally {
      Arrays.fill(password.get(), '\0');
    }
  }

  /** Read before the password is asked for. */
  private Optional<byte[]> store(String keystore) {
    try (InputStream in = Files.newInputStream(Path.of(keystore))) {
      byte[] bytes = in.readNBytes(MOST_BYTES + 1);
      return bytes.length > MOST_BYTES
          ? unusable(keystore, "it is far larger than any keystore")
          : Optional.of(bytes);
    } catch (NoSuchFileException e) {
      return unusable(keystore, "there is no such file");
    } catch (AccessDeniedException e) {
      return unusable(keystore, "it may not be read by this user");
    } catch (IOException | InvalidPathException e) {
      return unusable(keystore, "it cannot be read");
    }
  }

  private Optional<byte[]> unusable(String keystore, String why) {
    refuse(
        keystore
            + " cannot be used to sign: "
            + why
            + ". Give a PKCS#12 keystore with a key and a certificate after --sign.");
    return Optional.empty();
  }

  private Optional<char[]> password(String keystore) {
    String given = console.environment().get(PASSWORD);
    if (given != null) {
      return Optional.of(given.toCharArray());
    }
    java.io.Console terminal = console.terminals().contains("in") ? System.console() : null;
    return terminal == null
        ? Optional.empty()
        : Optional.ofNullable(terminal.readPassword("Password of %s: ", Lines.harmless(keystore)));
  }

  private boolean refuse(String why) {
    console.err().println(Lines.harmless(why) + " No record was written.");
    return false;
  }
}
