package org.coilwright.netlist;

import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Netlist.About;
import org.coilwright.netlist.Site.Enclosure;
import org.coilwright.netlist.Site.Island;
import org.coilwright.netlist.Site.MainsSupply;
import org.coilwright.netlist.Site.Phases;
import org.coilwright.netlist.Site.Practice;
import org.coilwright.netlist.Value.Incomplete;
import org.coilwright.netlist.Value.Section;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Quantity;

/** Title block and site. */
final class SiteBuilder {
  private final Problems problems;

  SiteBuilder(Problems problems) {
    this.problems = problems;
  }

  static About about(Section section) {
    return new About(
        section.mustText("title"),
        section.plain("reference"),
        section.plain("revision"),
        section.plain("prepared-by"),
        section.plain("date"),
        section.plain("note"));
  }

  Site site(Section section, Optional<MainsSupply> mains) {
    return new Site(
        section.mark(),
        mains,
        island(section),
        section.quantity("enclosure-air"),
        section.quantity("ambient"),
        section.section("enclosure").map(SiteBuilder::enclosure),
        section.quantity("altitude"),
        section.mustChoice("practice", Practice.class));
  }

  /** The mains; empty if the site has none, or they could not be read. */
  Optional<MainsSupply> mains(Section site) {
    try {
      return site.section("mains").map(this::mainsSupply);
    } catch (Incomplete e) {
      return Optional.empty();
    }
  }

  private MainsSupply mainsSupply(Section section) {
    Written<Phases> phases = section.mustChoice("phases", Phases.class);
    Written<Quantity> voltage = section.quantity("voltage").orElseThrow(Incomplete::new);
    boolean two = Shape.MainsVoltage.isSplit(voltage.text());
    if (two != (phases.value() == Phases.SPLIT)) {
      problems.add(
          voltage.mark(),
          two ? "two voltages belong to split mains" : "split mains have two voltages",
          two ? "write one voltage, or phases: split" : "write both: 120/240 V");
    }
    if (voltage.value().kind() == CurrentKind.DC) {
      problems.add(voltage.mark(), "mains are alternating", "take DC out");
    }
    return new MainsSupply(
        section.mark(),
        phases,
        voltage,
        section.quantity("frequency"),
        section.text("earthing"),
        section.quantity("fault-current"),
        section.quantity("loop-impedance"));
  }

  /** What is written of island operation; never throws. */
  static Optional<Island> island(Section site) {
    Optional<Island> none =
        site.text("island")
            .map(
                word ->
                    new Island(
                        word.mark(),
                        false,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        List.of()));
    return none.isPresent() ? none : site.section("island").map(SiteBuilder::islandOf);
  }

  private static Island islandOf(Section section) {
    return new Island(
        section.mark(),
        true,
        section.quantity("rated-current"),
        section.quantity("fault-current"),
        section.quantity("lasts"),
        section.text("neutral-bond"),
        section.quantity("electrode"),
        section.words("feeds"));
  }

  private static Enclosure enclosure(Section section) {
    return new Enclosure(
        section.mark(),
        section.quantity("width"),
        section.quantity("height"),
        section.quantity("depth"),
        section.choice("mounting", Site.BoxMounting.class),
        section.choice("vents", Site.Vents.class));
  }
}
