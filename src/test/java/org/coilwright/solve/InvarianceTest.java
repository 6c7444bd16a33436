package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.coilwright.circuit.Bench;
import org.coilwright.circuit.Branch;
import org.junit.jupiter.api.Test;

/** What the parts are called and in which order they are written changes nothing. */
class InvarianceTest {
  private static final Pattern NAME = Pattern.compile("\\b[A-Z]\\d+\\b(?=[.:])");
  private static final String ONE = "{phases: 1, voltage: 230 V ± 10 %, frequency: 50 Hz}";

  @Test
  void other_names_and_another_order_change_nothing() {
    Random random = new Random(99);
    for (int i = 0; i < 120; i++) {
      String mains = i % 3 == 0 ? Studies.THREE : ONE;
      String body =
          switch (i % 3) {
            case 0 -> GeneratedCircuit.threePhase(random);
            case 1 -> GeneratedCircuit.alternating(random);
            default -> GeneratedCircuit.direct(random);
          };
      Map<String, String> names = newNames(body, random);
      String other = rename(shuffle(body, random), names);
      Map<String, String> one = told(Study.of(Bench.circuit(mains, body), Studies.TABLES), names);
      Map<String, String> two =
          told(Study.of(Bench.circuit(mains, other), Studies.TABLES), Map.of());
      assertEquals(String.join("\n", one.keySet()), String.join("\n", two.keySet()), "round " + i);
    }
  }

  private static Map<String, String> newNames(String body, Random random) {
    TreeSet<String> old = new TreeSet<>();
    Matcher matcher = NAME.matcher(body);
    while (matcher.find()) {
      old.add(matcher.group());
    }
    List<Integer> numbers = new ArrayList<>();
    for (int i = 0; i < old.size(); i++) {
      numbers.add(100 + i);
    }
    Collections.shuffle(numbers, random);
    Map<String, String> names = new HashMap<>();
    int next = 0;
    for (String name : old) {
      names.put(name, (char) ('A' + random.nextInt(26)) + "" + numbers.get(next++));
    }
    return names;
  }

  private static String rename(String body, Map<String, String> names) {
    return NAME.matcher(body).replaceAll(m -> names.getOrDefault(m.group(), m.group()));
  }

  /** Lines of parts among themselves, and lines of wires among themselves. */
  private static String shuffle(String body, Random random) {
    String[] halves = body.split("wires:\n", 2);
    return "parts:\n"
        + shuffled(halves[0].substring("parts:\n".length()), random)
        + "wires:\n"
        + shuffled(halves[1], random);
  }

  private static String shuffled(String lines, Random random) {
    List<String> list = new ArrayList<>(Arrays.asList(lines.split("\n")));
    Collections.shuffle(list, random);
    return String.join("\n", list) + "\n";
  }

  /** Every state by its positions, with what coils, loads, contacts and supplies do in it. */
  private static Map<String, String> told(Study study, Map<String, String> names) {
    Map<String, String> told = new TreeMap<>();
    for (State state : study.states()) {
      Map<String, String> row = new TreeMap<>();
      state
          .pulledIn()
          .forEach(
              (relay, in) -> {
                CoilReading coil = study.coil(relay, state);
                row.put(
                    name(relay, names),
                    in
                        + digits(Math.abs(coil.volts()))
                        + digits(coil.lowest())
                        + digits(coil.highest())
                        + digits(coil.amps())
                        + digits(coil.pickUpAmps()));
              });
      study.circuit().branches(Branch.LoadElement.class).stream()
          .map(Branch::part)
          .distinct()
          .forEach(
              load -> {
                LoadReading reading = study.load(load, state);
                row.put(
                    name(load, names), digits(reading.watts()) + reading.on() + reading.lines());
              });
      study
          .circuit()
          .branches(Branch.Contact.class)
          .forEach(
              contact -> {
                ContactReading reading = study.contact(contact, state);
                row.put(
                    name(contact.id(), names),
                    reading.closed() + digits(reading.amps()) + digits(reading.makeAmps()));
              });
      study
          .circuit()
          .branches(Branch.Source.class)
          .forEach(
              source ->
                  row.put(
                      name(source.id(), names), digits(study.supply(source.id(), state).amps())));
      Map<String, Boolean> positions = new LinkedHashMap<>();
      state.positions().forEach((p, is) -> positions.put(name(p, names), is));
      told.put(new TreeMap<>(positions) + " " + row, "");
    }
    return told;
  }

  private static String name(String id, Map<String, String> names) {
    int dot = id.indexOf('.');
    String part = dot < 0 ? id : id.substring(0, dot);
    return names.getOrDefault(part, part) + (dot < 0 ? "" : id.substring(dot));
  }

  /** Six digits, and nothing where only rounding is left. */
  private static String digits(double value) {
    return Math.abs(value) < 1e-7 ? " 0" : String.format(java.util.Locale.ROOT, " %.5e", value);
  }
}
