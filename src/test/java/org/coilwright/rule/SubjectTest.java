package org.coilwright.rule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Written;
import org.coilwright.rule.Outcome.Satisfied;
import org.coilwright.rule.Outcome.Undecided;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a rule says of its subject arrives as it was said. */
class SubjectTest {
  private static final Tables TABLES = Tables.load();
  private static final Mark HERE = new Mark("x.yaml", 3, 5, 7);
  private static final Mark THERE = new Mark("x.yaml", 9, 1, 4);
  private static final Basis BASIS = new Basis(List.of("a"), Standing.PUBLISHED);
  private static final RuleFacts FACTS = facts("coil.too-low", "what", "common-practice");
  private static final Subject SUBJECT = Subject.of(FACTS, HERE, "K1.A1", "K1", "W1");

  private static RuleFacts facts(String id, String what, String... sources) {
    return RuleFacts.of(id, Weight.STOP, "title")
        .what(what)
        .why("why")
        .remedy("remedy")
        .blind("blind")
        .sources(sources);
  }

  @Test
  void what_is_satisfied_keeps_its_value_and_limit() {
    Measure value = new Measure(20, "V");
    Measure limit = new Measure(19, "V");
    assertEquals(
        new Satisfied(
            FACTS,
            List.of("K1.A1", "K1", "W1"),
            HERE,
            "said",
            Optional.of(value),
            Optional.of(limit),
            BASIS),
        SUBJECT.satisfied("said", value, limit, BASIS));
    assertEquals(Optional.empty(), SUBJECT.satisfied("said", BASIS).value());
    assertEquals(BASIS, SUBJECT.satisfied("said", BASIS).basis());
  }

  @Test
  void what_is_undecided_names_what_is_missing_and_who_settles_it() {
    assertEquals(
        new Undecided(FACTS, SUBJECT.at(), HERE, "coil.range of K1", "said", ""),
        SUBJECT.undecided("coil.range of K1", "said"));
    assertEquals(
        new Undecided(FACTS, SUBJECT.at(), HERE, "let-through", "said", "ask"),
        SUBJECT.unsettled("let-through", "said", "ask"));
  }

  @Test
  void a_finding_has_all_that_was_said_of_it() {
    Violated finding =
        SUBJECT
            .violated("headline", "numbers", "label")
            .alsoAt(THERE, "there")
            .alsoAt(HERE, "again")
            .lighter(Weight.NOTE)
            .detail("detail")
            .measured(new Measure(1, "V"), new Measure(2, "V"))
            .change(HERE, "x")
            .changes(List.of(THERE), "y")
            .change(List.of(new Change(HERE, "z")))
            .change(Optional.of(new Written<>("w", "w", THERE)), "v")
            .change(Optional.of(new Written<>("w", "w", THERE)), "")
            .todo("remedy", BASIS);
    assertEquals(
        new Violated(
            FACTS,
            Weight.NOTE,
            SUBJECT.at(),
            "headline",
            "numbers",
            List.of(new Place(HERE, "label"), new Place(THERE, "there")),
            "detail",
            "remedy",
            Optional.of(new Measure(1, "V")),
            Optional.of(new Measure(2, "V")),
            BASIS,
            List.of(
                new Change(HERE, "x"),
                new Change(THERE, "y"),
                new Change(HERE, "z"),
                new Change(THERE, "v"))),
        finding);
    assertEquals(HERE, finding.mark());
    assertEquals(Weight.STOP, SUBJECT.violated("h", "n", "l").todo("r", BASIS).weight());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "  "})
  void a_rule_that_lacks_a_part_of_its_facts_is_refused(String what) {
    assertThrows(IllegalArgumentException.class, () -> facts("coil.x", what, "common-practice"));
  }

  @Test
  void a_rule_without_a_source_is_refused() {
    assertThrows(IllegalArgumentException.class, () -> facts("coil.x", "what"));
  }

  @Test
  void facts_keep_what_goes_along_with_what() {
    RuleFacts all =
        FACTS.consequenceOf("a.b").carriedBy("c.d").meansWiredOtherwise().alsoConsequenceOf("e.f");
    assertEquals(List.of("a.b", "e.f"), all.silencedBy());
    assertEquals(List.of("c.d"), all.carriedBy());
    assertTrue(all.wiredOtherwise());
    assertEquals("coil", all.group());
  }

  @Test
  void a_basis_names_each_source_once_and_is_as_sure_as_its_weakest() {
    Cited<Double> memory = TABLES.figure("sizing.rated-air").map(any -> 1.0);
    Basis one = Basis.of(memory, memory);
    assertEquals(1, one.sources().size());
    assertEquals(memory.standing(), one.standing());
    Basis both = BASIS.and(new Basis(List.of("a", "b"), Standing.FROM_MEMORY));
    assertEquals(List.of("a", "b"), both.sources());
    assertEquals(Standing.FROM_MEMORY, both.standing());
    assertEquals(
        List.of(TABLES.source("common-practice").cite()),
        Basis.of(FACTS, TABLES, Standing.COMMON_PRACTICE).sources());
  }

  /** What is common practice has no place in a source. */
  @Test
  void a_basis_puts_the_place_behind_the_source() {
    Cited<Double> figure = TABLES.figure("sizing.rated-air");
    Cited<Double> practice = new Cited<>(1.0, figure.source(), "so", Standing.COMMON_PRACTICE);
    Cited<Double> placed = new Cited<>(1.0, figure.source(), "Table 3", Standing.PUBLISHED);
    Cited<Double> bare = new Cited<>(1.0, figure.source(), "", Standing.PUBLISHED);
    String cite = figure.source().cite();
    assertEquals(
        List.of(cite + ": so", cite + ", Table 3", cite),
        Basis.of(practice, placed, bare).sources());
  }
}
