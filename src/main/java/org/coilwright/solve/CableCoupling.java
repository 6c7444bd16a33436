package org.coilwright.solve;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.table.Cited;

/**
 * What the capacitance between the cores of its runs leaves on an alternating-current coil. Each
 * two cores of a run are taken as a capacitor over the shorter of their lengths; the run's other
 * ends differ from the nearer ones by the lines' resistance only, which is nothing beside it.
 */
final class CableCoupling {
  private final Lookup lookup;
  private final Cited<Double> faradsPerMetre;

  CableCoupling(Lookup lookup, Cited<Double> faradsPerMetre) {
    this.lookup = lookup;
    this.faradsPerMetre = faradsPerMetre;
  }

  /** A capacitor between two nodes of a zone. */
  record Pair(int from, int to, Impedance z) {}

  /** Empty if no core lies beside one of the coil's zone, or lengths are missing. */
  Optional<Cited<Double>> held(String relay, State state) {
    Setup setup = lookup.model().setup;
    Optional<Branch> coil =
        setup.circuit.branchesOf(relay).stream().filter(Branch.Coil.class::isInstance).findFirst();
    if (coil.isEmpty()) {
      throw new IllegalArgumentException("no relay " + relay);
    }
    Zone zone = lookup.zoneOf(coil.get());
    List<Pair> pairs = pairs(zone, setup.hertz);
    if (pairs.isEmpty() || !zone.reference.hasMains()) {
      return Optional.empty();
    }
    Settings settings =
        new PulledIn(
            lookup.situation(zone, state).settings(Corner.NOMINAL), setup.variables.ofRelay(relay));
    ZoneFlow flow = new ZoneSolver(zone, Corner.NOMINAL, settings, e -> true).with(pairs).solve();
    double volts = flow.alternatingVolts(lookup.elementOf(zone, coil.get()));
    return Optional.of(faradsPerMetre.map(any -> volts));
  }

  private List<Pair> pairs(Zone zone, double hertz) {
    List<Element> cores = new ArrayList<>();
    for (Element element : zone.elements) {
      if (element.branch() instanceof Conductor wire
          && wire.run().isPresent()
          && wire.length().isPresent()) {
        cores.add(element);
      }
    }
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < cores.size(); i++) {
      for (int j = i + 1; j < cores.size(); j++) {
        pair(cores.get(i), cores.get(j), hertz).ifPresent(pairs::add);
      }
    }
    return pairs;
  }

  private Optional<Pair> pair(Element one, Element other, double hertz) {
    if (!(one.branch() instanceof Conductor a)
        || !(other.branch() instanceof Conductor b)
        || !a.run().equals(b.run())) {
      return Optional.empty();
    }
    double metres = Math.min(a.length().orElse(0), b.length().orElse(0));
    double farads = metres * faradsPerMetre.value();
    return farads <= 0
        ? Optional.empty()
        : Optional.of(
            new Pair(
                one.from(), other.from(), new Impedance(0, -1 / (2 * Math.PI * hertz * farads))));
  }

  /** The same settings with one armature in. */
  private record PulledIn(Settings as, int relay) implements Settings {
    @Override
    public boolean is(int variable) {
      return variable == relay || as.is(variable);
    }

    @Override
    public boolean isLive(Source source) {
      return as.isLive(source);
    }

    @Override
    public double re(Source source, Corner corner) {
      return as.re(source, corner);
    }

    @Override
    public double im(Source source, Corner corner) {
      return as.im(source, corner);
    }
  }
}
