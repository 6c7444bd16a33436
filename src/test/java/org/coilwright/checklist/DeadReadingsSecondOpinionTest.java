package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Mistake;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.solve.Probing;
import org.coilwright.solve.Span;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every mistake of seven circuits, built as drawn anew and measured by the plainest means there
 * are: the reading must lie between the limits that are claimed for it, whatever the resistances
 * are within theirs, and it must reach them where all resistances stand at theirs.
 */
class DeadReadingsSecondOpinionTest {
  private static final double CLOSE = 1e-4;

  static Stream<String> circuits() {
    return Stream.concat(
        Stream.of("wash-room-tub", "cabin-water-heater", "guest-house-cylinder", "attic-mistakes"),
        SmallCircuits.ALL.keySet().stream());
  }

  @ParameterizedTest
  @MethodSource("circuits")
  void every_reading_lies_within_its_limits(String name) {
    Mistaken mistaken = Mistaken.of(name);
    Random random = new Random(name.hashCode());
    List<Row> rows = mistaken.rows();
    int outside = 0;
    for (Mistake mistake : mistaken.tests().mistakes().all()) {
      Circuit built = Circuit.of(mistake.in(mistaken.netlist()));
      for (Row row : some(rows, mistaken, mistake, random)) {
        Probing probing = row.probing().orElseThrow();
        Span claimed = mistaken.tests().readings().built(probing, mistake);
        if (probing.method() == Probing.Method.DIODE) {
          continue;
        }
        // A part that was turned is measured at its ends, which have changed places.
        Probing atEnds = mistake.turned().map(t -> across(probing, t)).orElse(probing);
        for (int round = 0; round < 2; round++) {
          for (double reading : readings(built, atEnds, mistaken, within(random))) {
            outside += contains(claimed, reading) ? 0 : 1;
            assertTrue(
                contains(claimed, reading),
                () -> name + ", " + row.name() + ", " + mistake + ": " + claimed + ", " + reading);
          }
        }
      }
    }
    assertEquals(0, outside);
  }

  @ParameterizedTest
  @MethodSource("circuits")
  void the_limits_are_reached_where_no_diode_can_conduct(String name) {
    Mistaken mistaken = Mistaken.of(name);
    int compared = 0;
    for (Row row : mistaken.rows()) {
      Probing probing = row.probing().orElseThrow();
      if (probing.method() == Probing.Method.DIODE) {
        continue;
      }
      Span claimed = mistaken.tests().readings().drawn(probing);
      List<Double> least = readings(Circuit.of(mistaken.netlist()), probing, mistaken, Span::low);
      List<Double> most = readings(Circuit.of(mistaken.netlist()), probing, mistaken, Span::high);
      if (least.size() == 1 && most.size() == 1) {
        assertEquals(claimed.low(), least.get(0), CLOSE * (1 + claimed.low()), row.name());
        assertEquals(claimed.high(), most.get(0), CLOSE * (1 + claimed.high()), row.name());
        compared++;
      }
    }
    assertTrue(compared > 2, "compared only " + compared);
  }

  /** The row at which it shows, and three others. */
  private static List<Row> some(List<Row> rows, Mistaken mistaken, Mistake mistake, Random random) {
    List<Row> some = new ArrayList<>();
    mistaken.tests().mistakes().first(rows, mistake).ifPresent(some::add);
    for (int i = 0; i < 3; i++) {
      some.add(rows.get(random.nextInt(rows.size())));
    }
    return some;
  }

  private static Probing across(Probing probing, Mistake.Turned turned) {
    Function<Terminal, Terminal> across =
        pin ->
            pin.equals(turned.first())
                ? turned.second()
                : pin.equals(turned.second()) ? turned.first() : pin;
    return new Probing(
        probing.method(),
        probing.plus().stream().map(across).toList(),
        probing.minus().stream().map(across).toList(),
        new HashSet<>(probing.lifted().stream().map(across).toList()),
        probing.apart(),
        probing.operated(),
        probing.directed());
  }

  private static boolean contains(Span claimed, double reading) {
    double slack = CLOSE * (1 + Math.min(reading, 1e9));
    return reading >= Math.min(claimed.low(), PlainOhms.OPEN) - slack
        && (Double.isInfinite(claimed.high()) || reading <= claimed.high() + slack);
  }

  /** Any resistance within its limits, often at one of them. */
  private static Function<Span, Double> within(Random random) {
    return span -> {
      double high = Double.isInfinite(span.high()) ? 1e7 : span.high();
      return switch (random.nextInt(4)) {
        case 0 -> span.low();
        case 1 -> span.high();
        default ->
            span.isOpen() ? span.low() : span.low() + (high - span.low()) * random.nextDouble();
      };
    };
  }

  private static List<Double> readings(
      Circuit built, Probing probing, Mistaken mistaken, Function<Span, Double> choice) {
    ColdWorth worth = new ColdWorth(mistaken.tests().anatomy(), mistaken.tests().bands());
    Map<String, Double> chosen = new HashMap<>();
    Map<Set<Terminal>, Double> inside = new HashMap<>();
    return new PlainOhms(
            built,
            probing,
            branch ->
                chosen.computeIfAbsent(
                    branch.id(), id -> choice.apply(of(worth, branch, mistaken))),
            pins ->
                inside.computeIfAbsent(
                    pins,
                    p -> inside(p, mistaken, worth).map(choice).orElse(Double.POSITIVE_INFINITY)))
        .readings();
  }

  /** A wire that was moved keeps its own length; the ids of wires count on past one left out. */
  private static Span of(ColdWorth worth, Branch branch, Mistaken mistaken) {
    return branch instanceof Branch.Conductor wire
        ? worth.apply(
            mistaken.tests().anatomy().circuit().branches(Branch.Conductor.class).stream()
                .filter(w -> w.mark().equals(wire.mark()))
                .findFirst()
                .orElseThrow())
        : worth.apply(branch);
  }

  /** What may be joined inside a part, said a second time. */
  private static Optional<Span> inside(Set<Terminal> pins, Mistaken mistaken, ColdWorth worth) {
    List<String> names = pins.stream().map(Terminal::pin).sorted().toList();
    if (names.equals(List.of("PE", "PE"))) {
      boolean load =
          pins.stream()
              .anyMatch(
                  pin ->
                      mistaken.tests().anatomy().loads().stream()
                              .anyMatch(part -> part.name().equals(pin.part()))
                          && mistaken.tests().anatomy().wired(pin.part(), "PE"));
      boolean mains =
          pins.stream()
              .anyMatch(pin -> mistaken.netlist().parts().get(pin.part()) instanceof Part.Mains);
      return load && mains ? Optional.of(Span.ANY) : Optional.empty();
    }
    Part part = mistaken.netlist().parts().get(pins.iterator().next().part());
    if (part instanceof Part.Mains && names.equals(List.of("N", "PE"))) {
      return Optional.of(Span.ANY);
    }
    if (part instanceof Part.Controller controller) {
      Set<String> electronics = new HashSet<>(controller.reserved().keySet());
      controller
          .auxSupply()
          .ifPresent(
              aux -> {
                electronics.add(aux.plus().value());
                electronics.add(aux.minus().value());
              });
      return electronics.containsAll(names) ? Optional.of(worth.electronics()) : Optional.empty();
    }
    return Optional.empty();
  }
}
