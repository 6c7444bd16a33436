package org.coilwright.draft;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.PlainYaml;

/**
 * A way of the trade to let a controller's contact switch a load.
 *
 * @param name a few words
 * @param says what it is, in a sentence
 * @param when where it suits
 * @param weakness what speaks against it
 * @param needs what the brief must have
 * @param parts designation to kind of part
 * @param load the way of the load's current
 * @param control the ways of the mains control circuit
 * @param elv the ways of the direct control circuit
 * @param supply the part that feeds the direct circuit; empty: the controller
 * @param inCoil true if the thermostat stands in the coil's way, false in the load's
 * @param second true if a second contactor, in whose coil's way the cut-out stands, opens the load
 */
record Arrangement(
    String name,
    String says,
    String when,
    String weakness,
    List<String> needs,
    Map<String, String> parts,
    List<String> load,
    List<String> control,
    List<String> elv,
    Optional<String> supply,
    boolean inCoil,
    boolean second) {

  private static final String FILE = "/arrangements/all.yaml";

  /** Every arrangement in every form, as they stand in the file. */
  static List<Arrangement> all() {
    PlainYaml file = resource(FILE);
    List<Arrangement> all = new ArrayList<>();
    for (String name : file.keys()) {
      PlainYaml one = file.group(name).orElseThrow();
      for (boolean second : new boolean[] {false, true}) {
        for (String place : one.words("thermostat")) {
          all.add(of(name, one, place.equals("coil"), second));
        }
      }
    }
    return List.copyOf(all);
  }

  private static Arrangement of(String name, PlainYaml one, boolean inCoil, boolean second) {
    Map<String, String> parts = new LinkedHashMap<>();
    PlainYaml written = one.group("parts").orElseThrow();
    written.keys().forEach(k -> parts.put(k, written.must(k)));
    parts.put("B1", "thermostat");
    parts.put("F3", second ? "cut-out-in-coil" : "cut-out");
    List<String> control = new ArrayList<>();
    one.words("control").forEach(way -> control.add(placed(way, inCoil)));
    if (second) {
      parts.put("Q2", "contactor-mains-coil");
      control.add("L F3.1/2 Q2.A1/A2 N");
    }
    String load =
        placed(one.must("load"), !inCoil)
            .replace("F1 ", second ? "F1 Q2 " : "F1 ")
            .replace("{cut-out} ", second ? "" : "F3 ");
    return new Arrangement(
        name,
        one.must("says"),
        one.must("when"),
        one.must("weakness"),
        one.words("needs"),
        parts,
        List.of(load.split(" ")),
        control,
        one.words("elv").stream().map(way -> placed(way, inCoil)).toList(),
        one.word("supply"),
        inCoil,
        second);
  }

  private static String placed(String way, boolean here) {
    return way.replace("{thermostat} ", here ? "B1.1/2 " : "");
  }

  /** {@code relay and contactor, thermostat in the coil's way}. */
  String title() {
    return name
        + (inCoil ? ", thermostat in the coil's way" : ", thermostat in the load's way")
        + (second ? ", cut-out on a second contactor" : "");
  }

  /** True if it has a control circuit on mains voltage. */
  boolean hasControl() {
    return !control.isEmpty();
  }

  /** True if one pole of a relay is all that opens the load. */
  boolean isOnePole() {
    return load.stream().anyMatch(t -> t.startsWith("K1."));
  }

  /** True if its contactor's coil is on direct voltage. */
  boolean isDirect() {
    return parts.containsValue("contactor-direct-coil");
  }

  static PlainYaml resource(String name) {
    try (InputStream in = Arrangement.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the build left out " + name);
      }
      return PlainYaml.of(name, in.readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
