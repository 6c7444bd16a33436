package org.coilwright.netlist;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.coilwright.quantity.Words;

/** Checks that every name a netlist refers to exists. */
final class References {
  private static final int MOST_LINES = 6;

  /** More names than this are never listed. */
  private static final int MOST_NAMES = 200;

  /** More wires than this between the same two pins are not judged one by one. */
  static final int MOST_PARALLEL = 64;

  private final Problems problems;
  private final Set<String> designations;
  private final Map<String, Part> parts;
  private final Set<String> runs;
  private final Map<Unknown, List<Mark>> unknown = new LinkedHashMap<>();
  private final Map<Set<Terminal>, Integer> parallel = new HashMap<>();
  private int unlisted;

  /**
   * For one netlist.
   *
   * @param designations of every part written, also of those that could not be read
   * @param parts those that could be read
   * @param runs designations of every run written
   */
  References(
      Problems problems, Set<String> designations, Map<String, Part> parts, Set<String> runs) {
    this.problems = problems;
    this.designations = designations;
    this.parts = parts;
    this.runs = runs;
  }

  void wire(Wire wire) {
    terminal(wire.from());
    terminal(wire.to());
    if (wire.from().value().equals(wire.to().value())) {
      problems.add(
          wire.to().mark(),
          "the wire ends where it begins, at " + wire.to().value(),
          "write the pin at its other end");
    }
    Set<Terminal> ends = new HashSet<>(List.of(wire.from().value(), wire.to().value()));
    if (parallel.merge(ends, 1, Integer::sum) == MOST_PARALLEL + 1) {
      problems.add(
          wire.mark(),
          "more than %s wires join %s and %s"
              .formatted(MOST_PARALLEL, wire.from().value(), wire.to().value()),
          "write what lies in parallel as one wire of the size of all together");
    }
    wire.run().ifPresent(this::run);
  }

  void run(Run run) {
    for (Written<String> other : run.sharesWith()) {
      run(other);
      if (other.value().equals(run.name())) {
        problems.add(other.mark(), run.name() + " shares with itself", "name the other runs");
      }
    }
  }

  /** A load that an intent speaks of. */
  void load(Written<String> name) {
    Part part = parts.get(name.value());
    if (part == null) {
      part(name);
    } else if (!(part instanceof Part.Heater
        || part instanceof Part.OtherLoad
        || part instanceof Part.Lamp)) {
      problems.add(
          name.mark(),
          name.value() + " is a " + part.head().is() + ", not a load",
          "say when a heater, a motor, a lamp or another load shall be on");
    }
  }

  /** A part behind which the source of an island feeds. */
  void fed(Written<String> name) {
    Part part = parts.get(name.value());
    if (part == null) {
      part(name);
    } else if (part instanceof Part.Source) {
      problems.add(
          name.mark(),
          name.value() + " is a source, not what it feeds",
          "name the breaker or the terminals where its circuits begin");
    }
  }

  /** Every contact of an expression; a relay that is meant to hold itself in is one as well. */
  void contacts(Intent intent) {
    if (intent instanceof Intent.Name name) {
      if (!(parts.get(name.contact().value()) instanceof Part.Relay)) {
        contact(name.contact());
      }
    } else if (intent instanceof Intent.Not not) {
      contacts(not.of());
    } else if (intent instanceof Intent.And and) {
      contacts(and.left());
      contacts(and.right());
    } else if (intent instanceof Intent.Or or) {
      contacts(or.left());
      contacts(or.right());
    }
  }

  /** A controlled contact: {@code U1.heat}, {@code S1}. */
  void contact(Written<String> name) {
    int dot = name.value().indexOf('.');
    String designation = dot < 0 ? name.value() : name.value().substring(0, dot);
    Part part = parts.get(designation);
    if (part == null) {
      part(new Written<>(designation, designation, name.mark()));
    } else if (part instanceof Part.Controller controller) {
      output(name, dot < 0 ? "" : name.value().substring(dot + 1), controller);
    } else if (dot >= 0) {
      problems.add(
          name.mark(), designation + " is no controller with outputs", "write " + designation);
    } else if (!(part instanceof Part.Switch
        || part instanceof Part.Thermal
        || part instanceof Part.Protective
        || part instanceof Part.Fuse)) {
      problems.add(
          name.mark(),
          designation + " is a " + part.head().is() + ", not a contact that someone controls",
          "name an output such as U1.heat, a switch or a thermostat");
    }
  }

  private void output(Written<String> name, String output, Part.Controller controller) {
    if (controller.outputs().containsKey(output)) {
      return;
    }
    String designation = controller.name();
    problems.add(
        name.mark(),
        output.isEmpty()
            ? designation + " is a controller; which output is not said"
            : designation + " has no output " + Problems.shown(output),
        meant(output, controller.outputs().keySet(), designation + "."));
  }

  private void terminal(Written<Terminal> written) {
    Terminal terminal = written.value();
    Mark mark = written.mark();
    Part part = parts.get(terminal.part());
    if (part == null) {
      part(new Written<>(terminal.part(), terminal.part(), mark));
    } else if (!part.pins().contains(terminal.pin())) {
      problems.add(
          mark,
          terminal.part() + " (" + part.head().is() + ") has no pin " + terminal.pin(),
          meant(terminal.pin(), part.pins(), terminal.part() + "."));
    }
  }

  /** Says of every name that nothing bears, once, where it stands. */
  void report() {
    unknown.forEach(
        (name, places) -> {
          List<String> lines = places.stream().skip(1).map(m -> "" + m.line()).distinct().toList();
          String others =
              lines.size() > MOST_LINES
                  ? " (and in " + lines.size() + " other lines)"
                  : lines.isEmpty()
                      ? ""
                      : " (and in line" + (lines.size() > 1 ? "s " : " ") + Words.all(lines) + ")";
          problems.add(
              places.get(0),
              "no " + name.noun() + " is called " + Problems.shown(name.word()) + others,
              meant(name.word(), name.noun().equals("run") ? runs : designations, ""));
        });
    problems.addUnlisted(unlisted);
  }

  private void part(Written<String> name) {
    if (!designations.contains(name.value())) {
      unknown("part", name);
    }
  }

  private void run(Written<String> name) {
    if (!runs.contains(name.value())) {
      unknown("run", name);
    }
  }

  private void unknown(String noun, Written<String> name) {
    Unknown key = new Unknown(noun, name.value());
    if (unknown.size() < MOST_NAMES || unknown.containsKey(key)) {
      unknown.computeIfAbsent(key, n -> new ArrayList<>()).add(name.mark());
    } else {
      unlisted++;
    }
  }

  private String meant(String word, Collection<String> known, String prefix) {
    if (problems.isFull()) {
      return "";
    }
    List<String> few = known.stream().limit(12).map(name -> prefix + name).toList();
    String more = known.size() > few.size() ? " and " + (known.size() - few.size()) + " more" : "";
    return NearNames.advice(word, known, prefix)
        .orElse(
            few.isEmpty()
                ? "add it first"
                : few.size() == 1
                    ? "write " + few.get(0)
                    : "write one of these: "
                        + (more.isEmpty() ? Words.either(few) : String.join(", ", few) + more));
  }

  /** A name that nothing bears. */
  private record Unknown(String noun, String word) {}
}
