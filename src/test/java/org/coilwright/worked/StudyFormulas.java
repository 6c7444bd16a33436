package org.coilwright.worked;

import static org.coilwright.worked.Formula.number;
import static org.coilwright.worked.Formula.numbers;
import static org.coilwright.worked.Formula.word;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.solve.LoadReading;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/** Examples that go the whole way: a netlist is read, made a circuit and studied. */
final class StudyFormulas {
  static final Path NETLISTS = Path.of("src/test/resources/worked-examples/circuits");
  private static final Pattern BLANK = Pattern.compile("@([a-z-]+)@");
  private final Map<String, Formula> byName = new TreeMap<>();
  private final Tables tables;

  private StudyFormulas(Tables tables) {
    this.tables = tables;
    byName.put("study.contact-amps", numbers(this::contactAmps));
    byName.put("study.coil-amps", number(in -> inState(in, (s, at) -> s.coil("K1", at).amps())));
    byName.put(
        "study.coil-ohms",
        number(
            in ->
                inState(
                    in, (s, at) -> Math.abs(s.coil("K1", at).volts()) / s.coil("K1", at).amps())));
    byName.put(
        "study.load-amps",
        number(
            in -> inState(in, (s, at) -> s.load("E1", at).amps().getOrDefault("1", Double.NaN))));
    byName.put(
        "study.load-milliamps",
        number(
            in ->
                inState(
                    in, (s, at) -> 1000 * s.load("E1", at).amps().getOrDefault("1", Double.NaN))));
    byName.put(
        "study.load-ohms",
        number(
            in ->
                inState(
                    in,
                    (s, at) -> {
                      double amps = s.load("E1", at).amps().getOrDefault("1", Double.NaN);
                      return s.load("E1", at).watts() / (amps * amps);
                    })));
    byName.put("study.loads-amps", numbers(in -> loads(in, StudyFormulas::amps)));
    byName.put("study.loads-volts", numbers(in -> loads(in, load -> load.watts() / amps(load))));
    byName.put(
        "study.coils-volts",
        numbers(
            in -> {
              Study study = study(in);
              State only = state(study, "none");
              return Stream.of(in.word("coils").split(", ", -1))
                  .map(name -> study.coil(name, only).volts())
                  .toList();
            }));
    byName.put(
        "study.loop-ohms",
        number(in -> in.number("volts") / loads(in, StudyFormulas::amps).get(0)));
    byName.put("study.load-watts", number(in -> inState(in, (s, at) -> s.load("E1", at).watts())));
    byName.put(
        "study.operates-at", number(in -> study(in).limits("K1").orElseThrow().operate().value()));
    byName.put(
        "study.pulls-in",
        word(in -> inState(in, (s, at) -> s.coil("K1", at).pulledIn() ? 1 : 0) > 0 ? "yes" : "no"));
    byName.put(
        "study.turn-off-peak",
        number(in -> study(in).turnOff("K1").orElseThrow().coilVolts().orElseThrow()));
    byName.put(
        "study.turn-off-ms", number(in -> 1000 * study(in).turnOff("K1").orElseThrow().seconds()));
    byName.put("study.power-share", number(this::powerShare));
  }

  static Map<String, Formula> all(Tables tables) {
    return new StudyFormulas(tables).byName;
  }

  /** What is asked of each of the loads named, with no switch closed. */
  private List<Double> loads(Inputs in, ToDoubleFunction<LoadReading> asked) {
    Study study = study(in);
    State only = state(study, "none");
    return Stream.of(in.word("loads").split(", ", -1))
        .map(name -> asked.applyAsDouble(study.load(name, only)))
        .toList();
  }

  private static double amps(LoadReading load) {
    return load.amps().values().stream().mapToDouble(Double::doubleValue).max().orElse(0);
  }

  private interface InState {
    double of(Study study, State at);
  }

  private double inState(Inputs in, InState asked) {
    Study study = study(in);
    return asked.of(study, state(study, in.word("closed")));
  }

  private List<Double> contactAmps(Inputs in) {
    Study study = study(in);
    State state = state(study, in.word("closed"));
    return List.of(in.word("contacts").split(", ", -1)).stream()
        .map(id -> study.contact(contact(study, id), state).amps())
        .toList();
  }

  private double powerShare(Inputs in) {
    Study study = study(in);
    double now = watts(study, state(study, in.word("closed")));
    return now / watts(study, state(study, in.word("whole")));
  }

  private static double watts(Study study, State state) {
    return study.circuit().branches(Branch.LoadElement.class).stream()
        .mapToDouble(b -> study.load(b.part(), state).watts())
        .sum();
  }

  private static Branch.Contact contact(Study study, String id) {
    return study.circuit().branches(Branch.Contact.class).stream()
        .filter(c -> c.id().equals(id))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no contact " + id));
  }

  /** The one state in which just these contacts are closed. */
  private static State state(Study study, String closed) {
    Set<String> names = new TreeSet<>(List.of(closed.split(", ", -1)));
    names.remove("none");
    List<State> matching =
        study.states().stream()
            .filter(
                s ->
                    s.positions().entrySet().stream()
                        .allMatch(p -> p.getValue() == names.contains(p.getKey())))
            .toList();
    if (matching.size() != 1) {
      throw new IllegalStateException(matching.size() + " states with " + names + " closed");
    }
    return matching.get(0);
  }

  private Study study(Inputs in) {
    Path file = NETLISTS.resolve(in.word("netlist"));
    try {
      StringBuilder text = new StringBuilder();
      Matcher blanks = BLANK.matcher(Files.readString(file));
      while (blanks.find()) {
        blanks.appendReplacement(text, Matcher.quoteReplacement(in.text(blanks.group(1))));
      }
      blanks.appendTail(text);
      Reading reading =
          NetlistReader.read(
              file.toString(), in.netlist(text.toString()).getBytes(StandardCharsets.UTF_8));
      if (reading instanceof Reading.Read read) {
        return Study.of(Circuit.of(read.netlist()), tables);
      }
      throw new IllegalStateException(reading.toString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
