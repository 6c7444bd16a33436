package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Mistake;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.solve.Probing;
import org.coilwright.solve.Span;

/** Finds the single wiring mistakes that would give a reading, among all there are. */
final class WiringDiagnosis implements Diagnosis {
  private final Circuit circuit;
  private final DeadReadings readings;
  private final WiringMistakes mistakes;
  private final MistakeWords words;
  private final Texts texts;
  private final Map<String, Row> rows;

  WiringDiagnosis(DeadTests tests, Plan plan) {
    this.circuit = tests.anatomy().circuit();
    this.readings = tests.readings();
    this.mistakes = tests.mistakes();
    this.texts = tests.texts();
    this.words = new MistakeWords(circuit, texts);
    this.rows =
        plan.rows().stream()
            .filter(placed -> placed.row().probing().isPresent())
            .collect(Collectors.toMap(placed -> placed.printed().name(), Plan.Placed::row));
  }

  /** A mistake and the readings it can give. */
  private record Fitting(Mistake mistake, Span shown) {}

  @Override
  public List<String> of(String rowName, double value, Set<String> met) {
    Optional<Row> row = row(rowName);
    Optional<Probing> probing = row.flatMap(Row::probing);
    if (probing.isEmpty() || !(row.get().expected() instanceof Band band)) {
      return List.of();
    }
    List<Fitting> fitting = new ArrayList<>();
    for (Mistake mistake : mistakes.all()) {
      if (readings.differs(probing.get(), mistake)) {
        Span shown = readings.shown(probing.get(), mistake, band);
        boolean open = Double.isInfinite(value) && Double.isInfinite(shown.high());
        if (open || (value >= shown.low() && value <= shown.high())) {
          fitting.add(new Fitting(mistake, shown));
        }
      }
    }
    List<Row> asExpected = met.stream().sorted().flatMap(name -> row(name).stream()).toList();
    fitting.removeIf(f -> mistakes.first(asExpected, f.mistake()).isPresent());
    fitting.sort(likeliestFirst(probing.get()));
    return sentences(fitting.stream().map(Fitting::mistake).toList());
  }

  private Optional<Row> row(String name) {
    return Optional.ofNullable(rows.get(name));
  }

  /**
   * What is about the very pins that are measured, then what gives this reading and hardly another,
   * then a wire that is missing or loose, then pins that lie side by side.
   */
  private Comparator<Fitting> likeliestFirst(Probing probing) {
    Set<Terminal> leads = new LinkedHashSet<>(probing.plus());
    leads.addAll(probing.minus());
    return Comparator.<Fitting>comparingLong(f -> -touched(f.mistake(), leads))
        .thenComparingInt(f -> vagueness(f.shown()))
        .thenComparingInt(f -> f.mistake().kind() == Mistake.Kind.LEFT_OUT ? 0 : 1)
        .thenComparingInt(f -> distance(f.mistake()));
  }

  private long touched(Mistake mistake, Set<Terminal> leads) {
    Set<Terminal> ends = new LinkedHashSet<>(mistake.pins());
    for (int i : mistake.wires()) {
      ends.add(circuit.netlist().wires().get(i).from().value());
      ends.add(circuit.netlist().wires().get(i).to().value());
    }
    return leads.stream().filter(ends::contains).count();
  }

  /** Decades that the reading may lie in. */
  private static int vagueness(Span shown) {
    if (shown.isOpen()) {
      return 0;
    }
    return Double.isInfinite(shown.high()) || shown.low() <= 0
        ? Integer.MAX_VALUE
        : (int) Math.ceil(Math.log10(shown.high() / shown.low()));
  }

  private int distance(Mistake mistake) {
    if (mistake.pins().size() < 2) {
      return 0;
    }
    Part part = circuit.netlist().parts().get(mistake.pins().get(0).part());
    return part == null
        ? 0
        : Math.abs(
            part.pins().indexOf(mistake.pins().get(0).pin())
                - part.pins().indexOf(mistake.pins().get(1).pin()));
  }

  /** Ends of one wire on several wrong pins of a part make one sentence. */
  private List<String> sentences(List<Mistake> likeliest) {
    Map<String, String> sentences = new LinkedHashMap<>();
    Map<String, List<Mistake>> alike =
        likeliest.stream()
            .collect(
                Collectors.groupingBy(
                    WiringDiagnosis::group, LinkedHashMap::new, Collectors.toList()));
    alike.forEach((group, same) -> sentences.put(group, sentence(same)));
    return List.copyOf(sentences.values());
  }

  private static String group(Mistake mistake) {
    return switch (mistake.kind()) {
      case MOVED -> "moved " + mistake.wires() + mistake.pins().get(0);
      case SWAPPED ->
          mistake.pins().isEmpty()
              ? "cores " + mistake.wires()
              : "swapped " + mistake.wires().get(0) + mistake.pins().get(0);
      case LEFT_OUT, TURNED, SUPPLY_REVERSED -> mistake.kind() + " " + mistake;
    };
  }

  private String sentence(List<Mistake> same) {
    Mistake first = same.get(0);
    String text =
        switch (first.kind()) {
          case LEFT_OUT -> texts.of("mistake.missing", words.wire(first.wires().get(0)));
          case MOVED ->
              texts.of(
                  "mistake.moved",
                  words.wire(first.wires().get(0)),
                  listed(same, m -> m.pins().get(1).toString()),
                  first.pins().get(0));
          case SWAPPED, TURNED, SUPPLY_REVERSED ->
              same.size() == 1
                  ? words.of(first)
                  : texts.of(
                      "mistake.swapped-with",
                      words.wire(first.wires().get(0)),
                      first.pins().get(0).part(),
                      listed(same, m -> words.wire(m.wires().get(1))));
        };
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1) + ".";
  }

  private String listed(List<Mistake> same, Function<Mistake, String> what) {
    List<String> all = same.stream().map(what).distinct().toList();
    return all.size() == 1
        ? all.get(0)
        : texts.of(
            "list.or", String.join(", ", all.subList(0, all.size() - 1)), all.get(all.size() - 1));
  }
}
