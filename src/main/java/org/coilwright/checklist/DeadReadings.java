package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.circuit.Mistake;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.solve.DeadCircuit;
import org.coilwright.solve.DeadCircuit.Measured;
import org.coilwright.solve.MistakeIndex;
import org.coilwright.solve.Probing;
import org.coilwright.solve.Span;

/** What the instruments of the dead tests show, on the circuit as drawn and as mistaken. */
final class DeadReadings {
  static final double KILOHM = 1e3;
  private static final double MEGOHM = 1e6;
  private static final double CLOSE = 1e-6;

  private final DeadCircuit circuit;
  // By identity: what is done to the circuit takes longer to compare than to look up.
  private final IdentityHashMap<Probing, Leads> measured = new IdentityHashMap<>();
  private final boolean diodes;
  private final double share;
  private final double probes;

  DeadReadings(Anatomy anatomy, Bands bands) {
    ColdWorth worth = new ColdWorth(anatomy, bands);
    this.circuit =
        new DeadCircuit(
            anatomy.circuit(),
            worth,
            new DeadCircuit.Meter(
                bands.figure("checklist.diode-amps-low").value(),
                bands.figure("checklist.diode-amps-high").value(),
                bands.figure("checklist.diode-volts-low").value(),
                bands.figure("checklist.diode-volts-high").value()));
    this.diodes = circuit.hasDiodes();
    this.share = bands.figure("checklist.instrument-share").value();
    this.probes = bands.figure("checklist.probe-ohms").value();
    anatomy.netlist().parts().values().forEach(part -> inside(part, anatomy, worth.electronics()));
    anatomy.loads().forEach(load -> throughPipes(load, anatomy));
  }

  /** Vessel and pipes may be a second way to earth, as long as the conductor is on the load. */
  private void throughPipes(Part load, Anatomy anatomy) {
    if (anatomy.wired(load.name(), Anatomy.PE)) {
      for (Part.Mains mains : anatomy.parts(Part.Mains.class)) {
        circuit.join(load.name(), at(load, Anatomy.PE), at(mains, Anatomy.PE), Span.ANY);
      }
    }
  }

  /** What nobody drew and what is there all the same. */
  private void inside(Part part, Anatomy anatomy, Span electronics) {
    if ((part instanceof Part.Mains || part instanceof Part.Source) && part.pins().contains("N")) {
      // Neutral and protective conductor may be bonded before the isolator, or at the transformer.
      circuit.join(part.name(), at(part, "N"), at(part, "PE"), Span.ANY);
    } else if (part instanceof Part.Controller controller) {
      List<String> pins = new ArrayList<>(controller.reserved().keySet());
      controller
          .auxSupply()
          .ifPresent(aux -> pins.addAll(List.of(aux.minus().value(), aux.plus().value())));
      joined(part, pins, electronics);
      controller.auxSupply().ifPresent(aux -> earthed(part, aux, anatomy, electronics));
    } else if (part instanceof Part.DcSupply supply) {
      earthed(part, supply.output(), anatomy, electronics);
    }
  }

  private void joined(Part part, List<String> pins, Span electronics) {
    for (int i = 0; i < pins.size(); i++) {
      for (int j = i + 1; j < pins.size(); j++) {
        circuit.join(part.name(), at(part, pins.get(i)), at(part, pins.get(j)), electronics);
      }
    }
  }

  /** Only a supply that is stated as SELV is surely parted from its input and from earth. */
  private void earthed(Part part, Part.DcOutput output, Anatomy anatomy, Span electronics) {
    if (output.isolation().map(w -> w.value()).filter(i -> i == Part.Isolation.SELV).isPresent()) {
      return;
    }
    Terminal minus = at(part, output.minus().value());
    for (Part.Mains mains : anatomy.parts(Part.Mains.class)) {
      circuit.join(part.name(), minus, at(mains, "PE"), Span.ANY);
    }
    anatomy.inputs().stream()
        .filter(input -> input.part().equals(part.name()))
        .flatMap(input -> input.from().terminals().stream())
        .forEach(pin -> circuit.join(part.name(), minus, pin, electronics));
  }

  private static Terminal at(Part part, String pin) {
    return new Terminal(part.name(), pin);
  }

  /** One measurement with the leads either way, or one way only. */
  private record Leads(Measured one, Optional<Measured> other) {
    Span drawn() {
      return other.map(o -> either(one.reading(), o.reading())).orElse(one.reading());
    }

    Span built(Mistake mistake) {
      Span read = one.reading(mistake);
      return other.map(o -> either(read, o.reading(mistake))).orElse(read);
    }
  }

  private Leads leads(Probing probing) {
    return measured.computeIfAbsent(
        probing,
        p ->
            new Leads(
                circuit.measure(p),
                isEither(p) ? Optional.of(circuit.measure(p.exchanged())) : Optional.empty()));
  }

  /** Between which limits the true value lies, on the circuit as drawn. */
  Span drawn(Probing probing) {
    return leads(probing).drawn();
  }

  /** Between which limits it lies if this mistake is in the circuit. */
  Span built(Probing probing, Mistake mistake) {
    return leads(probing).built(mistake);
  }

  /** An index of mistakes, to be asked with {@link #felt}. */
  MistakeIndex index(List<Mistake> mistakes) {
    return new MistakeIndex(circuit, mistakes);
  }

  /** Places of the mistakes that may change this reading; no other does. */
  List<Integer> felt(Probing probing, MistakeIndex index) {
    return index.felt(leads(probing).one());
  }

  boolean hasDiodes() {
    return diodes;
  }

  /** Where nobody says which lead is the positive one, it may be either. */
  private boolean isEither(Probing probing) {
    return diodes && !probing.directed() && probing.method() == Probing.Method.OHMS;
  }

  private static Span either(Span one, Span other) {
    return new Span(Math.min(one.low(), other.low()), Math.max(one.high(), other.high()));
  }

  /** What an instrument may show on the circuit as drawn is inside the band, its error left out. */
  boolean fits(Probing probing, Band band) {
    Span drawn = drawn(probing);
    double scale = scale(band);
    return drawn.low() / scale >= band.min().orElse(0) * (1 - CLOSE)
        && (band.max().isEmpty() || drawn.high() / scale <= band.max().getAsDouble() * (1 + CLOSE));
  }

  /**
   * A row with its measurement, if the circuit as drawn surely gives a reading inside its band:
   * only then does a reading outside it tell of a mistake.
   */
  Row reading(Row row, Probing probing) {
    return row.expected() instanceof Band band && fits(probing, band) ? row.reading(probing) : row;
  }

  /** True if this measurement feels the mistake at all. */
  boolean differs(Probing probing, Mistake mistake) {
    return !built(probing, mistake).equals(drawn(probing));
  }

  /** What an instrument may show, in the band's unit, if this mistake is in the circuit. */
  Span shown(Probing probing, Mistake mistake, Band band) {
    return shown(built(probing, mistake), probing, band);
  }

  private Span shown(Span real, Probing probing, Band band) {
    double more = probing.method() == Probing.Method.DIODE ? 0 : probes;
    double scale = scale(band);
    return new Span(real.low() * (1 - share) / scale, (real.high() * (1 + share) + more) / scale);
  }

  /** True if every reading that the mistake can give lies outside the band. */
  boolean shows(Probing probing, Mistake mistake, Band band) {
    return leaves(shown(probing, mistake, band), band);
  }

  /** True if a wider band shows every one of these mistakes that the narrower one shows. */
  boolean showsAlike(Probing probing, List<Mistake> mistakes, Band narrow, Band wide) {
    for (Mistake mistake : mistakes) {
      Span shown = shown(probing, mistake, narrow);
      if (leaves(shown, narrow) && !leaves(shown, wide)) {
        return false;
      }
    }
    return true;
  }

  private static boolean leaves(Span shown, Band band) {
    return (band.max().isPresent() && shown.low() > band.max().getAsDouble())
        || shown.high() < band.min().orElse(0);
  }

  /** What a voltmeter may show of volts between these limits. */
  Span onVoltmeter(Span volts) {
    return new Span(volts.low() * (1 - share), volts.high() * (1 + share));
  }

  private static double scale(Band band) {
    return switch (band.unit()) {
      case "MΩ" -> MEGOHM;
      case "kΩ" -> KILOHM;
      default -> 1;
    };
  }
}
