package org.coilwright.checklist;

/**
 * What came of the tests: goes into the final record.
 *
 * @param filledIn what was written and ticked
 * @param judgement of it
 * @param readBack date, ISO
 * @param program that read it back
 * @param sha256 digest of the filled-in file, lower-case hex
 * @param signed true if a signature by certificate follows, without which it is no whole record
 */
public record TestRecord(
    FilledIn filledIn,
    Judgement judgement,
    String readBack,
    String program,
    String sha256,
    boolean signed) {}
