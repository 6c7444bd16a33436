package org.coilwright.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Each rule's page says what its facts say. {@code -Daccept=true} writes the pages. */
class RulePagesTest {
  private static final Path PAGES = Path.of("safety-notes/rules");
  private static final boolean ACCEPT = Boolean.getBoolean("accept");

  @TestFactory
  Stream<DynamicTest> a_page_says_what_the_rule_says() {
    Tables tables = Tables.load();
    RulePages pages = new RulePages(tables);
    return AllRules.of(tables).stream()
        .map(Rule::facts)
        .map(facts -> DynamicTest.dynamicTest(facts.id(), () -> assertPage(pages, facts)));
  }

  private static void assertPage(RulePages pages, RuleFacts facts) throws IOException {
    Path file = PAGES.resolve(facts.id() + ".md");
    String page = pages.page(facts, example(facts));
    if (ACCEPT) {
      Files.createDirectories(PAGES);
      Files.writeString(file, page);
      return;
    }
    assertTrue(Files.exists(file), facts.id() + " has no page; run with -Daccept=true");
    assertEquals(page, Fixture.read(file));
  }

  /** The first twins of the rule whose bad one has a text. */
  private static Optional<RulePages.Twins> example(RuleFacts facts) {
    return Fixture.all().stream()
        .filter(f -> f.rule().equals(facts.id()) && f.kind() == Fixture.Kind.BAD)
        .filter(f -> Files.exists(f.expected()))
        .flatMap(bad -> bad.twin().map(good -> new RulePages.Twins(bad, good)).stream())
        .findFirst();
  }

  @Test
  void no_page_is_left_of_a_rule_that_is_gone() throws IOException {
    Set<String> rules =
        AllRules.of(Tables.load()).stream()
            .map(rule -> rule.facts().id() + ".md")
            .collect(Collectors.toCollection(TreeSet::new));
    try (Stream<Path> files = Files.list(PAGES)) {
      Set<String> orphans =
          files
              .map(file -> file.getFileName().toString())
              .filter(name -> !rules.contains(name))
              .collect(Collectors.toCollection(TreeSet::new));
      assertEquals(Set.of(), orphans);
    }
  }
}
