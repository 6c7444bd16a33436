package org.coilwright.draft;

import java.util.Locale;
import java.util.Optional;
import org.coilwright.netlist.Brief;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;

/** What fills the gaps of a part's text. */
final class Values {
  /** W; a coil that takes less than this is of a kind of its own. */
  private static final double WEAKEST_COIL = 0.2;

  /** The share by which a coil's resistance may lie below what its power says. */
  private static final double COIL_TOLERANCE = 0.1;

  private static final double BOUGHT_SUPPLY = 24;
  private static final double USUAL_AIR = 40;
  private static final double COLDEST = -5;

  private final Job job;
  private final Arrangement arrangement;
  private final Figures figures;

  Values(Job job, Arrangement arrangement, Figures figures) {
    this.job = job;
    this.arrangement = arrangement;
    this.figures = figures;
  }

  /** What belongs into a gap of a part. */
  String of(String designation, String gap) {
    Optional<String> chosen = figures.find(designation + "." + gap).or(() -> figures.find(gap));
    return chosen.orElseGet(() -> derived(designation, gap));
  }

  private String derived(String designation, String gap) {
    return switch (gap) {
      case "rcd-poles" -> rcdPoles();
      case "breaker-poles" -> breakerPoles();
      case "control-poles" -> job.nec() ? "1" : "1+N";
      case "curve" -> job.nec() ? "C" : "B";
      case "working-air" -> workingAir();
      case "warm" ->
          job.warmest() > USUAL_AIR
              ? ", which its maker lets work in air of " + degrees(job.warmest())
              : "";
      case "breaker-rated" -> breakerAir().map(air -> ", rated-air: " + air + " °C").orElse("");
      case "breaker-holds" ->
          breakerAir()
              .map(air -> ", of which its sheet says that the rating holds at " + air + " °C")
              .orElse("");
      case "derated" ->
          job.warmest() > USUAL_AIR ? " (a sheet that rates it at 40 °C says less there)" : "";
      case "air-high" -> degrees(boxAir());
      case "poles" -> poles();
      case "pole-count" -> Integer.toString(contactorPoles());
      case "cut-poles" -> Integer.toString(cutPoles());
      case "load-volts" -> JobReader.plain(job.volts());
      case "cut-volts" -> job.volts() > 250 ? JobReader.plain(job.volts()) : "250";
      case "control-volts" -> JobReader.plain(job.controlVolts());
      case "coil-volts" -> JobReader.plain(coilVolts());
      case "ohms" -> ohms(Double.parseDouble(of(designation, "watts")));
      case "power" -> brief().quantity("load.power").map(Written::text).orElseThrow();
      case "connection" -> job.connection();
      case "kind" -> word("load.kind").orElse("metal-sheathed");
      case "vessel" ->
          brief().hasGroup("vessel") ? "vessel: " + brief().yaml("vessel", k -> true) : "";
      case "aux-supply" -> job.supply().map(this::auxSupply).orElse("");
      case "contact" -> job.contact().yaml();
      case "contact-least" ->
          brief().rating("controller.least-load").map(r -> ", least-load: " + r.text()).orElse("");
      case "rcd-there" -> inner(brief().yaml("rcd", k -> true));
      case "thermostat-there" -> inner(brief().yaml("thermostat", k -> true)).replaceAll(", $", "");
      case "cut-out-there" -> inner(brief().yaml("cut-out", k -> true)).replaceAll(", $", "");
      case "thermostat-ratings" -> thermostat(designation);
      case "thermostat-buy" -> thermostat(designation).replaceAll("[{}]", "").replace(": ", " ");
      case "thermostat-least" -> arrangement.inCoil() ? "10 mA at 12 V" : "100 mA at 12 V";
      default -> throw new IllegalStateException("nobody fills " + gap + " of " + designation);
    };
  }

  private Optional<String> breakerAir() {
    return figures.find("breaker-air").filter(air -> !air.isEmpty());
  }

  private Brief brief() {
    return job.brief();
  }

  private Optional<String> word(String path) {
    return brief().word(path).map(Written::value);
  }

  private static String inner(String group) {
    String within = group.substring(1, group.length() - 1);
    return within.isEmpty() ? "" : within + ", ";
  }

  private String auxSupply(Job.Supply supply) {
    return "aux-supply: {plus: V+, minus: V-, voltage: %s, limit: %s, isolation: %s}\n"
        .formatted(
            supply.volts(), Printed.given(supply.limit(), Dimension.CURRENT), supply.isolation());
  }

  /** A neutral that nobody uses is left out. */
  private String rcdPoles() {
    if (job.lines() == 1) {
      return "1+N";
    }
    return job.neutral() || arrangement.hasControl() ? "3+N" : Integer.toString(job.lines());
  }

  private String breakerPoles() {
    return job.neutral()
        ? job.nec() ? Integer.toString(job.lines()) : job.lines() + "+N"
        : Integer.toString(job.lines());
  }

  /** Poles that a contactor needs so that nothing stays on the load. */
  int contactorPoles() {
    return job.lines() + (job.neutral() && !job.nec() ? 1 : 0);
  }

  /** Poles of the cut-out: three at most are made. */
  int cutPoles() {
    return Math.min(3, contactorPoles());
  }

  private String poles() {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < contactorPoles(); i++) {
      text.append(i == 0 ? "[" : ", ").append("[%s, %s]".formatted(2 * i + 1, 2 * i + 2));
    }
    return text.append(']').toString();
  }

  private String thermostat(String designation) {
    if (!arrangement.inCoil()) {
      return "{AC-1: %s A at %s V}"
          .formatted(
              of(designation, "amps"), job.volts() > 250 ? of(designation, "cut-volts") : "250");
    }
    return arrangement.isDirect()
        ? "{DC-13: %s A at %s V}".formatted(of(designation, "dc13"), of(designation, "coil-volts"))
        : "{AC-1: 10 A at 250 V, AC-15: 1.5 A at %s V}".formatted(of(designation, "control-volts"));
  }

  /** A supply that is bought gives 24 V, whatever the controller's gives. */
  private double coilVolts() {
    return arrangement.supply().isPresent() ? BOUGHT_SUPPLY : job.coilVolts();
  }

  private String ohms(double watts) {
    double square = coilVolts() * coilVolts();
    double least = Math.ceil(square / watts * (1 - COIL_TOLERANCE));
    double most = Math.floor(square / WEAKEST_COIL);
    return String.format(Locale.ROOT, "%.0f..%.0f Ω", least, most);
  }

  private double boxAir() {
    return Math.max(USUAL_AIR, job.warmest());
  }

  private String workingAir() {
    return String.format(
        Locale.ROOT,
        "%s..%s °C",
        JobReader.plain(Math.min(COLDEST, job.air().low())),
        JobReader.plain(boxAir()));
  }

  private static String degrees(double celsius) {
    return JobReader.plain(celsius) + " °C";
  }
}
