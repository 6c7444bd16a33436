package org.coilwright.checklist;

import java.util.List;

/**
 * Where a file that was given back no longer is what was printed. Whoever filled it in may have
 * seen something other than what is judged.
 *
 * @param name of the place to fill in; {@code pages} or {@code results} for the whole
 * @param details what its text needs, in the order of its placeholders
 */
public record Oddity(Kind kind, String name, List<String> details) {
  /** Copies the list. */
  public Oddity {
    details = List.copyOf(details);
  }

  /** One with its details. */
  public static Oddity of(Kind kind, String name, String... details) {
    return new Oddity(kind, name, List.of(details));
  }

  /** What differs, in a sentence. */
  public String sentence(Texts texts) {
    return texts.of("judge.odd." + kind.word, details.toArray());
  }

  /** What differs. The words are the ends of the keys of its texts. */
  public enum Kind {
    /** Pages that are not there as printed: which, and of how many. */
    PAGES("pages"),
    /** More pages than printed: how many. */
    ADDED("added"),
    /** A page with something on it that is no form field: which page, which kinds. */
    DRAWN_ON("drawn-on"),
    /** Attached results that are not what this program finds. */
    RESULTS("results"),
    /** Pages that another program printed and this one cannot compare: which program. */
    PROGRAM("program"),
    /** A field that no page shows. */
    HIDDEN("hidden"),
    /** A field that stands elsewhere than printed. */
    MOVED("moved"),
    /** A field that stands in several places. */
    MANY("many"),
    /** A field whose page shows another value than it holds: what it holds, what is shown. */
    SHOWN("shown"),
    /** A field that shows nothing although it holds something: what. */
    BLANK("blank"),
    /** A field whose look cannot be read. */
    UNREADABLE("unreadable");

    private final String word;

    Kind(String word) {
      this.word = word;
    }
  }
}
