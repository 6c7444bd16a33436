package org.coilwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.coilwright.behaviour.Improvement;
import org.coilwright.behaviour.Improvement.Cell;
import org.coilwright.behaviour.Settings;
import org.coilwright.behaviour.Stage;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;

/** What other settings would do, as a person reads it. */
final class ImprovementText {
  private static final double[] SHOWN_SHARES = {0.5, 0.8, 1, 1.2};

  private ImprovementText() {}

  /** Appends a table and what follows from it. */
  static void append(StringBuilder out, Stage stage, Improvement improvement, Style style) {
    List<Double> thresholds = shown(stage, improvement);
    List<List<String>> rows = new ArrayList<>();
    List<String> heads = new ArrayList<>(List.of("confirm"));
    Settings settings = stage.scene().settings();
    for (double threshold : thresholds) {
      heads.add(starred(power(threshold), threshold == settings.exportAboveWatts().orElse(-1)));
    }
    rows.add(heads);
    for (double confirm : improvement.confirms()) {
      List<String> row = new ArrayList<>();
      row.add(starred(Printed.span(confirm), confirm == settings.startAfterSeconds()));
      for (double threshold : thresholds) {
        Cell cell = improvement.cell(confirm, threshold);
        row.add("%s, %s".formatted(cell.falseStarts(), energy(cell.unusedWh())));
      }
      rows.add(row);
    }
    wrap(
        out,
        "Other settings in the same situations: false starts, and surplus left unused, by confirm"
            + " time and start threshold (* as set now).",
        style);
    out.append('\n');
    Columns.print(out, rows, style);
    out.append('\n');
    advice(out, settings, stage.loads().watts(), improvement, style);
  }

  /** Thresholds that a table or picture shows: some shares of the load, and the one as set. */
  static List<Double> shown(Stage stage, Improvement improvement) {
    double load = stage.loads().watts();
    double set = stage.scene().settings().exportAboveWatts().orElse(-1);
    return improvement.thresholds().stream().filter(t -> t == set || isShown(t / load)).toList();
  }

  private static boolean isShown(double share) {
    for (double shown : SHOWN_SHARES) {
      if (Math.abs(share - shown) < 1e-3) {
        return true;
      }
    }
    return false;
  }

  private static void advice(
      StringBuilder out, Settings settings, double load, Improvement improvement, Style style) {
    settings
        .exportAboveWatts()
        .ifPresent(w -> wrap(out, shortest(power(w) + " as set now", improvement.asSet()), style));
    if (improvement.keepsOut().isEmpty()) {
      wrap(
          out,
          "No start threshold that was tried keeps battery and grid out: at each of them they give"
              + " more than 1 % of what the load takes.",
          style);
      return;
    }
    double keepsOut = improvement.keepsOut().getAsDouble();
    wrap(
        out,
        "Lowest start threshold that keeps battery and grid out (below 0.1 % of what the load"
            + " takes,"
            + " clouds that come and go and fixed windows left aside): %s."
                .formatted(power(keepsOut)),
        style);
    if (keepsOut < load) {
      wrap(
          out,
          "Only from %s on does the surplus cover the load from the first second."
              .formatted(power(load)),
          style);
    }
    wrap(out, shortest(power(keepsOut), improvement.atKeepsOut()), style);
    wrap(
        out,
        "The battery of the rehearsal settles just as written, and a meter reports late: take some"
            + " seconds more than the shortest.",
        style);
  }

  private static String shortest(String threshold, OptionalDouble confirm) {
    if (confirm.isEmpty()) {
      return "No confirm time that was tried is without a false start at " + threshold + ".";
    }
    return confirm.getAsDouble() == 0
        ? ("At %s none of these situations gives a false start, without a confirm time either; a"
                + " larger load that stops may.")
            .formatted(threshold)
        : "Shortest confirm time without a false start at %s: %s."
            .formatted(threshold, Printed.span(confirm.getAsDouble()));
  }

  private static void wrap(StringBuilder out, String text, Style style) {
    Lines.wrap(out, "", text, style.width());
  }

  private static String starred(String text, boolean set) {
    return set ? text + " *" : text;
  }

  private static String power(double watts) {
    return Printed.of(watts, Dimension.POWER);
  }

  private static String energy(double wattHours) {
    return RehearsalText.energy(wattHours);
  }
}
