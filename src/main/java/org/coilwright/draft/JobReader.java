// Over 250 lines: one key of the brief after the other, each with what is taken where it is
// missing.
package org.coilwright.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Brief;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.ReadingProblem;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.table.Tables;

/** Fills the gaps of a brief. */
final class JobReader {
  /** What came of it. */
  sealed interface Read {}

  /** A whole job. */
  record Whole(Job job) implements Read {}

  /** The brief contradicts itself, or says what cannot be drafted; at least one problem. */
  record Refused(List<ReadingProblem> problems) implements Read {}

  private static final double ONE_LINE_UP_TO = 260;
  private static final double USUAL_LENGTH = 1;
  private static final double USUAL_AIR = 40;

  private final Brief brief;
  private final Tables tables;
  private final List<ReadingProblem> problems = new ArrayList<>();
  private final List<String> assumed = new ArrayList<>();
  private final List<String> open = new ArrayList<>();

  private JobReader(Brief brief, Tables tables) {
    this.brief = brief;
    this.tables = tables;
  }

  static Read read(Brief brief, Tables tables) {
    JobReader reader = new JobReader(brief, tables);
    Job job = reader.job();
    return reader.problems.isEmpty() ? new Whole(job) : new Refused(List.copyOf(reader.problems));
  }

  private Job job() {
    boolean nec = word("practice").map("nec"::equals).orElse(false);
    if (word("practice").isEmpty()) {
      assumed.add("practice: iec");
    }
    Written<Quantity> power = must("load.power");
    Written<Quantity> rated = must("load.voltage");
    if (rated.value().kind() == CurrentKind.DC) {
      problem(
          rated.mark(),
          "a load on direct voltage is not drafted",
          "write the mains voltage on its nameplate, or begin with coilwright new");
    }
    double volts = rated.value().nominal();
    String phases = phases(nec, volts);
    String connection = connection(phases);
    Written<Quantity> mains = mainsVoltage(nec, phases, volts);
    double lineToLine = mains.value().nominal();
    boolean three = !connection.equals("single");
    double toNeutral =
        phases.equals("3")
            ? lineToLine / Math.sqrt(3)
            : phases.equals("split") ? lineToLine / 2 : lineToLine;
    boolean across = !three && !phases.equals("1") && isNear(volts, lineToLine);
    double fed = three || across || phases.equals("1") ? lineToLine : toNeutral;
    if (!isNear(volts, fed)) {
      problem(
          rated.mark(),
          "the load is for %s, and these mains give %s"
              .formatted(Printed.volts(volts), Printed.volts(fed)),
          "write the voltage on its nameplate, or mains: {phases: …, voltage: …} as they are");
    }
    double controlVolts = nominal(toNeutral);
    Optional<Job.Supply> supply = supply();
    double coilVolts = supply.isPresent() ? directVolts() : 24;
    Quantity air = air();
    leaveOpen();
    return new Job(
        brief,
        nec,
        phases,
        mainsText(nec, phases, mains.text()),
        mains.text(),
        mains.value(),
        power.value(),
        volts,
        connection,
        three ? 3 : across ? 2 : 1,
        connection.equals("star-with-neutral") || (!three && !across),
        supply,
        coilVolts,
        controlVolts,
        contact(coilVolts, controlVolts),
        length("distances.board-to-box"),
        length("distances.box-to-load"),
        length("distances.controller-to-box"),
        air,
        assumed,
        open);
  }

  private String phases(boolean nec, double volts) {
    Optional<String> written = word("mains.phases");
    if (written.isPresent()) {
      return written.get();
    }
    boolean three = word("load.connection").filter(c -> !c.equals("single")).isPresent();
    boolean split = nec && !three && isNear(volts, 240);
    String phases = split ? "split" : three || volts > ONE_LINE_UP_TO ? "3" : "1";
    assumed.add(
        "mains of %s from the load's voltage"
            .formatted(
                phases.equals("1")
                    ? "one line"
                    : phases.equals("3") ? "three lines" : "120/240 V"));
    return phases;
  }

  private String connection(String phases) {
    Optional<Written<String>> written = brief.word("load.connection");
    if (written.isEmpty()) {
      String taken = phases.equals("3") ? "star" : "single";
      assumed.add("connection: %s".formatted(taken));
      return taken;
    }
    if (!written.get().value().equals("single") && !phases.equals("3")) {
      problem(
          written.get().mark(),
          "%s needs three lines, and the mains have %s"
              .formatted(written.get().value(), phases.equals("1") ? "one" : "two"),
          "write connection: single, or mains: {phases: 3}");
    }
    return written.get().value();
  }

  private Written<Quantity> mainsVoltage(boolean nec, String phases, double volts) {
    Optional<Written<Quantity>> written = brief.quantity("mains.voltage");
    if (written.isPresent()) {
      boolean two = written.get().text().contains("/");
      if (two != phases.equals("split")) {
        problem(
            written.get().mark(),
            two ? "two voltages belong to split mains" : "split mains have two voltages",
            two ? "write one voltage, or phases: split" : "write both: 120/240 V");
      }
      return written.get();
    }
    double nominal = phases.equals("3") && volts < ONE_LINE_UP_TO && !nec ? 400 : volts;
    if (phases.equals("split") && isNear(volts, 120)) {
      nominal = 240;
    }
    double share = nec ? 0.05 : 0.1;
    String band = nec ? " ± 5 %" : " ± 10 %";
    String text =
        (phases.equals("split") ? plain(nominal / 2) + "/" + plain(nominal) : plain(nominal))
            + " V"
            + band;
    assumed.add("mains: %s".formatted(text));
    return new Written<>(
        new Quantity(
            Dimension.VOLTAGE,
            nominal * (1 - share),
            nominal,
            nominal * (1 + share),
            CurrentKind.UNSTATED),
        text,
        brief.mark("mains"));
  }

  private String mainsText(boolean nec, String phases, String voltage) {
    StringBuilder text = new StringBuilder("{phases: " + phases + ", voltage: " + voltage);
    String hertz =
        brief.quantity("mains.frequency").map(Written::text).orElse(nec ? "60 Hz" : "50 Hz");
    text.append(", frequency: ").append(hertz);
    for (String key : List.of("earthing", "fault-current", "loop-impedance")) {
      Optional<String> written =
          key.equals("earthing")
              ? word("mains.earthing")
              : brief.quantity("mains." + key).map(Written::text);
      written.ifPresentOrElse(
          w -> text.append(", " + key + ": " + w),
          () ->
              open.add(
                  switch (key) {
                    case "earthing" -> "the earthing system: ask the utility, or look at the board";
                    case "fault-current" ->
                        "the fault current at the board: ask the utility, or measure it";
                    default -> "the earth fault loop impedance at the board: measure it";
                  }));
    }
    return text.append('}').toString();
  }

  /** What only the site and the manuals can tell. */
  private void leaveOpen() {
    if (word("island").isEmpty() && !brief.hasGroup("island")) {
      open.add("what feeds the circuit when the mains fail (island: none, if nothing does)");
    }
    if (brief.rating("controller.least-load").isEmpty()) {
      open.add("the least load of the controller's contact: in its manual (least-load:)");
    }
    if (!brief.hasGroup("vessel")) {
      open.add("the vessel: its litres, whether it is closed, its relief valve (vessel:)");
    }
    if (!brief.hasGroup("plant")) {
      open.add("the switching settings: write plant: and they are drafted too");
    }
    open.add("how the controller itself is fed, and the air it may stand in");
  }

  private Optional<Job.Supply> supply() {
    if (brief.word("controller.supply").filter(w -> w.value().equals("none")).isPresent()) {
      return Optional.empty();
    }
    if (!brief.hasGroup("controller.supply")) {
      assumed.add("controller without an auxiliary supply: none is written");
      return Optional.empty();
    }
    Written<Quantity> volts = must("controller.supply.voltage");
    if (volts.value().kind() == CurrentKind.AC) {
      problem(
          volts.mark(),
          "an auxiliary supply of alternating voltage is not drafted",
          "write supply: none, and a supply of its own is designed in");
    }
    String text = volts.text().strip();
    if (volts.value().isExact()) {
      assumed.add("the controller's supply holds its voltage within ± 5 %");
      text += " ± 5 %";
    }
    String isolation = word("controller.supply.isolation").orElse("SELV");
    if (word("controller.supply.isolation").isEmpty()) {
      assumed.add("the controller's supply is SELV: confirm it in its manual");
    }
    return Optional.of(
        new Job.Supply(text, must("controller.supply.limit").value().low(), isolation));
  }

  private double directVolts() {
    return must("controller.supply.voltage").value().nominal();
  }

  private ContactWords.Understood contact(double coilVolts, double controlVolts) {
    Written<String> written =
        brief.word("controller.contact").orElseThrow(IllegalStateException::new);
    try {
      ContactWords.Understood contact =
          ContactWords.of(written.value(), coilVolts, controlVolts, tables);
      assumed.addAll(contact.remarks());
      return contact;
    } catch (ContactWords.Unclear unclear) {
      problem(part(written, unclear), unclear.what(), unclear.remedy());
      return new ContactWords.Understood(java.util.Map.of(), List.of());
    }
  }

  private static Mark part(Written<String> written, ContactWords.Unclear unclear) {
    Mark mark = written.mark();
    boolean inPlace = mark.endColumn() - mark.column() == written.value().length();
    int column = mark.column() + unclear.offset();
    return inPlace
        ? new Mark(mark.file(), mark.line(), column, column + Math.max(1, unclear.length()))
        : mark;
  }

  private Quantity air() {
    Optional<Written<Quantity>> written = brief.quantity("air");
    if (written.isEmpty()) {
      assumed.add("air around the devices: 5..40 °C");
    } else if (written.get().value().isExact()) {
      assumed.add("air around the devices never below 5 °C");
    }
    double high = written.map(w -> w.value().high()).orElse(USUAL_AIR);
    double low =
        written
            .map(Written::value)
            .filter(q -> !q.isExact())
            .map(Quantity::low)
            .orElse(Math.min(5, high));
    return new Quantity(Dimension.TEMPERATURE, low, (low + high) / 2, high, CurrentKind.UNSTATED);
  }

  private double length(String path) {
    Optional<Written<Quantity>> written = brief.quantity(path);
    if (written.isEmpty()) {
      assumed.add("%s: 1 m".formatted(path.substring(path.indexOf('.') + 1)));
    }
    return written.map(w -> w.value().high()).orElse(USUAL_LENGTH);
  }

  /** 400 V between lines gives 230.9 V, which everybody calls 230 V. */
  private static double nominal(double volts) {
    return Math.rint(volts / 10) * 10 == 230 || isNear(volts, 230) ? 230 : Math.rint(volts);
  }

  private static boolean isNear(double a, double b) {
    return Math.abs(a - b) <= 0.05 * b;
  }

  static String plain(double value) {
    return Printed.given(value, Dimension.COUNT).strip();
  }

  private Optional<String> word(String path) {
    return brief.word(path).map(Written::value);
  }

  private Written<Quantity> must(String path) {
    return brief.quantity(path).orElseThrow(() -> new IllegalStateException("no " + path));
  }

  private void problem(Mark mark, String what, String remedy) {
    problems.add(brief.problem(mark, what, remedy));
  }
}
