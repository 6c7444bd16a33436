package org.coilwright.netlist;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Part.ContactForm;
import org.coilwright.netlist.Part.ContactSpec;
import org.coilwright.netlist.Part.DcOutput;
import org.coilwright.netlist.Part.Head;
import org.coilwright.netlist.Part.Isolation;
import org.coilwright.netlist.Part.MainsInput;
import org.coilwright.netlist.Value.Member;
import org.coilwright.netlist.Value.Section;
import org.coilwright.quantity.CurrentKind;

/** Controllers and supply units: devices with inputs and outputs of their own. */
final class DeviceBuilder {
  private final Problems problems;

  DeviceBuilder(Problems problems) {
    this.problems = problems;
  }

  Part controller(Head head, Section section) {
    PinUses pins = new PinUses(problems);
    Optional<MainsInput> mains = section.section("mains").map(m -> mainsInput(m, pins));
    Optional<DcOutput> supply = section.section("aux-supply").map(s -> output(s, pins));
    Map<String, ContactSpec> outputs = new LinkedHashMap<>();
    section
        .members("outputs")
        .forEach((name, member) -> outputs.put(name, contact(name, member, pins)));
    Map<String, Written<String>> reserved = new LinkedHashMap<>();
    section
        .members("reserved")
        .forEach(
            (pin, member) -> {
              pins.only("reserved", List.of(member.key()));
              reserved.put(pin, Value.word(member.value()));
            });
    return new Part.Controller(
        head,
        pins.pins(),
        supply,
        ordered(outputs),
        ordered(reserved),
        mains,
        RelayBuilder.poleInsulation(section));
  }

  Part dcSupply(Head head, Section section) {
    PinUses pins = new PinUses(problems);
    Optional<MainsInput> input = section.section("input").map(i -> mainsInput(i, pins));
    DcOutput output = output(section.mustSection("output"), pins);
    return new Part.DcSupply(head, pins.pins(), input, output);
  }

  /** A map that keeps its order and cannot be changed. */
  static <T> Map<String, T> ordered(Map<String, T> map) {
    return java.util.Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }

  private static ContactSpec contact(String name, Member member, PinUses uses) {
    Section section = (Section) member.value();
    List<Written<String>> pins = section.mustWords("pins");
    uses.contact(pins);
    return new ContactSpec(
        member.key().mark(),
        name,
        pins.get(0).value(),
        pins.get(1).value(),
        ContactForm.valueOf(section.mustText("form").value()),
        false,
        RelayBuilder.ratings(section),
        section.rating("least-load"),
        section.quantity("leakage"),
        Optional.empty());
  }

  private static MainsInput mainsInput(Section section, PinUses uses) {
    List<Written<String>> pins = section.mustWords("pins");
    uses.only("the mains input", pins);
    return new MainsInput(
        section.mark(), pins.stream().map(Written::value).toList(), section.quantity("voltage"));
  }

  private DcOutput output(Section section, PinUses uses) {
    Written<String> plus = section.mustText("plus");
    Written<String> minus = section.mustText("minus");
    uses.only("the supply", List.of(plus, minus));
    section
        .quantity("voltage")
        .filter(v -> v.value().kind() == CurrentKind.AC)
        .ifPresent(
            v ->
                problems.add(
                    v.mark(),
                    "this output gives direct voltage; " + v.text() + " is alternating",
                    "write DC, or take AC out"));
    return new DcOutput(
        section.mark(),
        plus,
        minus,
        section.quantity("voltage"),
        section.quantity("limit"),
        section
            .text("isolation")
            .map(
                w ->
                    new Written<>(
                        Isolation.valueOf(w.value().toUpperCase(Locale.ROOT)), w.text(), w.mark())),
        section.quantity("ripple"));
  }
}
