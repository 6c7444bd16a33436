package org.coilwright.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Briefs over the whole space of what is asked for, the same for the same seed. */
final class SeededBriefs {
  private static final List<String> CONTACTS =
      List.of(
          "1 A 30 V DC",
          "0.5 A at 30 V DC-13",
          "0.2 A at 24 V DC-13",
          "2 A 60 V DC",
          "5 A 250 V AC, 5 A 30 V DC",
          "0.3 A 125 V AC / 1 A 30 V DC",
          "B300",
          "R300",
          "B300/R300",
          "C300",
          "pilot duty 2 A 250 V AC",
          "10 (4) A 250 V AC",
          "3 A at 250 V AC-15, 1 A at 60 V DC-13",
          "50 mA 60 V DC");

  private final Random random;

  private SeededBriefs(long seed) {
    random = new Random(seed);
  }

  /** The brief of a seed. */
  static String of(long seed) {
    SeededBriefs briefs = new SeededBriefs(seed * 7919 + 17);
    return briefs.next();
  }

  private String next() {
    boolean nec = random.nextInt(10) < 3;
    List<String> lines = new ArrayList<>(List.of("brief: 1", "practice: " + (nec ? "nec" : "iec")));
    lines.add("load: {" + (nec ? american() : european()) + "}");
    if (random.nextInt(5) > 0) {
      boolean closed = random.nextBoolean();
      lines.add(
          "vessel: {litres: %s, closed: %s%s}"
              .formatted(
                  pick("80", "150", "300", "500"), closed, closed ? ", relief: 90..95 °C" : ""));
    }
    lines.add("controller: {supply: " + supply() + ", contact: \"" + pick(CONTACTS) + "\"}");
    lines.add(
        "distances: {board-to-box: %s m, box-to-load: %s m, controller-to-box: %s m}"
            .formatted(
                pick("0", "1", "3", "12", "40"),
                pick("0", "2", "8", "25"),
                pick("1", "10", "22", "60", "150")));
    String air = pick("25", "35", "40", "45", "50", "55", "60");
    lines.add("air: " + air + " °C");
    if (random.nextInt(3) == 0) {
      lines.add("room: " + pick("20", "25", air) + " °C");
    }
    if (random.nextInt(3) > 0) {
      lines.add(nec ? americanMains() : europeanMains());
    }
    if (random.nextInt(4) == 0) {
      lines.add("altitude: " + pick("300", "1200", "2500") + " m");
    }
    if (random.nextInt(2) == 0) {
      lines.add("island: none");
    }
    return String.join("\n", lines) + "\n";
  }

  private String european() {
    if (random.nextBoolean()) {
      return "power: %s kW, voltage: 230 V"
          .formatted(pick("0.5", "1", "1.5", "2", "2.4", "3", "3.6", "4.5", "6", "7.2"));
    }
    return "power: %s kW, voltage: 400 V, connection: %s"
        .formatted(
            pick("1.5", "3", "4.5", "6", "7.5", "9", "12", "15", "18", "24"),
            pick("star", "delta", "star-with-neutral"));
  }

  private String american() {
    return switch (random.nextInt(4)) {
      case 0 -> "power: %s kW, voltage: 120 V".formatted(pick("0.5", "1", "1.44", "1.65"));
      case 1 ->
          "power: %s kW, voltage: 208 V, connection: %s"
              .formatted(pick("3", "6", "9", "12"), pick("star", "delta"));
      default -> "power: %s kW, voltage: 240 V".formatted(pick("2", "3", "3.8", "4.5", "5.5", "9"));
    };
  }

  private String supply() {
    return random.nextInt(4) == 0
        ? "none"
        : "{voltage: %s V DC, limit: %s mA}"
            .formatted(pick("12", "24", "24", "48"), pick("30", "60", "100", "200", "350", "500"));
  }

  private String europeanMains() {
    String earthing = pick("TN-S", "TN-C-S", "TT");
    return "mains: {earthing: %s, fault-current: %s kA, loop-impedance: %s Ω}"
        .formatted(
            earthing,
            pick("2", "3", "6"),
            earthing.equals("TT") ? pick("20", "80") : pick("0.2", "0.35", "0.6", "0.9"));
  }

  private String americanMains() {
    return "mains: {earthing: TN-C-S, fault-current: %s kA, loop-impedance: %s Ω}"
        .formatted(pick("3", "5", "10"), pick("0.1", "0.2"));
  }

  private String pick(String... words) {
    return pick(List.of(words));
  }

  private String pick(List<String> words) {
    return words.get(random.nextInt(words.size()));
  }
}
