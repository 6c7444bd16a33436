package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.coilwright.netlist.Includes;
import org.junit.jupiter.api.Test;

/**
 * Damaged examples through the whole way, eight thousand in each build and twenty thousand in the
 * whole sweep: every one is read and judged, or refused with a reason; none makes the program fail.
 */
class MutationTest {
  private static final int MUTANTS = "all".equals(System.getProperty("sweep")) ? 20_000 : 8_000;
  private static final Pattern TERMINAL = Pattern.compile("\\b[A-Z]\\d\\.[A-Z0-9]+\\b");
  private static final Pattern NUMBER = Pattern.compile("\\d+(\\.\\d+)?");
  private static final Pattern WORD = Pattern.compile("[A-Za-z][A-Za-z-]+");
  private static final List<String> NUMBERS =
      List.of("0", "1", "-1", "0.0000001", "1000000", "99999999999999999999", "1e308", "3", "12");
  private static final String CHARACTERS = "{}[]:,#&*!|>'\"%@`-? \n\t±Ω°²0aZ\u0000\u00a0";

  @Test
  void no_damaged_example_makes_the_program_fail() throws IOException {
    List<String> examples = examples();
    Random random = new Random(20_261_125);
    // tables are read lazily and are not for sharing between threads
    ThreadLocal<Inspector> inspectors = ThreadLocal.withInitial(Inspector::standard);
    Map<String, String> faults = new ConcurrentSkipListMap<>();
    List<String> mutants = new ArrayList<>();
    for (int i = 0; i < MUTANTS; i++) {
      mutants.add(mutant(examples.get(i % examples.size()), random));
    }
    int judged =
        IntStream.range(0, MUTANTS)
            .parallel()
            .map(
                i -> {
                  try {
                    return judged(inspectors.get(), mutants.get(i)) ? 1 : 0;
                  } catch (RuntimeException | StackOverflowError e) {
                    // One of each kind: it is mended once, however many mutants meet it.
                    faults.putIfAbsent(
                        kind(e), "mutant " + i + " of this seed:\n" + trace(e) + mutants.get(i));
                    return 0;
                  }
                })
            .sum();
    if (!faults.isEmpty()) {
      fail(String.join("\n", faults.keySet()) + "\n\n" + String.join("\n\n", faults.values()));
    }
    // Both ways must have been taken often, or the test would prove nothing.
    int least = MUTANTS / 10;
    int seen = judged;
    assertTrue(judged > least && MUTANTS - judged > least, () -> seen + " were judged");
  }

  private static String kind(Throwable fault) {
    String place =
        fault.getStackTrace().length == 0 ? "" : String.valueOf(fault.getStackTrace()[0]);
    for (StackTraceElement frame : fault.getStackTrace()) {
      if (frame.getClassName().startsWith("org.coilwright")) {
        place = frame.toString();
        break;
      }
    }
    return fault.getClass().getName() + " in " + place;
  }

  private static String trace(Throwable fault) {
    StringWriter trace = new StringWriter();
    fault.printStackTrace(new PrintWriter(trace));
    return trace.toString();
  }

  private static boolean judged(Inspector inspector, String mutant) {
    byte[] bytes = mutant.getBytes(StandardCharsets.UTF_8);
    Inspection inspection =
        inspector.inspect(new InputFile.Bytes("mutant.yaml", bytes, Includes.none()));
    if (inspection instanceof Inspection.Done done) {
      TextReport.of(done.report(), Style.PLAIN);
      StatesText.of(new StatesView(done.study()), Style.PLAIN);
      return true;
    } else if (inspection instanceof Inspection.Unusable unusable) {
      assertTrue(!unusable.problems().isEmpty());
      ProblemText.of(unusable.file(), unusable.problems(), Style.PLAIN);
    }
    return false;
  }

  private static List<String> examples() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("wiring-examples"))) {
      List<String> texts = new ArrayList<>();
      for (Path file : files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList()) {
        texts.add(Files.readString(file));
      }
      return texts;
    }
  }

  private static String mutant(String text, Random random) {
    String mutant = text;
    int times = 1 + random.nextInt(3);
    for (int i = 0; i < times; i++) {
      mutant = once(mutant, random);
    }
    return mutant;
  }

  private static String once(String text, Random random) {
    return switch (random.nextInt(10)) {
      case 0 -> replaceOne(text, random, TERMINAL, pick(TERMINAL, text, random));
      case 1, 2 -> replaceOne(text, random, NUMBER, NUMBERS.get(random.nextInt(NUMBERS.size())));
      case 3 -> replaceOne(text, random, NUMBER, String.valueOf(random.nextInt(500)));
      case 4 -> replaceOne(text, random, WORD, pick(WORD, text, random));
      case 5, 6 -> withoutLine(text, random);
      case 7 -> withLineTwice(text, random);
      case 8 -> text.substring(0, random.nextInt(text.length() + 1));
      default -> withCharacter(text, random);
    };
  }

  private static String pick(Pattern pattern, String text, Random random) {
    List<String> found = pattern.matcher(text).results().map(r -> r.group()).toList();
    return found.isEmpty() ? "" : found.get(random.nextInt(found.size()));
  }

  private static String replaceOne(String text, Random random, Pattern pattern, String by) {
    List<int[]> spans = new ArrayList<>();
    Matcher matcher = pattern.matcher(text);
    while (matcher.find()) {
      spans.add(new int[] {matcher.start(), matcher.end()});
    }
    if (spans.isEmpty()) {
      return text;
    }
    int[] span = spans.get(random.nextInt(spans.size()));
    return text.substring(0, span[0]) + by + text.substring(span[1]);
  }

  private static String withoutLine(String text, Random random) {
    List<String> lines = new ArrayList<>(text.lines().toList());
    if (!lines.isEmpty()) {
      lines.remove(random.nextInt(lines.size()));
    }
    return String.join("\n", lines) + "\n";
  }

  private static String withLineTwice(String text, Random random) {
    List<String> lines = new ArrayList<>(text.lines().toList());
    if (!lines.isEmpty()) {
      String line = lines.get(random.nextInt(lines.size()));
      lines.add(random.nextInt(lines.size()), line);
    }
    return String.join("\n", lines) + "\n";
  }

  private static String withCharacter(String text, Random random) {
    int at = random.nextInt(text.length() + 1);
    char c = CHARACTERS.charAt(random.nextInt(CHARACTERS.length()));
    int end = random.nextBoolean() ? at : Math.min(text.length(), at + 1);
    return text.substring(0, at) + c + text.substring(end);
  }
}
