package org.coilwright.ngspice;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Answers from ngspice where it is on the PATH, and otherwise from what it answered before, kept
 * under {@code src/test/resources/ngspice/}. So a comparison is always made, live or recorded, and
 * never skipped. A recording of another deck than the one asked is refused. {@code -Daccept=true}
 * writes the recording anew.
 */
public final class Simulator {
  private static final Path FOLDER = Path.of("src/test/resources/ngspice");

  /** Live and recorded answers may differ by this much, relative; versions of ngspice do. */
  private static final double RECORDED_TOLERANCE = 1e-6;

  private final Path file;
  private final boolean recording;
  private final Optional<Ngspice> live;

  private Simulator(Path file, boolean recording, Optional<Ngspice> live) {
    this.file = file;
    this.recording = recording;
    this.live = live;
  }

  /**
   * A simulator with a recording of its own.
   *
   * @param recording file name without ending; one a test class, since recording writes it whole
   */
  public static Simulator recordedIn(String recording) {
    return new Simulator(
        FOLDER.resolve(recording + ".txt"), Boolean.getBoolean("accept"), Ngspice.onPath());
  }

  /** What ngspice answers now, in one process; empty if it is not on the PATH. Keeps nothing. */
  public static Optional<Map<String, Map<String, Double>>> live(List<Deck> decks) {
    return Ngspice.onPath().map(ngspice -> ngspice.run(decks));
  }

  /** One that never runs ngspice, for testing the recording itself. */
  static Simulator offline(Path file) {
    return new Simulator(file, false, Optional.empty());
  }

  /**
   * Answers of all decks a recording holds; ask for them in one call.
   *
   * @return deck name to answer name to figure
   * @throws IllegalStateException if a deck has no answer, live or recorded, or if the two differ
   */
  public Map<String, Map<String, Double>> answers(List<Deck> decks) {
    Map<String, Map<String, Double>> fresh = live.map(n -> n.run(decks)).orElse(Map.of());
    fresh.forEach(
        (name, answers) -> {
          if (answers.isEmpty()) {
            throw new IllegalStateException("ngspice gave no answer to " + name);
          }
        });
    if (recording) {
      if (fresh.isEmpty()) {
        throw new IllegalStateException("nothing to record: no ngspice on the PATH");
      }
      write(decks, fresh);
    }
    Map<String, Map<String, Double>> kept = read(decks);
    if (!fresh.isEmpty()) {
      compare(fresh, kept);
      return fresh;
    }
    return kept;
  }

  private void write(List<Deck> decks, Map<String, Map<String, Double>> fresh) {
    StringBuilder text =
        new StringBuilder("# What ngspice answered; -Daccept=true writes it anew.\n");
    for (Deck deck : decks) {
      text.append("deck ").append(deck.fingerprint()).append(' ').append(deck.name()).append('\n');
      fresh
          .getOrDefault(deck.name(), Map.of())
          .forEach((k, v) -> text.append(k).append(" = ").append(v).append('\n'));
    }
    try {
      Files.writeString(file, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Map<String, Map<String, Double>> read(List<Deck> decks) {
    Map<String, String> fingerprints = new HashMap<>();
    Map<String, Map<String, Double>> recorded = new HashMap<>();
    Map<String, Double> into = new LinkedHashMap<>();
    for (String line : lines()) {
      if (line.startsWith("deck ")) {
        String[] head = line.split(" ", 3);
        fingerprints.put(head[2], head[1]);
        into = new LinkedHashMap<>();
        recorded.put(head[2], into);
      } else if (!line.startsWith("#")) {
        int equals = line.indexOf(" = ");
        into.put(line.substring(0, equals), Double.valueOf(line.substring(equals + 3)));
      }
    }
    Map<String, Map<String, Double>> out = new LinkedHashMap<>();
    List<String> missing = new ArrayList<>();
    for (Deck deck : decks) {
      Map<String, Double> answers = recorded.remove(deck.name());
      if (answers == null || !deck.fingerprint().equals(fingerprints.get(deck.name()))) {
        missing.add(deck.name());
      } else {
        out.put(deck.name(), answers);
      }
    }
    if (!missing.isEmpty() || !recorded.isEmpty()) {
      throw new IllegalStateException(
          file
              + ": record again with -Daccept=true where ngspice is on the PATH; not recorded as asked: "
              + missing
              + ", recorded but not asked: "
              + recorded.keySet());
    }
    return out;
  }

  private List<String> lines() {
    try {
      return Files.exists(file) ? Files.readAllLines(file) : List.of();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void compare(
      Map<String, Map<String, Double>> fresh, Map<String, Map<String, Double>> kept) {
    fresh.forEach(
        (deck, answers) ->
            answers.forEach(
                (name, value) -> {
                  Double before = kept.getOrDefault(deck, Map.of()).get(name);
                  if (before == null
                      || Math.abs(before - value)
                          > RECORDED_TOLERANCE * Math.max(1e-6, Math.abs(value))) {
                    throw new IllegalStateException(
                        file + ": " + deck + " " + name + " was " + before + ", is " + value);
                  }
                }));
  }
}
