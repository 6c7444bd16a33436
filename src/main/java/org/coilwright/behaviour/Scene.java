package org.coilwright.behaviour;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.netlist.Switching;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * What {@code switching:} of a netlist says, in watts and seconds, and what had to be assumed
 * beside it.
 *
 * @param pvPeakWatts most the generator gives; 0 if it is not written
 * @param baseLoadWatts what the house takes at rest
 * @param largestStepWatts the biggest other load that can stop at once
 * @param assumed figures taken from the tables because the netlist does not say
 * @param missing keys that are not written and that some question needs, such as {@code
 *     switching.plant.battery.settles-in}
 */
public record Scene(
    Settings settings,
    Plant plant,
    double pvPeakWatts,
    double baseLoadWatts,
    double largestStepWatts,
    List<Assumed> assumed,
    List<String> missing) {

  /**
   * A figure that the netlist does not say.
   *
   * @param unit of its value; empty for a share, 0 to 1
   */
  public record Assumed(Cited<Double> figure, String unit) {}

  /** A battery whose level is not written begins here: neither full nor near its floor. */
  private static final double HALF_FULL = 0.6;

  private static final int MORNING = 7 * 3600;
  private static final int EVENING = 19 * 3600;

  /** What the netlist says, for a load of so many watts. */
  public static Scene of(Switching written, double loadWatts, Tables tables) {
    List<Assumed> assumed = new ArrayList<>();
    List<String> missing = new ArrayList<>();
    Gatherer gather = new Gatherer(missing);
    Optional<Switching.Plant> plant = written.plant();
    OptionalDouble pv = gather.value(plant.flatMap(Switching.Plant::pvPeak), "plant.pv-peak");
    OptionalDouble base = gather.value(plant.flatMap(Switching.Plant::baseLoad), "plant.base-load");
    OptionalDouble step =
        gather.value(plant.flatMap(Switching.Plant::largestStep), "plant.largest-step");
    Optional<Battery> battery =
        plant.flatMap(Switching.Plant::battery).map(b -> battery(b, gather));
    Optional<Water> water = written.water().flatMap(w -> water(w, gather, tables, assumed));
    return new Scene(
        settings(written, gather),
        new Plant(loadWatts, battery, water),
        pv.orElse(0),
        base.orElse(0),
        step.orElse(0),
        List.copyOf(assumed),
        List.copyOf(missing));
  }

  /** No settings, no plant. */
  public static Scene nothing() {
    Settings never =
        new Settings(
            OptionalDouble.empty(),
            0,
            OptionalDouble.empty(),
            0,
            OptionalDouble.empty(),
            0,
            OptionalDouble.empty(),
            List.of());
    Plant plant = new Plant(0, Optional.empty(), Optional.empty());
    return new Scene(never, plant, 0, 0, 0, List.of(), List.of());
  }

  private static Settings settings(Switching s, Gatherer gather) {
    Optional<Switching.Start> start = s.start();
    Optional<Switching.Stop> stop = s.stop();
    return new Settings(
        gather.value(start.flatMap(Switching.Start::exportAbove), "start.export-above"),
        start.flatMap(Switching.Start::confirm).map(Scene::nominal).orElse(0.0),
        value(stop.flatMap(Switching.Stop::importAbove)),
        stop.flatMap(Switching.Stop::confirm).map(Scene::nominal).orElse(0.0),
        value(stop.flatMap(Switching.Stop::batteryBelow)),
        s.shortestRun().map(Scene::nominal).orElse(0.0),
        value(s.longestPerDay()),
        s.alwaysOn().stream()
            .map(w -> Settings.Window.parse(w.value()))
            .flatMap(Optional::stream)
            .toList());
  }

  private static Battery battery(Switching.Battery b, Gatherer gather) {
    return new Battery(
        gather.value(b.capacity(), "plant.battery.capacity").orElse(0),
        gather.value(b.discharge(), "plant.battery.discharge").orElse(0),
        gather.value(b.charge(), "plant.battery.charge").orElse(0),
        gather.value(b.settlesIn(), "plant.battery.settles-in").orElse(0),
        b.settles().filter(w -> w.value().equals("first-order")).isPresent()
            ? Battery.Settling.FIRST_ORDER
            : Battery.Settling.RAMP,
        gather.value(b.floor(), "plant.battery.floor").orElse(0),
        HALF_FULL);
  }

  private static Optional<Water> water(
      Switching.Water w, Gatherer gather, Tables tables, List<Assumed> assumed) {
    OptionalDouble litres = gather.value(w.litres(), "water.litres");
    OptionalDouble from = gather.value(w.from(), "water.from");
    OptionalDouble to = gather.value(w.to(), "water.to");
    if (litres.isEmpty() || from.isEmpty() || to.isEmpty()) {
      return Optional.empty();
    }
    Cited<Double> capacity = tables.figure("behaviour.water-heat-capacity");
    Cited<Double> differential = tables.figure("behaviour.thermostat-differential");
    Cited<Double> loss = tables.figure("behaviour.standing-loss-per-litre");
    Cited<Double> room = tables.figure("behaviour.room");
    Cited<Double> share = tables.figure("behaviour.draw-off-share");
    assumed.addAll(
        List.of(
            new Assumed(capacity, "J/(kg K)"),
            new Assumed(differential, "K"),
            new Assumed(loss, "W/(K l)"),
            new Assumed(room, "°C"),
            new Assumed(share, "")));
    double volume = litres.getAsDouble();
    double cold = from.getAsDouble();
    return Optional.of(
        new Water(
            volume,
            cold,
            to.getAsDouble(),
            differential.value(),
            loss.value() * volume,
            room.value(),
            List.of(
                new Water.DrawOff(MORNING, share.value() * volume, cold),
                new Water.DrawOff(EVENING, share.value() * volume, cold)),
            capacity.value()));
  }

  private static OptionalDouble value(Optional<Written<Quantity>> written) {
    return written.isPresent() ? OptionalDouble.of(nominal(written.get())) : OptionalDouble.empty();
  }

  private static double nominal(Written<Quantity> written) {
    return written.value().nominal();
  }

  /** Notes each key that is asked for and not there. */
  private record Gatherer(List<String> missing) {
    OptionalDouble value(Optional<Written<Quantity>> written, String key) {
      if (written.isEmpty()) {
        missing.add("switching." + key);
      }
      return Scene.value(written);
    }
  }
}
