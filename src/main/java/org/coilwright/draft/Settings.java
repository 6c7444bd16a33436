package org.coilwright.draft;

import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.coilwright.netlist.Brief;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Report;

/**
 * The switching settings: first from closed forms, then longer, higher or lower where a rule that
 * rehearses them asks for it.
 *
 * @param export W that start must exceed
 * @param confirm s for which it must
 * @param importing W that stop must exceed
 * @param battery share of charge below which it stops; 0 without a battery
 * @param shortest s it stays closed
 * @param longest h a day
 */
record Settings(
    double export,
    double confirm,
    double importing,
    double battery,
    double shortest,
    double longest) {

  /** Surplus at which the load starts, over its rated power. */
  private static final double START_OVER_LOAD = 1.2;

  private static final double COLD = 12;
  private static final double HOT = 60;

  /** Wh that warm a litre of water by a kelvin. */
  private static final double WH_A_LITRE_K = 1.163;

  private static final int MOST_TRIES = 30;
  private static final double HIGHEST_BATTERY = 0.95;

  /** What came of it: settings, or why there are none. */
  record Found(Optional<Settings> settings, String why) {}

  /** Looks for settings with which no rule finds anything to stop or to fix. */
  static Found of(Job job, Function<Settings, Report> asked) {
    if (job.brief().quantity("plant.pv-peak").isEmpty()) {
      return new Found(Optional.empty(), "the switching settings: write plant: {pv-peak: …}");
    }
    double peak = value(job, "plant.pv-peak").orElse(0.0);
    Settings settings = first(job);
    String why = "";
    for (int i = 0; i < MOST_TRIES && settings.export < peak; i++) {
      Optional<Outcome.Violated> against =
          Proof.against(asked.apply(settings)).stream().findFirst();
      if (against.isEmpty()) {
        return new Found(Optional.of(settings), "");
      }
      why = against.get().headline() + ": " + against.get().numbers();
      Settings next = settings.after(against.get().rule().id());
      if (next.equals(settings)) {
        break;
      }
      settings = next;
    }
    return new Found(
        Optional.empty(),
        "the switching settings: none was found that passes. "
            + (why.isEmpty() || settings.export >= peak
                ? "A start above %s is more than a peak of %s gives."
                    .formatted(
                        Printed.of(settings.export, Dimension.POWER),
                        Printed.of(peak, Dimension.POWER))
                : why));
  }

  private static Settings first(Job job) {
    double power = job.power().nominal();
    double settles = value(job, "plant.battery.settles-in").orElse(0.0);
    boolean battery = job.brief().hasGroup("plant.battery");
    double floor = value(job, "plant.battery.floor").orElse(0.0);
    double hours = value(job, "vessel.litres").orElse(0.0) * (HOT - COLD) * WH_A_LITRE_K / power;
    return new Settings(
        Math.ceil(power * START_OVER_LOAD / 100) * 100,
        Math.max(60, Math.ceil(settles * 3 / 10) * 10),
        Math.max(200, Math.ceil(power * 0.05 / 100) * 100),
        battery ? Math.min(HIGHEST_BATTERY, floor + 0.25) : 0,
        600,
        Math.max(4, Math.ceil(hours * 1.25)));
  }

  private static Optional<Double> value(Job job, String path) {
    return job.brief().quantity(path).map(Written::value).map(Quantity::nominal);
  }

  /** The next to be tried after a rule found fault; the same if it asks for what is not here. */
  private Settings after(String rule) {
    return switch (rule) {
      case "behaviour.confirm-too-short" ->
          with(export, Math.min(900, confirm + 30), battery, shortest, longest);
      case "behaviour.start-below-load", "behaviour.cycles" ->
          with(Math.ceil(export * 1.1 / 100) * 100, confirm, battery, shortest, longest);
      case "behaviour.battery-drain" ->
          shortest > 180
              ? with(export, confirm, battery, shortest - 120, longest)
              : with(export, confirm, higher(), shortest, longest);
      case "behaviour.from-battery" -> with(export, confirm, higher(), shortest, longest);
      case "behaviour.daily-limit" -> with(export, confirm, battery, shortest, longest + 1);
      case "behaviour.wear", "contactor.short-life" ->
          with(export, Math.min(900, confirm + 60), battery, shortest + 300, longest);
      default -> this;
    };
  }

  private double higher() {
    return battery == 0 ? 0 : Math.min(HIGHEST_BATTERY, battery + 0.1);
  }

  private Settings with(double start, double waits, double charge, double runs, double hours) {
    return new Settings(start, waits, importing, charge, runs, hours);
  }

  /** As a netlist has them, with the plant of the brief. */
  String yaml(Brief brief) {
    StringBuilder out = new StringBuilder("\nswitching:\n  output: U1.heat\n");
    out.append("  start: {export-above: %s, for: %s}\n".formatted(watts(export), seconds(confirm)));
    out.append(
        "  stop: {import-above: %s, for: 20 s%s}\n"
            .formatted(
                watts(importing),
                battery > 0
                    ? String.format(Locale.ROOT, ", battery-below: %.0f %%", battery * 100)
                    : ""));
    out.append("  shortest-run: ").append(JobReader.plain(shortest / 60)).append(" min\n");
    out.append("  longest-per-day: ").append(JobReader.plain(longest)).append(" h\n");
    out.append("  plant: ").append(brief.yaml("plant", key -> true)).append('\n');
    brief
        .quantity("vessel.litres")
        .ifPresent(
            litres ->
                out.append(
                    "  water: {litres: %s, from: %s °C, to: %s °C}\n"
                        .formatted(litres.text(), JobReader.plain(COLD), JobReader.plain(HOT))));
    return out.toString();
  }

  /** In a few words. */
  String words() {
    return "start above %s for %s, stop above %s of import for 20 s%s"
        .formatted(
            watts(export),
            seconds(confirm),
            watts(importing),
            battery > 0
                ? String.format(Locale.ROOT, " or below %.0f %% of charge", battery * 100)
                : "");
  }

  private static String watts(double watts) {
    return Printed.given(watts, Dimension.POWER);
  }

  private static String seconds(double seconds) {
    return JobReader.plain(seconds) + " s";
  }
}
