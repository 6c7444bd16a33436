package org.coilwright.draft;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.coilwright.Coilwright;
import org.coilwright.netlist.Brief;
import org.coilwright.netlist.BriefReader;
import org.coilwright.netlist.Includes;
import org.coilwright.rule.Verdict;
import org.coilwright.rules.AllRules;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;

/**
 * Three hundred briefs over the whole space. Each gives a netlist in which {@code check} finds
 * nothing to stop or to fix, or a refusal that a search through larger figures of every arrangement
 * confirms. Each build takes a part; {@code mvn -Psweep test} takes all.
 */
class DraftSeedsTest {
  private static final int ALL = 300;
  private static final int PART = 20;
  private static final boolean WHOLE = System.getProperty("sweep", "").equals("all");

  private final Tables tables = Tables.load();
  private final Judges judges = Judges.of(AllRules.of(tables), AllRules::runner);

  @Test
  void a_brief_gives_what_passes_or_a_refusal_that_holds() throws IOException {
    List<String> wrong = new ArrayList<>();
    List<String> told = new ArrayList<>();
    int passed = 0;
    int refused = 0;
    for (long seed : seeds()) {
      String text = SeededBriefs.of(seed);
      Brief brief = read(text);
      Draft.Answer answer = Draft.of(brief, tables, judges);
      if (answer instanceof Draft.Drafted drafted) {
        passed++;
        told.add(seed + " " + drafted.title());
        if (!isClean(drafted.netlist())) {
          wrong.add(seed + ": check finds something in\n" + drafted.netlist());
        }
      } else if (answer instanceof Draft.Nothing nothing) {
        refused++;
        told.add(seed + " refused: " + nothing.others().get(0).lines());
        assertTrue(
            nothing.others().stream().noneMatch(o -> o.lines().isEmpty()), "no reason: " + text);
        Search.through(brief, tables, judges)
            .ifPresent(found -> wrong.add(seed + ": refused, and yet passes\n" + found));
      } else {
        wrong.add(seed + ": unusable\n" + text);
      }
    }
    Path target = Path.of("target");
    if (Files.isDirectory(target)) {
      Files.writeString(
          target.resolve("drafts.txt"),
          "passed %s, refused %s, wrong %s%n%s%n"
              .formatted(passed, refused, wrong.size(), String.join("\n", told)));
    }
    assertEquals(List.of(), wrong);
    assertTrue(passed > refused, passed + " passed, " + refused + " refused");
  }

  private static List<Long> seeds() {
    // a part that is spread over all of them
    return LongStream.range(0, ALL).filter(s -> WHOLE || s % (ALL / PART) == 0).boxed().toList();
  }

  private static Brief read(String text) {
    BriefReader.Read read = BriefReader.read("brief", text.getBytes(StandardCharsets.UTF_8));
    return ((BriefReader.Good) read).brief();
  }

  private static boolean isClean(String netlist) {
    Coilwright.Answer answer = Coilwright.check(netlist, Includes.none());
    return answer instanceof Coilwright.Judged judged
        && Optional.of(judged.report().verdict())
            .filter(v -> v == Verdict.NOTE || v == Verdict.CLEAR)
            .isPresent();
  }
}
