package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Change;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rewiring;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Neutral and protective conductor are joined behind the origin. */
final class PolesNeutralEarthed implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("poles.neutral-earthed", Weight.STOP, "neutral and protective conductor joined")
          .what(
              "Looks for what joins the neutral to the protective conductor with every contact"
                  + " closed: wires and clamps, parts between the two, and parts that take a line"
                  + " and return by the protective conductor. Behind a residual-current device it"
                  + " is a STOP, ahead of one lighter; at the terminals of the mains it is in order"
                  + " in a TN-C-S system, and everywhere in TN-C.")
          .why(
              "The load's current runs in the protective conductor and in metal that people touch;"
                  + " a residual-current device opens on it, or is held from seeing a fault.")
          .remedy(
              "Join neutral and protective conductor at the origin only, and return every load by"
                  + " the neutral.")
          .blind(
              "Joints outside this netlist; arresters and filters between them, which are meant to"
                  + " be there; a strip of clamps fed straight from the mains counts as the origin"
                  + " however far away it is.")
          .sources("iec-60364-5-54", "iec-60364-4-41", "circuit-theory")
          .consequenceOf("wiring.short-circuit")
          .meansWiredOtherwise();

  private final Basis basis;

  PolesNeutralEarthed(Tables tables) {
    basis =
        new Basis(
            List.of(
                tables.source("iec-60364-5-54").cite() + ", 543.4",
                tables.source("iec-60364-4-41").cite() + ", 411.4.5"),
            Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Circuit circuit = study.circuit();
    NeutralEarth found = NeutralEarth.of(study);
    Feeding whole = Feeding.whole(study);
    List<Outcome> outcomes = new ArrayList<>();
    if (found.earth().isEmpty() || found.neutral().isEmpty()) {
      return outcomes;
    }
    Map<String, Case> cases = new LinkedHashMap<>();
    for (Branch joint : found.joints()) {
      Case at = joint(study, found, joint);
      cases.putIfAbsent(at.subject().at().get(0), at);
    }
    for (Branch leak : found.through(circuit)) {
      cases.putIfAbsent(leak.part(), joint(study, found, leak));
    }
    for (Branch leak : found.returning(circuit, whole)) {
      cases.putIfAbsent(leak.part(), returning(study, whole, leak));
    }
    cases.values().forEach(at -> judge(circuit, at).ifPresent(outcomes::add));
    if (outcomes.isEmpty()) {
      outcomes.add(
          Subject.ofCircuit(FACTS, circuit.netlist())
              .satisfied(
                  cases.isEmpty()
                      ? "Neutral and protective conductor are joined nowhere in this netlist."
                      : "Neutral and protective conductor are joined where the earthing system has"
                          + " them joined, and nowhere else.",
                  basis));
    }
    return outcomes;
  }

  /**
   * One place where the two meet.
   *
   * @param origin true at the terminals of the mains
   * @param behind the residual-current device that its neutral or line comes through
   * @param changes the remedy, where a wire alone joins them
   */
  private record Case(
      Subject subject,
      String headline,
      String where,
      String remedy,
      String label,
      boolean origin,
      Optional<Part.Protective> behind,
      List<Change> changes) {}

  private static Case joint(Study study, NeutralEarth found, Branch joint) {
    Circuit circuit = study.circuit();
    Node end = found.neutralEnd(joint);
    Node earth = joint.other(end);
    Optional<Part.Protective> behind =
        ResidualDevices.of(circuit).stream()
            .filter(d -> found.isNeutralThrough(circuit, end, poles(d)))
            .findFirst();
    boolean wire = joint instanceof Conductor;
    String what = wire ? "A wire" : joint.part();
    List<String> at = new ArrayList<>(List.of(wire ? end.name() : joint.part()));
    behind.ifPresent(d -> at.add(d.name()));
    return new Case(
        new Subject(FACTS, joint.mark(), at),
        "neutral and protective conductor are joined at %s".formatted(end.name()),
        "%s joins %s, which is neutral, to %s, which is earth%s"
            .formatted(what, end, earth, wire ? "" : wayOfEarth(circuit, earth)),
        wire
            ? "Take out what joins %s to %s.".formatted(end, earth)
            : "Take %s out from between neutral and protective conductor.".formatted(what),
        "joined here",
        wire && isOrigin(circuit, end) && isOrigin(circuit, earth),
        behind,
        joint instanceof Conductor one && !one.bridge()
            ? Rewiring.without(circuit.netlist(), one.wire())
            : List.of());
  }

  /** By which wires it is earth, where it is no earth pin itself. */
  private static String wayOfEarth(Circuit circuit, Node earth) {
    return circuit.nodes().stream()
        .filter(n -> isOrigin(circuit, n))
        .filter(n -> n.terminals().stream().anyMatch(t -> t.pin().equals(Earthing.PE)))
        .flatMap(n -> circuit.path(n, earth, Feeding::isWay).stream())
        .findFirst()
        .map(way -> " (%s)".formatted(way.inWords()))
        .orElse("");
  }

  private static Case returning(Study study, Feeding whole, Branch leak) {
    Circuit circuit = study.circuit();
    boolean fromLine = MainsConsumer.isLine(whole, leak.from());
    Node line = fromLine ? leak.from() : leak.to();
    Node back = fromLine ? leak.to() : leak.from();
    Optional<Part.Protective> behind =
        ResidualDevices.of(circuit).stream()
            .filter(d -> !MainsConsumer.isLine(ResidualDevices.opened(study, d), line))
            .findFirst();
    List<String> at = new ArrayList<>(List.of(leak.part()));
    behind.ifPresent(d -> at.add(d.name()));
    return new Case(
        new Subject(FACTS, leak.mark(), at),
        "%s returns by the protective conductor".formatted(leak.part()),
        "%s takes a line at %s, and %s lies on the protective conductor"
            .formatted(leak.part(), line, back),
        "Return %s by the neutral%s."
            .formatted(leak.part(), behind.map(d -> ", through " + d.name()).orElse("")),
        "returns by the earth",
        false,
        behind,
        List.of());
  }

  private static Predicate<Branch> poles(Part.Protective device) {
    return b -> b instanceof Contact c && c.part().equals(device.name());
  }

  /** True for a terminal of the mains, or of clamps. */
  private static boolean isOrigin(Circuit circuit, Node node) {
    return node.terminals().stream()
        .map(t -> circuit.netlist().parts().get(t.part()))
        .allMatch(p -> p instanceof Part.Mains || p instanceof Part.TerminalStrip);
  }

  private Optional<Outcome> judge(Circuit circuit, Case at) {
    Optional<Written<String>> earthing =
        circuit.netlist().site().mains().flatMap(Site.MainsSupply::earthing);
    String system = earthing.map(Written::value).orElse("");
    if (at.behind().isPresent()) {
      String device = at.behind().get().name();
      return Optional.of(
          at.subject()
              .violated(
                  at.headline(),
                  "%s: part of the current then goes past %s, which opens as soon as a load is on, or sees too little of a fault."
                      .formatted(at.where(), device),
                  at.label())
              .alsoAt(at.behind().get().head().mark(), "ahead of it")
              .change(at.changes())
              .todo(at.remedy(), basis));
    }
    if (system.equals("TN-C") || (system.equals("TN-C-S") && at.origin())) {
      return Optional.empty();
    }
    if (system.isEmpty()) {
      return Optional.of(
          at.subject()
              .undecided(
                  "site.mains.earthing",
                  "%s; whether that is where the system has them joined is open."
                      .formatted(at.where())));
    }
    Subject.Finding finding =
        at.subject()
            .violated(
                at.headline(),
                "%s: in a %s system the load's current then runs in the protective conductor and in metal that people touch."
                    .formatted(at.where(), system),
                at.label())
            .lighter(Weight.FIX);
    earthing.ifPresent(e -> finding.alsoAt(e.mark(), "keeps them apart"));
    return Optional.of(finding.change(at.changes()).todo(at.remedy(), basis));
  }
}
