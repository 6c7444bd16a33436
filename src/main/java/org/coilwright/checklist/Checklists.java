// Over 250 lines: the whole order of the sheet stands in one place.
package org.coilwright.checklist;

import static java.util.stream.Collectors.toSet;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.checklist.Checklist.BrokenRow;
import org.coilwright.checklist.Checklist.Caution;
import org.coilwright.checklist.Checklist.Instrument;
import org.coilwright.checklist.Checklist.Paper;
import org.coilwright.checklist.Checklist.Signer;
import org.coilwright.checklist.Checklist.Summary;
import org.coilwright.checklist.Checklist.TitleBlock;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.rule.FaultWords;
import org.coilwright.rule.Report;
import org.coilwright.rule.Verdict;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Faults;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.CitedTable;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Makes the checklist for a circuit from what the rules said and what the study computed. */
public final class Checklists {
  private final Tables tables;
  private final Texts texts;

  /** In English. */
  public Checklists(Tables tables) {
    this(tables, Texts.english());
  }

  /** In a language. */
  public Checklists(Tables tables, Texts texts) {
    this.tables = tables;
    this.texts = texts;
  }

  /**
   * The checklist of one circuit. Pure: the same arguments give an equal checklist.
   *
   * @param report what the rules said about the netlist that {@code study} was made from
   * @param program name and version of the program, as printed
   * @param printed date of printing
   */
  public Checklist of(Report report, Study study, String program, LocalDate printed) {
    OutcomeEntries outcomes = new OutcomeEntries(report, texts);
    Draft draft = draft(report, study);
    Anatomy anatomy = draft.tests().anatomy();
    boolean stopped = report.verdict() == Verdict.STOP;
    List<Step> steps = stopped ? draft.stopped().steps() : draft.plan().steps();
    return new Checklist(
        texts,
        title(report.netlist(), program, printed),
        Paper.usual(report.netlist().site().practice().value()),
        Checklist.Part.USUAL,
        List.of(texts.of("notice.who-decides"), texts.of("notice.as-built")),
        summary(report),
        List.of(texts.of("stop-if.reading"), texts.of("stop-if.heat"), texts.of("stop-if.differs")),
        outcomes.findings(),
        stopped ? List.of() : outcomes.accepted(),
        stopped ? List.of() : outcomes.openPoints(),
        draft.cautions(),
        stopped ? List.of() : draft.elsewhere(),
        wiringNotes(),
        wires(anatomy, draft.plan(), stopped),
        new Figures(texts, tables).of(report, study),
        steps,
        draft.coverage(),
        outcomes.satisfied(),
        broken(study),
        instruments(steps),
        List.of(
            new Signer("signer.prepared-by", texts.of("signer.prepared-by")),
            new Signer("signer.tested-by", texts.of("signer.tested-by")),
            new Signer("signer.accepted-by", texts.of("signer.accepted-by"))));
  }

  /**
   * What readings outside their bands on that checklist probably mean, in its language. Names of
   * rows are those of {@link #of}.
   */
  public Diagnosis diagnosis(Report report, Study study) {
    Draft draft = draft(report, study);
    return new WiringDiagnosis(draft.tests(), draft.plan());
  }

  /** What {@link #of} would say of the mistakes in the wiring, without all the rest. */
  public Coverage coverage(Report report, Study study) {
    return draft(report, study).coverage();
  }

  /** The rows and what they are made from. */
  private record Draft(
      DeadTests tests,
      DeadTopics dead,
      Plan plan,
      List<Caution> cautions,
      List<Caution> elsewhere) {
    /** What is left to do on a circuit that must not be energised. */
    Plan stopped() {
      Plan isolate = plan.empty();
      isolate.add(List.of(dead.isolate()));
      return isolate;
    }

    Coverage coverage() {
      return new Coverages(tests, plan, dead.added()).coverage();
    }
  }

  /** The wiring list; a mend sheet has none, nor has a circuit without a wire to measure. */
  private List<Checklist.WireRow> wires(Anatomy anatomy, Plan plan, boolean stopped) {
    Map<String, String> states = new HashMap<>();
    for (Plan.Placed placed : plan.rows()) {
      String wire = placed.row().form().wire();
      if (!wire.isEmpty()) {
        states.put(wire, ContinuityRows.letters(placed.row(), anatomy));
      }
    }
    return stopped || states.isEmpty() ? List.of() : new WireRows(anatomy, texts).rows(states);
  }

  private Draft draft(Report report, Study study) {
    Anatomy anatomy = new Anatomy(study);
    Cautions.Chosen cautions = new Cautions(tables, texts).choose(Condition.of(anatomy));
    DeadTests tests = new DeadTests(anatomy, new Bands(tables, texts), texts);
    DeadTopics dead = new DeadTopics(tests);
    Plan plan = plan(tests, dead, cautions, report);
    // only the plan knows which of them no section took
    return new Draft(tests, dead, plan, cautions.all(), cautions.leftOver());
  }

  /** When a wire is ticked; and the torques of the standard for clamps that state none. */
  private List<String> wiringNotes() {
    List<String> torques = new ArrayList<>();
    Optional<Cited<Double>> any = Optional.empty();
    for (CitedTable.Row row : tables.table("terminal-torque").rows()) {
      Optional<Cited<Double>> torque =
          row.number("II").filter(t -> t.standing() == Standing.PUBLISHED);
      Optional<Cited<String>> thread = row.word("thread");
      if (torque.isPresent() && thread.isPresent()) {
        torques.add(thread.get().value() + " " + texts.figure(plain(torque.get().value())));
        any = torque;
      }
    }
    List<String> notes = new ArrayList<>(List.of(texts.of("wires.note")));
    any.ifPresent(
        cited ->
            notes.add(
                texts.of(
                    "wires.torque",
                    String.join(", ", torques),
                    cited.source().cite(),
                    cited.place())));
    return notes;
  }

  private static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  private TitleBlock title(Netlist netlist, String program, LocalDate printed) {
    Netlist.About about = netlist.about();
    return new TitleBlock(
        about.title().value(),
        stated(about.reference()),
        stated(about.revision()),
        stated(about.date()),
        stated(about.preparedBy()),
        about.note().orElse(""),
        netlist.text().file(),
        netlist.text().sha256(),
        program,
        printed.toString());
  }

  private String stated(Optional<String> text) {
    return text.filter(t -> !t.isBlank()).orElse(texts.of("not-stated"));
  }

  private Summary summary(Report report) {
    String counts =
        texts.of(
            "verdict.counts",
            report.count(Weight.STOP),
            report.count(Weight.FIX),
            report.count(Weight.NOTE),
            report.satisfied().size(),
            report.undecided().size());
    String sentence = texts.of("verdict." + Texts.key(report.verdict()));
    return new Summary(report.verdict().name(), sentence, counts);
  }

  private Plan plan(DeadTests tests, DeadTopics dead, Cautions.Chosen cautions, Report report) {
    Anatomy anatomy = tests.anatomy();
    LiveTopics live = new LiveTopics(anatomy, tests.bands(), texts);
    Plan plan = new Plan(cautions, texts);
    plan.add(dead.topics());
    plan.add(live.beforeTheHold());
    plan.hold(
        "hold.before-any-supply",
        texts.of("hold.before-any-supply"),
        conditions(anatomy, plan, report, false));
    plan.add(live.withLoadsOff());
    List<Topic> loads = live.loads();
    if (!loads.isEmpty()) {
      plan.hold(
          "hold.before-mains",
          texts.of("hold.before-mains"),
          conditions(anatomy, plan, report, true));
    }
    plan.add(loads);
    plan.add(new SettingTopics(anatomy, texts).topics());
    return plan;
  }

  private List<String> conditions(Anatomy anatomy, Plan plan, Report report, boolean again) {
    List<String> conditions = new ArrayList<>();
    conditions.add(texts.of("hold.rows", plan.sections()));
    if (!again) {
      conditions.add(texts.of("hold.wires"));
      conditions.add(texts.of("hold.points"));
    }
    anatomy.parts(Part.Heater.class).stream()
        .filter(h -> again && h.vessel().isPresent())
        .forEach(h -> conditions.add(texts.of("hold.vessel-full", h.name())));
    conditions.add(texts.of(again ? "hold.covers-and-people" : "hold.covers-and-joints"));
    if (again && !anatomy.inputs().isEmpty() && anatomy.loadsStayOff()) {
      List<String> on = new ArrayList<>();
      anatomy.parts(Part.Mains.class).forEach(mains -> on.add(mains.name()));
      on.addAll(anatomy.controlProtection());
      conditions.add(texts.of("hold.mains-is-on", String.join(", ", on)));
    }
    if (!again && !report.accepted().isEmpty()) {
      conditions.add(texts.of("hold.accepted"));
    }
    return conditions;
  }

  private List<BrokenRow> broken(Study study) {
    return Faults.of(study).classes().stream()
        .map(
            alike ->
                new BrokenRow(
                    texts.of("harm." + Texts.key(alike.like().harm())),
                    FaultWords.what(alike),
                    FaultWords.then(alike.like()),
                    FaultWords.stoppedBy(alike.like())))
        .toList();
  }

  /** Only what some row asks for. */
  private List<Instrument> instruments(List<Step> steps) {
    List<TestRow> rows =
        steps.stream()
            .filter(Section.class::isInstance)
            .flatMap(s -> ((Section) s).rows().stream())
            .toList();
    Set<String> units = rows.stream().map(r -> r.expected().unit()).collect(toSet());
    List<String> instruments = new ArrayList<>(List.of("voltage-tester", "multimeter"));
    List<String> testers = new ArrayList<>();
    if (rows.stream().anyMatch(r -> r.name().contains("protective-conductor"))) {
      testers.add("low-ohmmeter");
    }
    if (units.contains("MΩ")) {
      testers.add("insulation-tester");
    }
    if (rows.stream().anyMatch(r -> r.name().endsWith("loop-impedance"))) {
      testers.add("loop-tester");
    }
    if (units.contains("ms")) {
      testers.add("rcd-tester");
    }
    // one instrument does all that where more than one of it is needed
    instruments.addAll(testers.size() > 1 ? List.of("installation-tester") : testers);
    if (units.contains("A")) {
      instruments.add("clamp-ammeter");
    }
    if (!rows.isEmpty() && rows.stream().anyMatch(r -> !r.wire().isEmpty())) {
      instruments.add("torque-screwdriver");
    }
    if (units.contains("°C")) {
      instruments.add("thermometer");
    }
    return instruments.stream()
        .map(i -> Names.of("instrument", i))
        .map(name -> new Instrument(name, texts.of(name)))
        .toList();
  }
}
