package org.coilwright.checklist;

import static java.util.stream.Collectors.toSet;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.checklist.Checklist.BrokenRow;
import org.coilwright.checklist.Checklist.Instrument;
import org.coilwright.checklist.Checklist.Paper;
import org.coilwright.checklist.Checklist.Signer;
import org.coilwright.checklist.Checklist.Summary;
import org.coilwright.checklist.Checklist.TitleBlock;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.rule.FaultWords;
import org.coilwright.rule.Report;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Faults;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/** Makes the checklist for a circuit from what the rules said and what the study computed. */
public final class Checklists {
  private static final String NOT_STATED = "not stated";

  private final Tables tables;

  public Checklists(Tables tables) {
    this.tables = tables;
  }

  /**
   * The checklist of one circuit. Pure: the same arguments give an equal checklist.
   *
   * @param report what the rules said about the netlist that {@code study} was made from
   * @param program name and version of the program, as printed
   * @param printed date of printing
   */
  public Checklist of(Report report, Study study, String program, LocalDate printed) {
    Anatomy anatomy = new Anatomy(study);
    OutcomeEntries outcomes = new OutcomeEntries(report);
    Cautions.Chosen cautions = new Cautions(tables).choose(Condition.of(anatomy));
    List<Step> steps = steps(anatomy, cautions, report);
    return new Checklist(
        title(report.netlist(), program, printed),
        anatomy.isNec() ? Paper.LETTER : Paper.A4,
        List.of(
            "Local codes and the licensed electrician on site decide; this sheet does not replace"
                + " either. Where they differ from it, they hold.",
            "It was computed from the netlist named here. A circuit that was built otherwise has"
                + " not been checked."),
        summary(report),
        List.of(
            "a reading lies outside its band and the reason is not found;",
            "anything smells, smokes, hums on or grows hot that should not;",
            "a wire, a part or a rating differs from this sheet."),
        outcomes.findings(),
        outcomes.accepted(),
        outcomes.openPoints(),
        cautions.all(),
        new WireRows(anatomy).rows(),
        List.of(),
        steps,
        outcomes.satisfied(),
        broken(study),
        instruments(steps),
        signers());
  }

  private static TitleBlock title(Netlist netlist, String program, LocalDate printed) {
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

  private static String stated(Optional<String> text) {
    return text.filter(t -> !t.isBlank()).orElse(NOT_STATED);
  }

  private static Summary summary(Report report) {
    String sentence =
        switch (report.verdict()) {
          case STOP ->
              "Must not be energised like this. Mend every finding marked STOP, check the netlist"
                  + " again and print a new sheet.";
          case FIX ->
              "Correct what is marked FIX before hand-over, check the netlist again and print a new"
                  + " sheet.";
          case NOTE ->
              "Nothing to stop for or to fix was found. Read the notes; what was not looked at can"
                  + " still be wrong.";
          case CLEAR ->
              "No rule found anything. That does not show that the circuit is right: the tests"
                  + " below do.";
        };
    long notes = report.count(Weight.NOTE);
    String counts =
        report.count(Weight.STOP)
            + " to stop, "
            + report.count(Weight.FIX)
            + " to fix, "
            + notes
            + (notes == 1 ? " note; " : " notes; ")
            + report.satisfied().size()
            + " checks satisfied, "
            + report.undecided().size()
            + " could not be made.";
    return new Summary(report.verdict().name(), sentence, counts);
  }

  private List<Step> steps(Anatomy anatomy, Cautions.Chosen cautions, Report report) {
    Bands bands = new Bands(tables);
    Plan plan = new Plan(cautions);
    plan.add(new DeadTopics(anatomy, bands).topics());
    plan.hold(
        "hold.before-any-supply",
        "before any supply is switched on",
        conditions(anatomy, plan, report, false));
    MainsTopics mainsTopics = new MainsTopics(anatomy, bands);
    List<Topic> control = new ArrayList<>(mainsTopics.beforeTheControlSupply());
    control.addAll(new ControlTopics(anatomy).topics());
    plan.add(control);
    List<Topic> mains = mainsTopics.topics();
    if (!mains.isEmpty()) {
      plan.hold(
          "hold.before-mains",
          "before the mains reaches the load",
          conditions(anatomy, plan, report, true));
    }
    plan.add(mains);
    plan.add(new SettingTopics(anatomy).topics());
    return plan.steps();
  }

  private static List<String> conditions(Anatomy anatomy, Plan plan, Report report, boolean again) {
    List<String> conditions = new ArrayList<>();
    conditions.add(
        "Every row of sections 1 to " + plan.sections() + " is met, or was mended and done again.");
    if (!again) {
      conditions.add("Every wire of the wiring list is ticked, and no other wire is there.");
      conditions.add("Every point to be settled on site is settled.");
    }
    long stops = report.count(Weight.STOP);
    if (stops > 0) {
      conditions.add(
          "This sheet has "
              + stops
              + (stops == 1 ? " finding" : " findings")
              + " of weight STOP: it ends here. Go on with the sheet of the mended netlist.");
    }
    anatomy.parts(Part.Heater.class).stream()
        .filter(h -> again && h.vessel().isPresent())
        .forEach(
            h ->
                conditions.add(
                    "Vessel of "
                        + h.name()
                        + " full: water has run from its outlet, air is let out, relief valve"
                        + " free."));
    conditions.add(
        again
            ? "Covers on as far as the tests allow, people away from the load, the way to the"
                + " isolator free."
            : "Joints for the tests taken out, tools and strands gone, covers on as far as the"
                + " tests allow.");
    return conditions;
  }

  private static List<BrokenRow> broken(Study study) {
    return Faults.of(study).classes().stream()
        .map(
            alike ->
                new BrokenRow(
                    FaultWords.title(alike.like().harm()),
                    FaultWords.what(alike),
                    FaultWords.then(alike.like()),
                    FaultWords.stoppedBy(alike.like())))
        .toList();
  }

  /** Only what some row asks for. */
  private static List<Signer> signers() {
    return List.of(
        new Signer("signer.prepared-by", "Prepared by"),
        new Signer("signer.tested-by", "Tested by"),
        new Signer("signer.accepted-by", "Accepted by"));
  }

  private static Instrument instrument(String name, String text) {
    return new Instrument(Names.of("instrument", name), text);
  }

  private static List<Instrument> instruments(List<Step> steps) {
    List<TestRow> rows =
        steps.stream()
            .filter(Section.class::isInstance)
            .flatMap(s -> ((Section) s).rows().stream())
            .toList();
    Set<String> units = rows.stream().map(r -> r.expected().unit()).collect(toSet());
    List<Instrument> instruments = new ArrayList<>();
    instruments.add(instrument("voltage-tester", "Two-pole voltage tester, low impedance"));
    instruments.add(instrument("multimeter", "Multimeter"));
    if (units.contains("Ω")) {
      instruments.add(instrument("low-ohmmeter", "Low-resistance ohmmeter, leads nulled"));
    }
    if (units.contains("MΩ")) {
      instruments.add(instrument("insulation-tester", "Insulation tester, 250 V and 500 V"));
    }
    if (units.contains("A")) {
      instruments.add(instrument("clamp-ammeter", "Clamp ammeter"));
    }
    if (rows.stream().anyMatch(r -> r.action().startsWith(ProtectionRows.LOOP))) {
      instruments.add(instrument("loop-tester", "Loop impedance tester"));
    }
    if (units.contains("ms")) {
      instruments.add(instrument("rcd-tester", "RCD tester"));
    }
    return instruments;
  }
}
