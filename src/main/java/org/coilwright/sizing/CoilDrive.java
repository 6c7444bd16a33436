package org.coilwright.sizing;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Rating;
import org.coilwright.table.Cited;

/** Whether the contacts in a coil's way can drive it: the weakest of them decides. */
final class CoilDrive extends Working {
  private final double volts;
  private final double holds;
  private final double first;
  private final boolean directCoil;

  /**
   * @param volts of the coil, alternating
   * @param holds A while it holds
   * @param first A while it pulls in
   */
  CoilDrive(Working begun, double volts, double holds, double first) {
    super(begun);
    this.volts = volts;
    this.holds = holds;
    this.first = first;
    this.directCoil = false;
  }

  /**
   * On direct voltage.
   *
   * @param volts of the coil
   * @param amps that it draws
   */
  CoilDrive(Working begun, double volts, double amps) {
    super(begun);
    this.volts = volts;
    this.holds = amps;
    this.first = amps;
    this.directCoil = true;
  }

  private enum Verdict {
    NOT_FOR_IT,
    TOO_WEAK,
    OPEN,
    DRIVES
  }

  /** What one contact does; {@code most} is what it makes, A. */
  private record Judged(
      Question.Output output, Verdict verdict, double may, double at, double most, String words) {}

  /** The words for all of them; the weakest first. */
  String through(List<Question.Output> outputs) {
    List<Judged> all =
        outputs.stream()
            .map(this::judge)
            .sorted(Comparator.comparing(Judged::verdict).thenComparingDouble(Judged::most))
            .toList();
    Judged weakest = all.get(0);
    String words =
        weakest.verdict() == Verdict.DRIVES || weakest.verdict() == Verdict.OPEN
            ? weakest.words()
            : interpose(weakest.words(), weakest.may(), weakest.at());
    if (all.size() == 1) {
      return words;
    }
    return "%s; the weakest of the %s contacts in its way: %s"
        .formatted(
            words,
            all.size(),
            all.stream().skip(1).map(Judged::words).collect(Collectors.joining("; ")));
  }

  private Judged judge(Question.Output output) {
    if (output.rating().isEmpty()) {
      return new Judged(
          output,
          Verdict.OPEN,
          0,
          0,
          0,
          "whether %s can drive it is open: no rating of it is written".formatted(output.name()));
    }
    Rating rating = output.rating().get();
    double may = rating.amount().nominal();
    double at = rating.at().map(Quantity::nominal).orElse(0.0);
    boolean direct =
        output.category().startsWith("DC")
            || rating.at().filter(a -> a.kind() == CurrentKind.DC).isPresent();
    String said =
        "%s, %s%s at %s,"
            .formatted(
                output.name(),
                output.category().isEmpty() ? "" : output.category() + " ",
                amps(may),
                Printed.volts(at));
    if (direct != directCoil || at < volts) {
      String words =
          said + " is not for %s %s".formatted(Printed.volts(volts), directCoil ? "DC" : "AC");
      return new Judged(output, Verdict.NOT_FOR_IT, may, at, 0, words);
    }
    Optional<Cited<Double>> makes =
        tables.lookup("control-contact-categories", Map.of("category", output.category()), "make");
    makes.ifPresent(cited::add);
    double most = may * makes.map(Cited::value).orElse(1.0);
    if (may >= holds && most >= first) {
      String words =
          "%s can drive it: it makes %s".formatted(said, amps(most))
              + (makes.isPresent()
                  ? ""
                  : output.category().isEmpty()
                      ? "; no category is given, so that is taken as all it makes"
                      : "; %s says nothing of coils, so that is taken as all it makes"
                          .formatted(output.category()));
      return new Judged(output, Verdict.DRIVES, may, at, most, words);
    }
    String words =
        "%s is too weak: it makes %s%s"
            .formatted(
                said, amps(most), output.category().isEmpty() ? ", no category being given" : "");
    return new Judged(output, Verdict.TOO_WEAK, may, at, most, words);
  }

  private String interpose(String why, double may, double at) {
    Cited<Double> watts = tables.figure("sizing.interposing-coil");
    String wanted = directCoil ? "DC-13" : "AC-15";
    Cited<Double> makes =
        tables
            .lookup("control-contact-categories", Map.of("category", wanted), "make")
            .orElseThrow();
    cited.add(watts);
    cited.add(makes);
    String contact =
        "its contact %s of %s or more (%s ÷ %s)"
            .formatted(
                wanted,
                Printed.atLeast(Math.max(holds, first / makes.value()), Dimension.CURRENT),
                amps(first),
                plain(makes.value()));
    if (at == 0) {
      return "%s: put an interposing relay between, %s".formatted(why, contact);
    }
    double takes = watts.value() / at;
    boolean low = at <= tables.figure("separation.elv-ac").value();
    return "%s: put an interposing relay between. Its coil for %s takes up to about %s, and the output carries %s%s; %s%s"
        .formatted(
            why,
            Printed.volts(at),
            Printed.of(takes, Dimension.CURRENT),
            Printed.of(may, Dimension.CURRENT),
            may >= takes ? "" : ", so look for a weaker coil",
            contact,
            low ? "; reinforced insulation between the two" : "");
  }
}
