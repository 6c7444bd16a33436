package org.coilwright.checklist;

import java.util.List;

/** Rows about one thing, before they are numbered and parted into sections of nine at most. */
record Topic(Section.Stage stage, String title, String beginWith, List<Row> rows) {}
