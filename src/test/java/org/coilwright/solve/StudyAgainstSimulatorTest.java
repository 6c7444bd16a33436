package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.ngspice.Deck;
import org.coilwright.ngspice.Simulator;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;

/**
 * Netlists beside hand-written decks of the same circuit: the whole way from the file to the volts
 * at a coil against a circuit simulator. A deck tells in {@code *!} lines which contacts are closed
 * and which of its figures answers to which of ours.
 */
class StudyAgainstSimulatorTest {
  private static final Path FOLDER = Path.of("src/test/resources/ngspice/circuits");
  private static final Pattern ASKS =
      Pattern.compile("(coil|load|contact) (\\S+)(?: (\\S+))?: (.+)");

  /** Relative; both sides solve the same linear network. */
  private static final double TOLERANCE = 1e-6;

  /** A reading of ours and the expression that answers to it. */
  private record Asked(String kind, String part, String pin, String expression) {}

  private record Case(
      Deck deck, Path netlist, Set<String> closed, boolean lowest, List<Asked> asked) {}

  private static Case read(Path file) throws IOException {
    Set<String> closed = new HashSet<>();
    boolean lowest = false;
    double hertz = 0;
    List<Asked> asked = new ArrayList<>();
    List<String> elements = new ArrayList<>();
    for (String line : Files.readAllLines(file)) {
      if (!line.startsWith("*")) {
        elements.add(line);
        continue;
      }
      if (!line.startsWith("*! ")) {
        continue;
      }
      String told = line.substring("*! ".length());
      Matcher asks = ASKS.matcher(told);
      if (asks.matches()) {
        String pin = asks.group(3) == null ? "" : asks.group(3);
        asked.add(
            new Asked(
                asks.group(1),
                asks.group(2),
                pin,
                asks.group(4).toLowerCase(java.util.Locale.ROOT)));
      } else if (told.startsWith("closed: ")) {
        closed.addAll(List.of(told.substring("closed: ".length()).split(", ", -1)));
      } else if (told.startsWith("ac: ")) {
        hertz = Double.parseDouble(told.substring("ac: ".length()));
      } else if (told.equals("lowest")) {
        lowest = true;
      } else {
        fail(file + " says what no one understands: " + told);
      }
    }
    String name = file.getFileName().toString().replace(".cir", "");
    List<String> expressions = asked.stream().map(Asked::expression).toList();
    Deck deck =
        hertz > 0
            ? Deck.alternating(name, elements, hertz, expressions)
            : Deck.operatingPoint(name, elements, expressions);
    Path netlist = FOLDER.resolve(name.substring(0, name.indexOf('.')) + ".yaml");
    return new Case(deck, netlist, closed, lowest, asked);
  }

  private static List<Case> cases() throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.list(FOLDER)) {
      files = all.sorted().toList();
    }
    List<Case> cases = new ArrayList<>();
    Set<Path> netlists = new HashSet<>();
    for (Path file : files) {
      if (file.toString().endsWith(".cir")) {
        cases.add(read(file));
      } else {
        netlists.add(file);
      }
    }
    cases.forEach(c -> netlists.remove(c.netlist));
    assertEquals(Set.of(), netlists, "netlists without a deck");
    return cases;
  }

  private static Study study(Path netlist) throws IOException {
    Reading reading = NetlistReader.read(netlist.toString(), Files.readAllBytes(netlist));
    if (reading instanceof Reading.Read read) {
      return Study.of(Circuit.of(read.netlist()), Tables.load());
    }
    return fail(netlist + " cannot be read: " + reading);
  }

  private static State stateOf(Case c, Study study) {
    List<State> matching =
        study.states().stream()
            .filter(
                s ->
                    s.positions().entrySet().stream()
                        .allMatch(p -> p.getValue() == c.closed.contains(p.getKey())))
            .toList();
    assertEquals(1, matching.size(), () -> c.deck.name() + " in " + study.columns());
    return matching.get(0);
  }

  private static double ours(Asked asked, Study study, State state, boolean lowest) {
    return switch (asked.kind) {
      case "coil" -> {
        CoilReading coil = study.coil(asked.part, state);
        yield lowest ? coil.lowest() : Math.abs(coil.volts());
      }
      case "load" -> study.load(asked.part, state).amps().getOrDefault(asked.pin, 0.0);
      case "contact" -> {
        Branch.Contact contact =
            study.circuit().branches(Branch.Contact.class).stream()
                .filter(b -> b.id().equals(asked.part + "." + asked.pin))
                .findFirst()
                .orElseGet(() -> fail("no contact " + asked));
        yield study.contact(contact, state).amps();
      }
      default -> fail(asked.kind);
    };
  }

  @Test
  void what_coils_loads_and_contacts_get_agrees_with_hand_written_decks() throws IOException {
    List<Case> cases = cases();
    Map<String, Map<String, Double>> answers =
        Simulator.recordedIn("study").answers(cases.stream().map(Case::deck).toList());
    Map<String, Double> differences = new LinkedHashMap<>();
    for (Case c : cases) {
      Study study = study(c.netlist);
      State state = stateOf(c, study);
      for (Asked asked : c.asked) {
        double theirs =
            Math.abs(
                answers
                    .getOrDefault(c.deck.name(), Map.of())
                    .getOrDefault(asked.expression, Double.NaN));
        double ours = ours(asked, study, state, c.lowest);
        if (!(Math.abs(ours - theirs) <= TOLERANCE * theirs)) {
          differences.put(c.deck.name() + " " + asked + " theirs " + theirs, ours);
        }
      }
    }
    assertEquals(Map.of(), differences);
    long coils =
        cases.stream().flatMap(c -> c.asked.stream()).filter(a -> a.kind.equals("coil")).count();
    assertTrue(coils >= 10, () -> coils + " coil voltages");
  }
}
