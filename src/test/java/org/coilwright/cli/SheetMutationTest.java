package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.stream.IntStream;
import org.coilwright.checklist.Diagnosis;
import org.coilwright.checklist.Fillings;
import org.coilwright.checklist.Judge;
import org.coilwright.checklist.Judgement;
import org.coilwright.pdf.Filler;
import org.coilwright.pdf.Look;
import org.coilwright.pdf.Returned;
import org.coilwright.pdf.SheetReader;
import org.coilwright.pdf.Spoiler;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Damaged sheets, two thousand in each build and five thousand in the whole sweep: each is judged
 * or refused with a reason; none makes the program fail. The way from the netlist to the checklist
 * has a test of its own and is gone only where the attached files were hit.
 */
class SheetMutationTest {
  private static final int MUTANTS = "all".equals(System.getProperty("sweep")) ? 5_000 : 2_000;
  private static final int BY_COMMAND = 40;

  private static final String NETLIST =
      """
      coilwright: 1
      circuit: {title: Bench}
      site: {practice: iec}
      parts:
        G1:
          is: dc-supply
          output: {plus: 1, minus: 2, voltage: 24 V DC, limit: 1 A}
        K1:
          is: relay
          coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 660 Ω}
          contacts: [{pins: [11, 14], form: NO}]
      wires:
        - {from: G1.1, to: K1.A1, length: 1 m, size: 0.5 mm²}
        - {from: K1.A2, to: G1.2, length: 1 m, size: 0.5 mm²}
      """;

  /** Words of the format, to be put in one another's place. */
  private static final String[] WORDS = {
    "/V",
    "/T",
    "/FT",
    "/Tx",
    "/Btn",
    "/Sig",
    "/Kids",
    "/Parent",
    "/AS",
    "/Off",
    "/Yes",
    "/AF",
    "/EF",
    "/UF",
    "/Length",
    "/Filter",
    "/FlateDecode",
    "/Fields",
    "/AcroForm",
    "/Root",
    "/Type",
    "obj",
    "endobj",
    "stream",
    "endstream",
    "xref",
    "trailer",
    "startxref",
    "<<",
    ">>",
    "[",
    "]",
    "(",
    ")",
    "0 R",
    "null",
    "true",
    "-1",
    "99999999999",
    "2147483647",
    "/JavaScript",
    "/Encrypt"
  };

  @TempDir Path folder;

  @Test
  void no_damaged_sheet_makes_the_program_fail() throws IOException {
    Path netlist = Files.writeString(folder.resolve("bench.yaml"), NETLIST);
    byte[] sheet = Files.readAllBytes(Sheets.of(netlist.toString(), folder.resolve("sheet.pdf")));
    byte[] filled =
        Filler.filled(sheet, Fillings.complete(Sheets.checklist(netlist.toString())).filledIn());
    byte[] essence = Spoiler.essence(filled);
    byte[][] seeds = {filled, essence, essence, essence};
    Returned.Sheet whole = (Returned.Sheet) SheetReader.read(filled);
    Remade remade = ((Remade.Made) Remade.from(whole, Look.of(filled))).remade();
    Map<String, String> faults = new ConcurrentSkipListMap<>();
    Map<String, Integer> results = new ConcurrentSkipListMap<>();
    IntStream.range(0, MUTANTS)
        .parallel()
        .forEach(
            i -> {
              byte[] mutant = mutant(seeds[i % seeds.length], new Random(20_261_125L + i));
              try {
                if (i < BY_COMMAND) {
                  Cli.Ran ran = new Cli().stdin(mutant).with("readback", "-");
                  if (ran.code() == 3) {
                    throw new IllegalStateException(ran.err());
                  }
                }
                results.merge(judged(mutant, whole, remade), 1, Integer::sum);
              } catch (RuntimeException | Error e) {
                faults.putIfAbsent(String.valueOf(e.getMessage()), "mutant " + i + ": " + trace(e));
              }
            });
    assertEquals("", String.join("\n", faults.values()));
    // Every way must have been gone often, or the test would prove nothing.
    for (String result : List.of("judged", "other files", "refused")) {
      assertTrue(results.getOrDefault(result, 0) >= MUTANTS / 250, results::toString);
    }
  }

  private static String judged(byte[] mutant, Returned.Sheet whole, Remade remade) {
    Returned returned = SheetReader.read(mutant);
    if (!(returned instanceof Returned.Sheet sheet)) {
      return "refused";
    }
    Remade of = remade;
    boolean same =
        sheet.files().keySet().equals(whole.files().keySet())
            && sheet.files().entrySet().stream()
                .allMatch(e -> Arrays.equals(e.getValue(), whole.files().get(e.getKey())));
    if (!same && Remade.from(sheet, Look.of(mutant)) instanceof Remade.Made made) {
      of = made.remade();
    }
    Diagnosis shared = of.diagnosis();
    Diagnosis diagnosis =
        (row, value, met) -> {
          synchronized (whole) {
            return shared.of(row, value, met);
          }
        };
    Judgement judgement = Judge.of(of.checklist(), sheet.filledIn(), diagnosis);
    ReadbackText.of("mutant.pdf", of.checklist(), judgement, Style.PLAIN);
    ReadbackJson.of("mutant.pdf", of.checklist(), judgement);
    return same ? "judged" : "other files";
  }

  private static String trace(Throwable fault) {
    StringWriter trace = new StringWriter();
    fault.printStackTrace(new PrintWriter(trace));
    return trace.toString();
  }

  private static byte[] mutant(byte[] pdf, Random random) {
    byte[] mutant = pdf;
    int times = 1 + random.nextInt(4);
    for (int i = 0; i < times; i++) {
      mutant = once(mutant, random);
    }
    return mutant;
  }

  private static byte[] once(byte[] pdf, Random random) {
    int at = random.nextInt(pdf.length);
    int some = 1 + random.nextInt(40);
    int end = Math.min(pdf.length, at + some);
    return switch (random.nextInt(8)) {
      case 0 ->
          joined(Arrays.copyOf(pdf, at), new byte[0], Arrays.copyOfRange(pdf, end, pdf.length));
      case 1 ->
          joined(
              Arrays.copyOf(pdf, end),
              Arrays.copyOfRange(pdf, at, end),
              Arrays.copyOfRange(pdf, end, pdf.length));
      case 2, 3, 4 -> withWord(pdf, random);
      case 5 -> withDigit(pdf, at, random);
      case 6 -> {
        byte[] other = pdf.clone();
        for (int i = at; i < end; i++) {
          other[i] = (byte) random.nextInt(256);
        }
        yield other;
      }
      default -> {
        byte[] other = pdf.clone();
        other[at] ^= (byte) (1 << random.nextInt(8));
        yield other;
      }
    };
  }

  /** Puts one word of the format in the place of another. */
  private static byte[] withWord(byte[] pdf, Random random) {
    byte[] word = WORDS[random.nextInt(WORDS.length)].getBytes(StandardCharsets.US_ASCII);
    byte[] by = WORDS[random.nextInt(WORDS.length)].getBytes(StandardCharsets.US_ASCII);
    int from = random.nextInt(pdf.length);
    for (int i = from; i < pdf.length - word.length; i++) {
      if (Arrays.equals(pdf, i, i + word.length, word, 0, word.length)) {
        return joined(
            Arrays.copyOf(pdf, i), by, Arrays.copyOfRange(pdf, i + word.length, pdf.length));
      }
    }
    return pdf;
  }

  private static byte[] withDigit(byte[] pdf, int from, Random random) {
    byte[] other = pdf.clone();
    for (int i = from; i < other.length; i++) {
      if (other[i] >= '0' && other[i] <= '9') {
        other[i] = (byte) ('0' + random.nextInt(10));
        break;
      }
    }
    return other;
  }

  private static byte[] joined(byte[] a, byte[] b, byte[] c) {
    byte[] all = Arrays.copyOf(a, a.length + b.length + c.length);
    System.arraycopy(b, 0, all, a.length, b.length);
    System.arraycopy(c, 0, all, a.length + b.length, c.length);
    return all;
  }
}
