// Over 250 lines: the sheet and the small records it is made of.
package org.coilwright.checklist;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.coilwright.drawing.Picture;
import org.coilwright.netlist.Site;

/**
 * What the electrician reads and fills in, in the order it stands on paper. Plain text and numbers;
 * whoever draws it needs to know no electricity.
 *
 * @param texts in which language it is, and the words that are not in it
 * @param title title block
 * @param paper sheet size
 * @param parts what is printed behind the work sheet
 * @param notice who decides; stands on the first and on the sign-off page
 * @param summary the verdict
 * @param stopIf when to stop the work at once; at most three lines
 * @param findings heaviest first
 * @param accepted deviations somebody accepted: each needs the electrician's own initials
 * @param openPoints what could not be checked or rests on memory: each to be settled on site
 * @param cautions all that fit this circuit; each stands before the section it belongs to
 * @param elsewhere those of them that belong to no section; they stand on the first page
 * @param wiringNotes how the wires are put in
 * @param wires one line a wire
 * @param figures diagrams and plots, each on a place of its own
 * @param steps sections of tests and the hold point between them, in order
 * @param coverage which wiring mistake shows at which step
 * @param satisfied what was computed and found inside its limit
 * @param broken what follows when one thing breaks, worst first
 * @param instruments what is measured with; make, number and calibration date are filled in
 * @param signers who signs
 */
public record Checklist(
    Texts texts,
    TitleBlock title,
    Paper paper,
    Set<Part> parts,
    List<String> notice,
    Summary summary,
    List<String> stopIf,
    List<FindingEntry> findings,
    List<AcceptedEntry> accepted,
    List<OpenPoint> openPoints,
    List<Caution> cautions,
    List<Caution> elsewhere,
    List<String> wiringNotes,
    List<WireRow> wires,
    List<Figure> figures,
    List<Step> steps,
    Coverage coverage,
    List<SatisfiedEntry> satisfied,
    List<BrokenRow> broken,
    List<Instrument> instruments,
    List<Signer> signers) {

  /** A box to know by heart holds fewer than four items. */
  public static final int MOST_STOP_LINES = 3;

  /**
   * Copies the lists.
   *
   * @throws IllegalArgumentException if the stop box is too long or nobody signs
   */
  public Checklist {
    notice = List.copyOf(notice);
    stopIf = List.copyOf(stopIf);
    findings = List.copyOf(findings);
    accepted = List.copyOf(accepted);
    openPoints = List.copyOf(openPoints);
    cautions = List.copyOf(cautions);
    elsewhere = List.copyOf(elsewhere);
    parts = Set.copyOf(parts);
    wiringNotes = List.copyOf(wiringNotes);
    wires = List.copyOf(wires);
    figures = List.copyOf(figures);
    steps = List.copyOf(steps);
    satisfied = List.copyOf(satisfied);
    broken = List.copyOf(broken);
    instruments = List.copyOf(instruments);
    signers = List.copyOf(signers);
    if (stopIf.size() > MOST_STOP_LINES) {
      throw new IllegalArgumentException("the stop box holds at most three lines");
    }
    if (notice.isEmpty() || signers.isEmpty()) {
      throw new IllegalArgumentException("a checklist needs its notice and somebody who signs");
    }
  }

  /** Every row of every section, in order. */
  public List<TestRow> rows() {
    return steps.stream()
        .filter(Section.class::isInstance)
        .map(Section.class::cast)
        .flatMap(section -> section.rows().stream())
        .toList();
  }

  /** True if a finding must be mended before anything is switched on: a mend sheet. */
  public boolean isStopped() {
    return findings.stream().anyMatch(finding -> finding.weight().equals("STOP"));
  }

  /** The row of a test in which a wire is measured; empty if it is not measured. */
  public Optional<TestRow> testOf(WireRow wire) {
    return rows().stream().filter(row -> row.wire().equals(wire.name())).findFirst();
  }

  /** The same on another size of paper. */
  public Checklist on(Paper other) {
    return with(other, parts);
  }

  /** The same with other parts behind the work sheet. */
  public Checklist with(Set<Part> others) {
    return with(paper, others);
  }

  private Checklist with(Paper otherPaper, Set<Part> otherParts) {
    return new Checklist(
        texts,
        title,
        otherPaper,
        otherParts,
        notice,
        summary,
        stopIf,
        findings,
        accepted,
        openPoints,
        cautions,
        elsewhere,
        wiringNotes,
        wires,
        figures,
        steps,
        coverage,
        satisfied,
        broken,
        instruments,
        signers);
  }

  /** What can be printed behind the work sheet; all of it travels in the attached results too. */
  public enum Part {
    /** For owner and planner: findings, settings rehearsed, faults, cautions in full. */
    ANNEX,
    /** Where readings come from, what was satisfied, sources. */
    ARCHIVE;

    /** What is printed if nothing else is asked for. */
    public static final Set<Part> USUAL = Set.of(ANNEX);

    /** As it is typed. */
    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Sheet size, in points. */
  public enum Paper {
    A4(595.276, 841.89),
    LETTER(612, 792);

    private final double width;
    private final double height;

    Paper(double width, double height) {
      this.width = width;
      this.height = height;
    }

    /** The one that is usual where that practice is followed. */
    public static Paper usual(Site.Practice practice) {
      return practice == Site.Practice.NEC ? LETTER : A4;
    }

    /** Short side, in points. */
    public double width() {
      return width;
    }

    /** Long side, in points. */
    public double height() {
      return height;
    }

    /** As it is typed. */
    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * Title block. Whatever the netlist leaves out reads {@code not stated}.
   *
   * @param sha256 lower-case hex digest of the netlist's bytes
   * @param program name and version of the program
   * @param printed date of printing, ISO
   */
  public record TitleBlock(
      String circuit,
      String reference,
      String revision,
      String date,
      String preparedBy,
      String note,
      String file,
      String sha256,
      String program,
      String printed) {
    /** Enough of the digest to tell two files apart at a glance. */
    public String shortDigest() {
      return sha256.substring(0, Math.min(12, sha256.length()));
    }
  }

  /**
   * The verdict.
   *
   * @param word STOP, FIX, NOTE or CLEAR
   * @param sentence what it means for the work
   * @param counts how many of each, and how much was looked at
   */
  public record Summary(String word, String sentence, String counts) {}

  /**
   * What is measured with.
   *
   * @param name such as {@code instrument.clamp-ammeter}
   * @param text as printed
   */
  public record Instrument(String name, String text) {}

  /**
   * Who signs.
   *
   * @param name such as {@code signer.tested-by}
   * @param text as printed
   */
  public record Signer(String name, String text) {}

  /**
   * A finding that the netlist accepts. It stands among the findings as well.
   *
   * @param name such as {@code accepted.load.too-small-Q1}, of this entry alone
   * @param at designations and line of the netlist
   * @param because the reason, as written
   * @param by who accepted it, as written
   * @param counts true for a STOP: what must not be energised cannot be signed away
   */
  public record AcceptedEntry(
      String name,
      String weight,
      String rule,
      String at,
      String headline,
      String because,
      String by,
      boolean counts) {}

  /**
   * A finding.
   *
   * @param name such as {@code finding.coil-too-low-K1}, of this finding alone
   * @param at designations and line of the netlist
   * @param value what was computed, with unit; may be empty
   * @param limit likewise
   * @param detail how it was computed, and who accepted it; may be empty
   */
  public record FindingEntry(
      String name,
      String weight,
      String rule,
      String at,
      String headline,
      String numbers,
      String value,
      String limit,
      String detail,
      String remedy,
      Grounds grounds) {}

  /**
   * Something the program could not settle.
   *
   * @param name such as {@code point.coil-range-of-K1}, of this point alone
   * @param number such as {@code P3}
   * @param what what to find out on site
   * @param why why it is open
   */
  public record OpenPoint(String name, String number, String what, String why) {}

  /**
   * A danger of this circuit.
   *
   * @param number such as {@code C2}
   * @param source printed citation, or that it is common practice
   */
  public record Caution(String number, String title, List<String> paragraphs, String source) {}

  /**
   * A wire; the tick box stands beside it.
   *
   * @param name such as {@code wire-12.wired}, of this wire alone
   * @param carries mains, extra-low voltage or PE
   * @param state letters of what is done to the circuit before it is measured; may be empty
   */
  public record WireRow(
      String name,
      String number,
      String from,
      String to,
      String run,
      String size,
      String length,
      String colour,
      String carries,
      String state) {}

  /**
   * A picture.
   *
   * @param title its heading
   * @param alternative what it shows, for those who do not see it; at least a sentence
   * @param beside what it belongs to
   */
  public record Figure(String title, String alternative, Picture picture, Beside beside) {
    /** What a figure stands next to. */
    public enum Beside {
      WIRES,
      SETTINGS
    }
  }

  /** The figures that belong to something, in order. */
  public List<Figure> figures(Figure.Beside beside) {
    return figures.stream().filter(f -> f.beside() == beside).toList();
  }

  /**
   * Single faults that behave alike.
   *
   * @param harm how bad it is, in words; rows of equal harm stand together
   * @param what what breaks
   * @param then what follows
   * @param stops what still stops a load that stays on; a dash if there is nothing to stop
   */
  public record BrokenRow(String harm, String what, String then, String stops) {}

  /**
   * Everything one rule looked at and found inside its limit, told by what is nearest to its limit.
   * The attached results have every check.
   *
   * @param name such as {@code satisfied.coil-too-low}, of this rule alone
   * @param title the rule in a few words
   * @param count how many checks
   * @param at designations of the tightest of them
   * @param value what was computed there; may be empty
   * @param limit likewise
   * @param grounds the sources of all of them, as sure as the least sure
   */
  public record SatisfiedEntry(
      String name,
      String rule,
      String title,
      int count,
      String at,
      String value,
      String limit,
      Grounds grounds) {}
}
