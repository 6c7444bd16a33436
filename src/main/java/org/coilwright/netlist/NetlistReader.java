package org.coilwright.netlist;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Netlist.Accepted;
import org.coilwright.netlist.Site.MainsSupply;
import org.coilwright.netlist.Tree.Entries;
import org.coilwright.netlist.Value.Incomplete;
import org.coilwright.netlist.Value.Section;

/** Reads a netlist: all of it, or all that is wrong with it. */
public final class NetlistReader {
  private final FileText text;
  private final Problems problems;

  private NetlistReader(FileText text, Problems problems) {
    this.text = text;
    this.problems = problems;
  }

  /**
   * Reads a netlist. Never throws because of what the bytes hold.
   *
   * @param file name as the user gave it; {@code -} for standard input
   * @param bytes the file; more than {@link LargestFile#BYTES} are refused
   * @param includes brings included files
   */
  public static Reading read(String file, byte[] bytes, Includes includes) {
    Problems problems = new Problems(file);
    try {
      FileText text = FileText.of(file, bytes);
      problems.knows(text);
      Optional<Netlist> netlist = new NetlistReader(text, problems).netlist(includes);
      if (problems.isEmpty() && netlist.isPresent()) {
        return new Reading.Read(netlist.get());
      }
    } catch (Refusal e) {
      problems.add(e);
    }
    return new Reading.Unusable(problems.all());
  }

  /** Reads a netlist that includes nothing. */
  public static Reading read(String file, byte[] bytes) {
    return read(file, bytes, Includes.none());
  }

  private Optional<Netlist> netlist(Includes includes) {
    Optional<Tree> tree = YamlTree.of(text, problems);
    if (tree.isEmpty()) {
      problems.add(
          Optional.empty(),
          "the file holds no netlist, not one key",
          "begin with the one that \"coilwright new\" prints");
      return Optional.empty();
    }
    boolean known =
        tree.get() instanceof Entries entries
            && entries.entries().stream()
                .anyMatch(entry -> Format.NETLIST.key(entry.key().text()).isPresent());
    if (!known) {
      problems.add(
          tree.get().mark(),
          "this is not a netlist: it begins with none of the keys of one",
          "begin with coilwright: 1, or with what \"coilwright new\" prints");
      return Optional.empty();
    }
    Entries root = (Entries) tree.get();
    if (isOfAnotherFormat(root)) {
      return Optional.empty();
    }
    Types types = new TypeGatherer(includes, problems).gather(text.file(), root);
    Mark start = new Mark(text.file(), 1, 1, 2);
    Section top = new ShapeReader(problems, types).section(root, Format.NETLIST, start, true);
    try {
      return Optional.of(built(root, top));
    } catch (Incomplete e) {
      if (problems.isEmpty()) {
        throw new IllegalStateException("incomplete, and no problem says so", e);
      }
      return Optional.empty();
    }
  }

  /** A later format may differ in everything, so one message is enough. */
  private boolean isOfAnotherFormat(Entries root) {
    Optional<Tree.Leaf> number = root.find("coilwright");
    boolean other =
        number.isPresent()
            && number.get().text().matches("[0-9]{1,9}")
            && !number.get().text().equals("" + Format.VERSION);
    if (other) {
      problems.add(
          number.get().mark(),
          "the netlist is in format "
              + number.get().text()
              + "; this program reads format "
              + Format.VERSION,
          "use the program it was written for, or write coilwright: " + Format.VERSION);
    }
    return other;
  }

  private Netlist built(Entries root, Section top) {
    SiteBuilder sites = new SiteBuilder(problems);
    Optional<MainsSupply> mains = top.section("site").flatMap(sites::mains);
    List<Wire> wires = wires(top);
    Map<String, Part> parts = parts(top, mains, mainsWritten(root), wires);
    Map<String, Run> runs = new LinkedHashMap<>();
    top.members("runs")
        .forEach(
            (name, member) ->
                runs.put(name, WireBuilder.run(member.key(), (Section) member.value())));
    Map<String, Written<Intent>> intent = new LinkedHashMap<>();
    top.members("intent")
        .forEach(
            (name, member) -> {
              if (member.value() instanceof Value.One one) {
                intent.put(name, Value.as(one.written(), Intent.class));
              }
            });
    Optional<Switching> switching = top.section("switching").map(SwitchingBuilder::switching);
    checkReferences(root, top, parts, runs, wires, intent, switching);
    return new Netlist(
        new NetlistText(text.file(), text.lines(), text.sha256()),
        SiteBuilder.about(top.mustSection("circuit")),
        sites.site(top.mustSection("site"), mains),
        DeviceBuilder.ordered(parts),
        DeviceBuilder.ordered(runs),
        List.copyOf(wires),
        DeviceBuilder.ordered(intent),
        switching,
        accepted(top));
  }

  private static boolean mainsWritten(Entries root) {
    return root.tree("site").orElse(null) instanceof Entries site && site.tree("mains").isPresent();
  }

  private static List<Wire> wires(Section top) {
    List<Wire> wires = new ArrayList<>();
    for (Value item : top.items("wires")) {
      try {
        wires.add(WireBuilder.wire(item));
      } catch (Incomplete e) {
        // what is missing has been reported; the other wires can still be checked
      }
    }
    return wires;
  }

  private Map<String, Part> parts(
      Section top, Optional<MainsSupply> mains, boolean mainsWritten, List<Wire> wires) {
    Map<String, Set<String>> wired = new HashMap<>();
    for (Wire wire : wires) {
      for (Terminal end : List.of(wire.from().value(), wire.to().value())) {
        wired.computeIfAbsent(end.part(), part -> new HashSet<>()).add(end.pin());
      }
    }
    PartBuilder builder = new PartBuilder(problems, mains, mainsWritten);
    Map<String, Part> parts = new LinkedHashMap<>();
    top.members("parts")
        .forEach(
            (name, member) -> {
              try {
                Set<String> pins = wired.getOrDefault(name, Set.of());
                parts.put(name, builder.build(member.key(), (Section) member.value(), pins));
              } catch (Incomplete e) {
                // reported; the part counts as known, so that its wires raise nothing more
              }
            });
    return parts;
  }

  private void checkReferences(
      Entries root,
      Section top,
      Map<String, Part> parts,
      Map<String, Run> runs,
      List<Wire> wires,
      Map<String, Written<Intent>> intent,
      Optional<Switching> switching) {
    Set<String> designations = keys(root, "parts");
    Set<String> runNames = keys(root, "runs");
    top.members("runs")
        .forEach(
            (name, member) -> {
              if (designations.contains(name)) {
                problems.add(
                    member.key().mark(),
                    name + " is a part already",
                    "give the run a designation of its own");
              }
            });
    if (designations.isEmpty()) {
      return;
    }
    References references = new References(problems, designations, parts, runNames);
    wires.forEach(references::wire);
    runs.values().forEach(references::run);
    top.members("intent").forEach((name, member) -> references.load(member.key()));
    intent.values().forEach(written -> references.contacts(written.value()));
    switching.flatMap(Switching::output).ifPresent(references::contact);
    top.section("site").flatMap(SiteBuilder::island).stream()
        .flatMap(island -> island.feeds().stream())
        .forEach(references::fed);
    references.report();
  }

  private static Set<String> keys(Entries root, String key) {
    Set<String> keys = new LinkedHashSet<>();
    if (root.tree(key).orElse(null) instanceof Entries entries) {
      entries.entries().forEach(entry -> keys.add(entry.key().text()));
    }
    return keys;
  }

  private static List<Accepted> accepted(Section top) {
    List<Accepted> accepted = new ArrayList<>();
    for (Value item : top.items("accepted")) {
      Section section = (Section) item;
      accepted.add(
          new Accepted(
              section.mark(),
              section.mustText("rule"),
              section.mustText("at"),
              section.mustText("because").value(),
              section.mustText("by").value()));
    }
    return List.copyOf(accepted);
  }
}
