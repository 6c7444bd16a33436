package org.coilwright.checklist;

/** A part of the work: a section of rows, or a point nobody passes without consent. */
public sealed interface Step permits Section, Hold {}
