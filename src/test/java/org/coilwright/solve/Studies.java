package org.coilwright.solve;

import java.util.List;
import java.util.Map;
import org.coilwright.circuit.Bench;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.table.Tables;

/** Studies of circuits on the bench, and the questions that tests ask of them. */
final class Studies {
  static final Tables TABLES = Tables.load();

  /** A 24 V supply that needs no mains. */
  static final String SUPPLY =
      "  G1: {is: dc-supply, output: {plus: P, minus: M, voltage: 24 V DC ± 5 %, isolation: SELV}}\n";

  static final String THREE = "{phases: 3, voltage: 400 V ± 10 %, frequency: 50 Hz}";

  private Studies() {}

  static Study study(String body) {
    return Study.of(Bench.circuit(body), TABLES);
  }

  static Study study(String mains, String body) {
    return Study.of(Bench.circuit(mains, body), TABLES);
  }

  /** The one state with these columns operated and all others not. */
  static State state(Study study, String... operated) {
    List<State> found = states(study, operated);
    if (found.size() != 1) {
      throw new AssertionError(found.size() + " states with " + List.of(operated));
    }
    return found.get(0);
  }

  static List<State> states(Study study, String... operated) {
    List<String> wanted = List.of(operated);
    return study.states().stream()
        .filter(
            s ->
                s.positions().entrySet().stream()
                    .allMatch(e -> e.getValue() == wanted.contains(e.getKey())))
        .toList();
  }

  static <T extends Trouble> List<T> troubles(Study study, Class<T> kind) {
    return study.troubles().stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  static Contact contact(Circuit circuit, String id) {
    return (Contact) circuit.branch(id).orElseThrow(() -> new AssertionError("no " + id));
  }

  static Map<String, Boolean> positions(Trouble trouble) {
    return Map.copyOf(trouble.positions());
  }
}
