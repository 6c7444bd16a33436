package org.coilwright.netlist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import org.coilwright.netlist.Tree.Leaf;
import org.coilwright.quantity.Parsed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class IntentParserTest {
  private static Parsed<Intent> parse(String text) {
    return IntentParser.parse(new Leaf(text, new Mark("x", 3, 7, 7 + text.length()), 0));
  }

  private static String shown(Intent intent) {
    if (intent instanceof Intent.And and) {
      return "(" + shown(and.left()) + " & " + shown(and.right()) + ")";
    }
    if (intent instanceof Intent.Or or) {
      return "(" + shown(or.left()) + " | " + shown(or.right()) + ")";
    }
    if (intent instanceof Intent.Not not) {
      return "!" + shown(not.of());
    }
    return ((Intent.Name) intent).contact().value();
  }

  @ParameterizedTest
  @CsvSource({
    "U1.heat, U1.heat",
    "S1 and S2 or S3, ((S1 & S2) | S3)",
    "S1 or S2 and S3, (S1 | (S2 & S3))",
    "not S1 and S2, (!S1 & S2)",
    "not (S1 and S2), !(S1 & S2)",
    "not not S1, !!S1",
    "(S1), S1",
    "S1 and(S2 or S3)and S4, ((S1 & (S2 | S3)) & S4)",
  })
  void not_binds_closest_and_brackets_decide(String text, String expected) {
    Parsed.Good<?> good = assertInstanceOf(Parsed.Good.class, parse(text));
    assertEquals(expected, shown((Intent) good.value()));
  }

  @Test
  void each_name_knows_its_place() {
    Parsed.Good<?> good = assertInstanceOf(Parsed.Good.class, parse("S1 and U1.heat"));
    Intent.And and = assertInstanceOf(Intent.And.class, good.value());
    Intent.Name name = assertInstanceOf(Intent.Name.class, and.right());
    assertEquals(new Mark("x", 3, 14, 21), name.contact().mark());
  }

  @ParameterizedTest
  @CsvSource({
    "S1 S2, \"S2\" does not belong here",
    "S1 and, the expression ends too early",
    "and S1, a contact is missing before \"and\"",
    "(S1, a bracket is not closed",
    "S1), \")\" does not belong here",
    "S1 && S2, \"&&\" does not belong here",
    "1S, \"1S\" is not a contact",
  })
  void a_failure_says_where(String text, String what) {
    assertEquals(what, assertInstanceOf(Parsed.Bad.class, parse(text)).what());
  }

  @Test
  void endless_expressions_are_refused() {
    assertEquals(
        "the expression is nested too deeply",
        assertInstanceOf(Parsed.Bad.class, parse("(".repeat(100) + "S1")).what());
    assertEquals(
        "the expression is longer than anyone can follow",
        assertInstanceOf(Parsed.Bad.class, parse("S1 and ".repeat(500) + "S1")).what());
  }
}
