package org.coilwright.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.coilwright.solve.Trouble;
import org.junit.jupiter.api.Test;

class GapWordsTest {
  @Test
  void diodes_that_do_not_settle_are_named_as_what_is_missing() {
    Trouble.Gap gap = new Trouble.NotSolved(Map.of(), List.of("V1", "V2"));
    assertEquals("a settled current through V1, V2", Troubles.missing(gap));
    assertEquals("which of V1, V2 conduct cannot be settled", Troubles.reason(gap));
  }

  @Test
  void contacts_that_are_too_many_are_named_by_their_number() {
    Trouble.Gap gap = new Trouble.NotExplored(Map.of(), List.of("S1", "S2", "S3"), 2, false);
    assertEquals("a smaller group than S1, S2 and 1 more", Troubles.missing(gap));
    assertEquals("3 contacts act on one another and at most 2 are explored", Troubles.reason(gap));
  }
}
