package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * Where a coil's volts get lost on the way from the supply and back, at the hottest.
 *
 * @param stretches runs, and wires outside of any run, the one that loses most first
 * @param ohms of the line: conductors and closed contacts
 * @param resistor the resistor on the way, of several the greatest
 * @param inSeries Ω of all resistors on the way, at their highest
 * @param missing what would have to be written to know a conductor's resistance; empty if all is
 *     known
 */
record LineLoss(
    List<Stretch> stretches,
    double ohms,
    Optional<Part.Resistor> resistor,
    double inSeries,
    Optional<Gap> missing) {

  /**
   * All conductors of the way that lie in one run, or a wire by itself.
   *
   * @param name as a person calls it: {@code W1}, {@code the wire U1.2 to K1.A1}
   * @param mark of its length, or of the whole where the length has no place of its own
   * @param metres length of one core; empty where its cores differ
   * @param figures the resistances it rests on
   */
  record Stretch(
      String name,
      Mark mark,
      double ohms,
      int cores,
      OptionalDouble metres,
      Optional<ConductorSize> size,
      boolean flexible,
      List<Cited<Double>> figures) {}

  static LineLoss of(Study study, Path way, Tables tables) {
    Map<String, List<Conductor>> together = new LinkedHashMap<>();
    List<Stretch> stretches = new ArrayList<>();
    Optional<Gap> missing = Optional.empty();
    List<Part.Resistor> resistors = new ArrayList<>();
    double ohms = 0;
    for (var branch : way.branches()) {
      if (branch instanceof Contact contact) {
        ohms +=
            tables
                .figure(contact.pole() ? "coil.pole-resistance" : "coil.contact-resistance")
                .value();
      } else if (branch instanceof Passive part && part.spec() instanceof Part.Resistor r) {
        resistors.add(r);
      } else if (branch instanceof Conductor conductor) {
        together.computeIfAbsent(nameOf(conductor), n -> new ArrayList<>()).add(conductor);
        if (missing.isEmpty() && study.hotOhms(conductor).isEmpty()) {
          missing = Optional.of(new Gap(missingKey(conductor), markOf(conductor)));
        }
      }
    }
    for (var entry : together.entrySet()) {
      Stretch stretch = stretch(study, entry.getKey(), entry.getValue());
      ohms += stretch.ohms();
      stretches.add(stretch);
    }
    stretches.sort(Comparator.comparingDouble(Stretch::ohms).reversed());
    return new LineLoss(
        List.copyOf(stretches),
        ohms,
        resistors.stream().max(Comparator.comparingDouble(LineLoss::ohms)),
        resistors.stream().mapToDouble(LineLoss::ohms).sum(),
        missing);
  }

  /** What a stretch loses of the volts that are lost in all. */
  double share(Stretch stretch, double lost) {
    return all() > 0 ? lost * stretch.ohms() / all() : 0;
  }

  /** Ω of everything on the way: line and resistors. */
  double all() {
    return ohms + inSeries;
  }

  /** True if a resistor takes more than any stretch of the line. */
  boolean isMostlyResistor() {
    return inSeries > stretches.stream().mapToDouble(Stretch::ohms).max().orElse(0);
  }

  private static double ohms(Part.Resistor resistor) {
    return resistor.resistance().map(r -> r.value().high()).orElse(0.0);
  }

  private static Stretch stretch(Study study, String name, List<Conductor> cores) {
    List<Cited<Double>> figures =
        cores.stream().flatMap(core -> study.hotOhms(core).stream()).toList();
    Conductor first = cores.get(0);
    boolean alike =
        cores.stream()
            .allMatch(c -> c.length().equals(first.length()) && c.size().equals(first.size()));
    return new Stretch(
        name,
        markOf(first),
        figures.stream().mapToDouble(Cited::value).sum(),
        cores.size(),
        alike ? first.length() : OptionalDouble.empty(),
        alike ? first.size() : Optional.empty(),
        isFlexible(first),
        figures);
  }

  /** True if the run says that its cores are fine-stranded. */
  static boolean isFlexible(Conductor conductor) {
    return conductor.run().flatMap(Run::flexible).filter(Written::value).isPresent();
  }

  private static String nameOf(Conductor conductor) {
    return conductor
        .run()
        .map(Run::name)
        .orElse("the wire %s to %s".formatted(conductor.from(), conductor.to()));
  }

  private static Mark markOf(Conductor conductor) {
    return conductor
        .wire()
        .length()
        .map(Written::mark)
        .or(() -> conductor.run().map(run -> run.length().map(Written::mark).orElse(run.mark())))
        .orElse(conductor.mark());
  }

  private static String missingKey(Conductor conductor) {
    String name = nameOf(conductor);
    if (conductor.length().isEmpty()) {
      return "length of " + name;
    }
    return conductor.size().isEmpty() ? "size of " + name : "tabulated size of " + name;
  }
}
