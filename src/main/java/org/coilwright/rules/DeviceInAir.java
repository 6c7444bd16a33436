package org.coilwright.rules;

import java.util.Optional;
import org.coilwright.netlist.Mounting;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Subject;
import org.coilwright.sizing.Derated;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.Series;
import org.coilwright.sizing.WarmDevice;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** A protective device in its air, and the things to be said of it that need no load. */
record DeviceInAir(Subject subject, Part device, WarmDevice.Kind kind, InsideAir air, Site site) {
  String name() {
    return device.name();
  }

  /** What its sheet says of air. */
  Part.DeviceAir limits() {
    return limits(device);
  }

  private static Part.DeviceAir limits(Part device) {
    return device instanceof Part.Fuse fuse ? fuse.air() : ((Part.Protective) device).air();
  }

  Optional<Written<Quantity>> working() {
    return limits().working();
  }

  boolean isBeside() {
    return isBeside(device);
  }

  /** True if it stands close to its neighbours. */
  static boolean isBeside(Part device) {
    return limits(device).mounting().filter(m -> m.value() == Mounting.SIDE_BY_SIDE).isPresent();
  }

  Outcome undecided(String missing, String sentence) {
    return subject.undecided(
        missing,
        "%s is in air of up to %s (%s). %s"
            .formatted(
                name(), Printed.of(air.celsius(), Dimension.TEMPERATURE), air.words(), sentence));
  }

  /**
   * Air no warmer than a limit.
   *
   * @param limit °C
   * @param why before the limit: {@code it works up to}
   */
  Outcome inside(double limit, String why) {
    Printed.Pair pair = Printed.pair(air.celsius(), limit, Dimension.TEMPERATURE);
    return subject.satisfied(
        "%s is in air of %s at most (%s); %s %s."
            .formatted(name(), pair.value(), air.words(), why, pair.limit()),
        new Measure(air.celsius(), "°C"),
        new Measure(limit, "°C"),
        air.basis());
  }

  /**
   * Air outside what its sheet says.
   *
   * @param range as written
   * @param celsius of the air
   * @param limit °C that it passes
   * @param how warm or cold
   */
  Outcome beyond(Written<Quantity> range, double celsius, double limit, String how) {
    Printed.Pair pair = Printed.pair(celsius, limit, Dimension.TEMPERATURE);
    Subject.Finding finding =
        new Subject(subject.rule(), range.mark(), subject.at())
            .violated(
                "%s is outside the air it is made for".formatted(name()),
                "The air around it reaches %s, and its sheet says %s: too %s by %s."
                    .formatted(pair.value(), range.text(), how, pair.apart()),
                "ends at " + pair.limit())
            .measured(new Measure(celsius, "°C"), new Measure(limit, "°C"))
            .detail("Air: %s.".formatted(air.words()));
    finding.alsoAt(air.where().orElse(site.mark()), "reaches " + pair.value());
    return finding.todo(
        "Move %s to air that it is made for, or take one made for %s."
            .formatted(name(), pair.value()),
        air.basis());
  }

  /**
   * The loads against what is left of the rating: at nominal voltage against that, at worst against
   * what surely does not open it, as protection.load-exceeds-device does in cooler air.
   *
   * @param holds how many times its rating it surely carries; empty if only the rating counts
   * @param sure false where the air is outside the standard's and no sheet is written
   */
  Outcome compared(
      Derated left,
      PowerSide.Demand demand,
      Optional<Cited<Double>> holds,
      boolean sure,
      Tables tables) {
    boolean nominal = holds.isPresent() && Comparison.exceeds(demand.nominal(), left.amps());
    double times = nominal ? 1 : holds.map(Cited::value).orElse(1.0);
    double draws = nominal ? demand.nominal() : demand.worst();
    double most = times * left.amps();
    String how = nominal ? "at rated power and nominal voltage" : demand.words();
    Basis basis = air.basis().and(Basis.of(left.basis()));
    if (holds.isPresent()) {
      basis = basis.and(Basis.of(holds.get()));
    }
    Printed.Pair pair = Printed.pair(draws, most, Dimension.CURRENT);
    Measure value = new Measure(draws, "A");
    Measure limit = new Measure(most, "A");
    String is =
        times > 1
            ? "%s, and %s of it, %s, do not open it"
                .formatted(
                    left.words(), Printed.of(times, Dimension.COUNT) + " times", pair.limit())
            : left.words();
    String outside =
        "The standard's air ends at %s: ask its maker."
            .formatted(edge(WarmDevice.warmest(kind, tables)));
    if (!Comparison.exceeds(draws, most)) {
      return sure
          ? subject.satisfied(
              "%s %s %s; of %s is left %s."
                  .formatted(demand.draws(), pair.value(), how, name(), is),
              value,
              limit,
              basis)
          : undecided(
              "working-air of " + name(),
              "By a breaker maker's table what is left of its rating is %s, and %s %s %s. %s"
                  .formatted(is, demand.draws(), pair.value(), how, outside));
    }
    double share = left.amps() / left.rated();
    double needs = holds.isPresent() ? demand.nominal() : demand.worst();
    Subject.Finding finding =
        subject
            .violated(
                "%s is too warm for what it carries".formatted(name()),
                "What is left of its rating is %s; %s %s %s: too much by %s."
                    .formatted(is, demand.draws(), pair.value(), how, pair.apart()),
                "carries " + pair.limit())
            .measured(value, limit)
            .detail("Air: %s.%s".formatted(air.words(), sure ? "" : " " + outside));
    finding.alsoAt(
        air.where().orElse(site.mark()),
        "reaches " + Printed.of(air.celsius(), Dimension.TEMPERATURE));
    demand.loads().forEach(l -> finding.alsoAt(l.load().head().mark(), "behind it"));
    larger(demand.worst() / share, tables)
        .ifPresent(amps -> finding.change(Stretch.rating(device), amps));
    return finding.todo(
        "%s, %sor move it to cooler air."
            .formatted(
                larger(Math.max(needs, demand.worst() / times) / share, tables)
                    .map(
                        "Take a device of %s or more if the wire behind it may carry that"
                            ::formatted)
                    .orElse("Spread the loads over several devices"),
                isBeside() ? "leave a gap beside it, " : ""),
        basis);
  }

  private Optional<String> larger(double amps, Tables tables) {
    return (kind == WarmDevice.Kind.BREAKER_UL
            ? Series.atLeast(amps, tables)
            : Series.breakerAtLeast(amps, tables))
        .map(r -> Printed.of(r.value(), Dimension.CURRENT));
  }

  /** For a sentence. */
  static String edge(Optional<Cited<Double>> celsius) {
    return celsius.map(c -> Printed.of(c.value(), Dimension.TEMPERATURE)).orElse("open");
  }
}
