package org.coilwright.solve;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.coilwright.circuit.Bench;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Netlist;
import org.coilwright.ngspice.Deck;
import org.coilwright.ngspice.Simulator;

/**
 * A thousand operating points here and in one ngspice process, side by side in one run: a thousand
 * generated circuits (direct, single-phase and three-phase in turn), each in one state. Run it by
 * hand, it is no part of the build:
 *
 * <pre>
 * mvn -q test-compile dependency:build-classpath -Dmdep.outputFile=/tmp/cp -Dmdep.includeScope=test
 * java -cp target/classes:target/test-classes:$(cat /tmp/cp) org.coilwright.solve.OperatingPoints
 * </pre>
 *
 * <p>A diode that carries next to nothing has a few millivolts less in ngspice, whose diode is a
 * curve and not a step; the points where that shows are printed.
 *
 * <p>Here a point is a whole circuit from its records on, wired and carried through every one of
 * its states; ngspice reads one state of it as a deck and solves that one. CPU time of the child
 * comes from {@code /proc/self/stat}, so this runs on Linux.
 */
public final class OperatingPoints {
  private static final int POINTS = 1000;
  private static final int ROUNDS = 9;
  private static final int ASKED = 6;
  private static final String ONE = "{phases: 1, voltage: 230 V ± 10 %, frequency: 50 Hz}";

  private OperatingPoints() {}

  /** Prints both CPU times and how far the voltages are apart. */
  public static void main(String[] args) throws IOException {
    List<Netlist> netlists = new ArrayList<>();
    List<Deck> decks = new ArrayList<>();
    List<Map<String, Double>> expected = new ArrayList<>();
    Random random = new Random(7);
    while (decks.size() < POINTS) {
      Circuit circuit = circuit(decks.size() % 3, random);
      Study study = Study.of(circuit, Studies.TABLES);
      add(circuit, study, netlists, decks, expected);
    }
    double before = childSeconds();
    Map<String, Map<String, Double>> answers =
        Simulator.live(decks)
            .orElseThrow(() -> new IllegalStateException("no ngspice on the PATH"));
    double theirs = childSeconds() - before;
    double[] ours = new double[ROUNDS];
    for (int round = 0; round < ROUNDS; round++) {
      long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      for (Netlist netlist : netlists) {
        Study.of(Circuit.of(netlist), Studies.TABLES);
      }
      ours[round] = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start) / 1e9;
    }
    double first = ours[0];
    Arrays.sort(ours);
    System.out.printf("operating points              %d%n", POINTS);
    System.out.printf("ngspice, one process, CPU     %.3f s%n", theirs);
    System.out.printf("here, first round, CPU        %.3f s%n", first);
    System.out.printf("here, median of %d, CPU        %.3f s%n", ROUNDS, ours[ROUNDS / 2]);
    System.out.printf("ngspice over the median       %.1f%n", theirs / ours[ROUNDS / 2]);
    System.out.printf("voltages compared             %d%n", count(expected));
    System.out.printf("beyond 0.1 %% or 1 mV          %d%n", apart(decks, expected, answers));
  }

  private static Circuit circuit(int kind, Random random) {
    return switch (kind) {
      case 0 -> Bench.circuit(ONE, GeneratedCircuit.direct(random));
      case 1 -> Bench.circuit(ONE, GeneratedCircuit.alternating(random));
      default -> Bench.circuit(Studies.THREE, GeneratedCircuit.threePhase(random));
    };
  }

  /** The first sound state of the first island that has a source. */
  private static void add(
      Circuit circuit,
      Study study,
      List<Netlist> netlists,
      List<Deck> decks,
      List<Map<String, Double>> expected) {
    for (State state : study.states()) {
      for (Circuit.Island island : circuit.islands()) {
        if (!island.sources().isEmpty() && !study.isShorted(state)) {
          SpiceDeck deck = new SpiceDeck(study, state, island, Corner.NOMINAL, island.hasDirect());
          List<String> asked = deck.expected.keySet().stream().limit(ASKED).toList();
          if (!asked.isEmpty()) {
            netlists.add(circuit.netlist());
            decks.add(deck.deck("point " + decks.size(), asked));
            expected.add(deck.expected);
            return;
          }
        }
      }
    }
  }

  private static long count(List<Map<String, Double>> expected) {
    return expected.stream().mapToLong(e -> Math.min(ASKED, e.size())).sum();
  }

  private static long apart(
      List<Deck> decks,
      List<Map<String, Double>> expected,
      Map<String, Map<String, Double>> answers) {
    long apart = 0;
    for (int i = 0; i < decks.size(); i++) {
      Map<String, Double> simulated = answers.getOrDefault(decks.get(i).name(), Map.of());
      for (String what : expected.get(i).keySet().stream().limit(ASKED).toList()) {
        double ours = expected.get(i).getOrDefault(what, Double.NaN);
        double theirs = simulated.getOrDefault(what, Double.NaN);
        if (!(Math.abs(ours - theirs) <= 1e-3 + 1e-3 * Math.abs(theirs))) {
          apart++;
          System.out.printf(
              "  %s %s: here %.6f, ngspice %.6f%n", decks.get(i).name(), what, ours, theirs);
        }
      }
    }
    return apart;
  }

  /** CPU seconds of children that have ended: fields 16 and 17, in hundredths. */
  private static double childSeconds() throws IOException {
    String stat = Files.readString(Path.of("/proc/self/stat"));
    String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ", -1);
    return (Long.parseLong(fields[13]) + Long.parseLong(fields[14])) / 100.0;
  }
}
