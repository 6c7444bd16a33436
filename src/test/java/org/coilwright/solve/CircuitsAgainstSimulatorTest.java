package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.coilwright.circuit.Bench;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.ngspice.Deck;
import org.coilwright.ngspice.Simulator;
import org.junit.jupiter.api.Test;

/** Node voltages of generated circuits and of every shipped example against a circuit simulator. */
class CircuitsAgainstSimulatorTest {
  private static final String ONE = "{phases: 1, voltage: 230 V ± 10 %, frequency: 50 Hz}";
  private static final int EACH = 80;
  private static final int CLAMPED = 50;
  private static final int NODES = 6;

  private final List<Deck> decks = new ArrayList<>();
  private int clamping;
  private final Map<String, Map<String, Double>> expected = new LinkedHashMap<>();

  @Test
  void two_hundred_and_sixty_generated_circuits_agree() {
    Random random = new Random(2026);
    for (int i = 0; decks.size() < 3 * EACH; i++) {
      add("direct " + i, Bench.circuit(ONE, GeneratedCircuit.direct(random)), random);
      add("single " + i, Bench.circuit(ONE, GeneratedCircuit.alternating(random)), random);
      add("three " + i, Bench.circuit(Studies.THREE, GeneratedCircuit.threePhase(random)), random);
    }
    Random other = new Random(2027);
    for (int i = 0; i < CLAMPED; i++) {
      add("clamped " + i, Bench.circuit(ONE, GeneratedCircuit.clamped(other)), other);
    }
    assertTrue(clamping >= 10, "varistors that conduct: " + clamping);
    compare("generated");
  }

  @Test
  void every_shipped_example_agrees_in_every_state() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("wiring-examples"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList()) {
        Reading reading = NetlistReader.read(file.toString(), Files.readAllBytes(file));
        Circuit circuit = Circuit.of(((Reading.Read) reading).netlist());
        Study study = Study.of(circuit, Studies.TABLES);
        int number = 0;
        for (State state : study.states()) {
          add(
              file.getFileName() + " " + number++,
              study,
              state,
              Corner.NOMINAL,
              new Random(number));
        }
      }
    }
    compare("examples");
  }

  private void add(String name, Circuit circuit, Random random) {
    Study study = Study.of(circuit, Studies.TABLES);
    List<State> sound = study.states().stream().filter(s -> !study.isShorted(s)).toList();
    if (!sound.isEmpty()) {
      State state = sound.get(random.nextInt(sound.size()));
      add(name, study, state, random.nextBoolean() ? Corner.NOMINAL : Corner.LOWEST, random);
    }
  }

  private void add(String name, Study study, State state, Corner corner, Random random) {
    for (Circuit.Island island : study.circuit().islands()) {
      if (island.sources().isEmpty()) {
        continue;
      }
      for (boolean direct : new boolean[] {true, false}) {
        if (direct ? island.hasDirect() : island.hasMains()) {
          SpiceDeck deck = new SpiceDeck(study, state, island, corner, direct);
          clamping += deck.clamping;
          List<String> asked = new ArrayList<>(deck.expected.keySet());
          Collections.shuffle(asked, random);
          asked = asked.subList(0, Math.min(NODES, asked.size()));
          if (!asked.isEmpty()) {
            String whole = name + " island " + island.number() + (direct ? " direct" : "");
            decks.add(deck.deck(whole, asked));
            Map<String, Double> some = new LinkedHashMap<>();
            asked.forEach(a -> some.put(a, deck.expected.getOrDefault(a, Double.NaN)));
            expected.put(whole, some);
          }
        }
      }
    }
  }

  private void compare(String recording) {
    Map<String, Map<String, Double>> answers = Simulator.recordedIn(recording).answers(decks);
    List<String> apart = new ArrayList<>();
    expected.forEach(
        (deck, volts) ->
            volts.forEach(
                (what, value) -> {
                  double simulated =
                      answers.getOrDefault(deck, Map.of()).getOrDefault(what, Double.NaN);
                  if (!(Math.abs(simulated - value) <= 1e-3 + 1e-3 * Math.abs(simulated))) {
                    apart.add(deck + " " + what + ": simulated " + simulated + ", ours " + value);
                  }
                }));
    assertEquals(List.of(), apart);
  }
}
