// Over 250 lines: one report, top to bottom.
package org.coilwright.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.coilwright.behaviour.Improvement;
import org.coilwright.behaviour.Rehearsed;
import org.coilwright.behaviour.Run;
import org.coilwright.behaviour.Settings;
import org.coilwright.behaviour.Stage;
import org.coilwright.behaviour.Water;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Words;
import org.coilwright.rules.ContactLife;

/** What the settings would do, as a person reads it. */
final class RehearsalText {
  /** Said wherever false starts are shown. */
  static final String DEFINITION =
      "A start is false if in all of the confirm time there was no true surplus: generation less"
          + " all other load less what the battery could still take.";

  /** Said in place of a result where there is none. */
  static final String NOTHING_TRIED = "The contact never closed: nothing was tried.";

  private static final int MOST_STARTS = 6;

  /** A smaller share of the energy of a start tells nothing. */
  private static final double WORTH_TELLING = 0.01;

  private static final double DAYS_PER_YEAR = 365;

  /** Wh. */
  private static final double LEAST_ENERGY = 0.01;

  private final Stage stage;
  private final List<Rehearsed> all;
  private final Style style;
  private final StringBuilder out = new StringBuilder();

  private RehearsalText(Stage stage, List<Rehearsed> all, Style style) {
    this.stage = stage;
    this.all = all;
    this.style = style;
  }

  static String of(
      Stage stage, List<Rehearsed> all, Optional<Improvement> improvement, Style style) {
    return new RehearsalText(stage, all, style).write(improvement);
  }

  private String write(Optional<Improvement> improvement) {
    wrap(
        "%s switches %s, %s. %s"
            .formatted(
                stage.output(), stage.loads().names(), power(stage.loads().watts()), settings()));
    out.append('\n');
    situations();
    out.append('\n');
    odd();
    contacts();
    improvement.ifPresent(
        i -> {
          out.append('\n');
          ImprovementText.append(out, stage, i, style);
        });
    assumed();
    out.append('\n');
    wrap(DEFINITION);
    wrap(TextReport.CAUTION);
    return out.toString();
  }

  private String settings() {
    Settings s = stage.scene().settings();
    List<String> words = new ArrayList<>();
    s.exportAboveWatts()
        .ifPresent(
            w ->
                words.add(
                    "starts above %s of export %s"
                        .formatted(power(w), after(s.startAfterSeconds()))));
    s.importAboveWatts()
        .ifPresent(
            w ->
                words.add(
                    "stops above %s of import %s"
                        .formatted(power(w), after(s.stopAfterSeconds()))));
    s.batteryBelowFraction()
        .ifPresent(f -> words.add("stops below %s of charge".formatted(Printed.percent(f))));
    return words.isEmpty() ? "" : "It " + String.join(", ", words) + ".";
  }

  private static String after(double seconds) {
    return seconds == 0 ? "at once" : "that lasts " + Printed.span(seconds);
  }

  private void situations() {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("situation", "starts", "false", "on for", "sun", "battery", "grid", "water"));
    for (Rehearsed r : all) {
      rows.add(
          List.of(
              r.situation().name(),
              Integer.toString(r.tally().runs().size()),
              Integer.toString(r.tally().falseStarts().size()),
              Printed.span(r.closedSeconds()),
              energy(r.pvWh()),
              energy(r.batteryWh()),
              energy(r.gridWh()),
              water(r)));
    }
    Columns.print(out, rows, style);
  }

  private static String water(Rehearsed r) {
    if (r.tally().hottestCelsius().isEmpty() || r.tally().closedSteps() == 0) {
      return "–";
    }
    if (r.tally().targetStep().isPresent()) {
      String at = r.clock(r.tally().targetStep().getAsLong());
      return "hot " + at.substring(0, at.lastIndexOf(':'));
    }
    return "to %s"
        .formatted(Printed.of(r.tally().hottestCelsius().getAsDouble(), Dimension.TEMPERATURE));
  }

  private void odd() {
    boolean any = false;
    for (Rehearsed r : all) {
      List<Run> falseStarts = r.tally().falseStarts();
      for (Run run : falseStarts.stream().limit(MOST_STARTS).toList()) {
        wrap(
            "%s, %s: false start, on for %s, took %s%s."
                .formatted(
                    r.situation().name(),
                    r.clock(run.startStep()),
                    Printed.span((run.endStep() - run.startStep()) * r.secondsPerRow()),
                    energy(run.wattHours()),
                    sources(run)));
        any = true;
      }
      if (falseStarts.size() > MOST_STARTS) {
        wrap(
            "%s: %s more false starts are not listed."
                .formatted(r.situation().name(), falseStarts.size() - MOST_STARTS));
      }
    }
    if (all.stream().allMatch(r -> r.tally().runs().isEmpty())) {
      wrap(NOTHING_TRIED);
    } else if (!any) {
      wrap("No false start in what was rehearsed.");
    }
    for (Rehearsed r : all) {
      double drawn = r.batteryWh() + r.gridWh();
      if (r.tally().falseStarts().isEmpty() && drawn > r.pvWh()) {
        wrap(
            "%s: %s of %s came from battery and grid."
                .formatted(r.situation().name(), energy(drawn), energy(drawn + r.pvWh())));
      }
    }
  }

  private static String sources(Run run) {
    List<String> parts = new ArrayList<>();
    part(parts, run, run.batteryWh(), "from the battery");
    part(parts, run, run.gridWh(), "from the grid");
    part(parts, run, run.pvWh(), "from the sun");
    return parts.isEmpty() ? "" : ": " + String.join(", ", parts);
  }

  private static void part(List<String> parts, Run run, double wattHours, String from) {
    if (wattHours >= WORTH_TELLING * run.wattHours() && wattHours > 0) {
      parts.add(energy(wattHours) + " " + from);
    }
  }

  private void contacts() {
    Optional<Rehearsed> worst =
        all.stream()
            .filter(Rehearsed::isWholeDays)
            .max(Comparator.comparingDouble(r -> r.tally().startsPerDay()));
    if (worst.isEmpty() || stage.relays().isEmpty()) {
      return;
    }
    double perDay = worst.get().tally().startsPerDay();
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("contacts of", "starts a day", "made for", "lasts"));
    for (Part.Relay relay : stage.relays()) {
      Optional<ContactLife> life = ContactLife.of(relay);
      rows.add(
          List.of(
              relay.name(),
              count(perDay),
              life.map(l -> "%s (%s)".formatted(count(l.operations()), l.words()))
                  .orElse("not written"),
              life.map(l -> years(l, perDay, stage.byThermostat().contains(relay.name())))
                  .orElse("could not be checked")));
    }
    out.append('\n');
    Columns.print(out, rows, style);
    wrap("Starts a day as in the worst of these, %s.".formatted(worst.get().situation().name()));
    List<String> more =
        stage.relays().stream()
            .map(Part.Relay::name)
            .filter(stage.byThermostat()::contains)
            .toList();
    if (!more.isEmpty()) {
      wrap(
          "%s: without what the thermostat switches, which also moves it. It wears out sooner."
              .formatted(Words.all(more)));
    }
  }

  private static String years(ContactLife life, double perDay, boolean atMost) {
    if (perDay == 0) {
      return atMost ? "could not be checked" : "no start, no wear";
    }
    return (atMost ? "at most " : "")
        + count(life.operations() / perDay / DAYS_PER_YEAR)
        + " years";
  }

  private void assumed() {
    stage
        .scene()
        .plant()
        .water()
        .ifPresent(
            w -> {
              out.append('\n');
              wrap(assumed(w));
            });
  }

  private static String assumed(Water w) {
    return ("Assumed, common practice without a source: the thermostat closes %s K below its"
            + " temperature, the vessel loses %s W/K to a room at %s, and twice a day %s are drawn"
            + " off. Losses of the battery are left out.")
        .formatted(
            count(w.differentialKelvin()),
            count(w.lossWattsPerKelvin()),
            Printed.of(w.roomCelsius(), Dimension.TEMPERATURE),
            Printed.of(w.drawOffs().get(0).litres(), Dimension.VOLUME));
  }

  private void wrap(String text) {
    Lines.wrap(out, "", text, style.width());
  }

  private static String power(double watts) {
    return Printed.of(watts, Dimension.POWER);
  }

  /** So fine that parts add up to their sum. */
  static String energy(double wattHours) {
    if (wattHours >= 1) {
      return Printed.of(wattHours, Dimension.ENERGY);
    }
    return wattHours < LEAST_ENERGY ? "0" : String.format(Locale.ROOT, "%.2f Wh", wattHours);
  }

  private static String count(double number) {
    return Printed.of(number, Dimension.COUNT);
  }
}
