package org.coilwright.draft;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.coilwright.netlist.BriefReader;
import org.coilwright.rules.AllRules;
import org.coilwright.table.Tables;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is asked for in a shop is the least: any part at least as good passes too. */
class BetterPartsTest {
  private static final int TIMES = 12;

  /** What is drafted, and what a sheet may say that is at least as good. */
  private static final List<List<String>> BETTER =
      List.of(
          List.of(
              "resistance: 692..2880 Ω", "resistance: 1440 Ω ± 10 %", "resistance: 1000 Ω ± 10 %"),
          List.of("range: 80..110 %", "range: 75..110 %", "range: 70..130 %"),
          List.of("release: 5 %", "release: 10 %", "release: 15 %"),
          List.of("AC-15: 0.5 A at 230 V", "AC-15: 1.5 A at 240 V", "AC-15: 3 A at 250 V"),
          List.of("AC-1: 8 A at 250 V", "AC-1: 10 A at 250 V", "AC-1: 16 A at 250 V"),
          List.of("ratings: {AC-1: 16 A at 400 V}", "ratings: {AC-1: 25 A at 400 V}"),
          List.of("pick-up: 69 VA, hold: 4.6 VA", "pick-up: 15 VA, hold: 3.8 VA"),
          List.of("hold-power: 1.6 W", "hold-power: 1.1 W"),
          List.of("life: {AC-1: 100000", "life: {AC-1: 200000"),
          List.of("rated-air: 40 °C", "rated-air: 60 °C"),
          List.of("rated-air: 45 °C", "rated-air: 60 °C"),
          List.of(
              "test: 4 kV, clearance: 8 mm, creepage: 8 mm",
              "test: 5 kV, clearance: 10 mm, creepage: 10 mm"),
          List.of("breaking-capacity: 6 kA", "breaking-capacity: 10 kA"),
          List.of("reverse-voltage: 400 V", "reverse-voltage: 1000 V"),
          List.of("least-load: 10 mA at 12 V", "least-load: 1 mA at 5 V"));

  private final Tables tables = Tables.load();
  private final Judges judges = Judges.of(AllRules.of(tables), AllRules::runner);

  @ParameterizedTest
  @ValueSource(strings = {"guest-house", "tub"})
  void a_part_at_least_as_good_as_what_is_asked_for_passes(String name) throws IOException {
    byte[] brief = Files.readAllBytes(Path.of("src/test/resources/briefs", name + ".yaml"));
    Draft.Answer answer =
        Draft.of(((BriefReader.Good) BriefReader.read(name, brief)).brief(), tables, judges);
    String drafted = ((Draft.Drafted) answer).netlist();
    Proof proof = new Proof(tables, judges);
    Random random = new Random(14);
    int changed = 0;
    for (int i = 0; i < TIMES; i++) {
      String bought = drafted;
      for (List<String> figures : BETTER) {
        String before = bought;
        bought = bought.replace(figures.get(0), figures.get(random.nextInt(figures.size())));
        changed += bought.equals(before) ? 0 : 1;
      }
      assertEquals(List.of(), Proof.against(proof.of(bought)), bought);
      assertEquals(List.of(), Proof.vital(proof.of(bought)), bought);
    }
    assertTrue(changed > 3 * TIMES, "only " + changed + " figures were changed");
  }
}
