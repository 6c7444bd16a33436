package org.coilwright.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Runs every command once in one process. The build records which classes that loads into an
 * archive, from which the launcher's Java starts faster.
 */
final class ArchiveTraining {
  private ArchiveTraining() {}

  /**
   * Runs them.
   *
   * @param args folder of netlists, folder to write into
   */
  public static void main(String[] args) throws IOException {
    List<String> netlists;
    try (Stream<Path> files = Files.list(Path.of(args[0]))) {
      netlists = files.map(Path::toString).filter(name -> name.endsWith(".yaml")).sorted().toList();
    }
    Path target = Files.createDirectories(Path.of(args[1]));
    for (String netlist : netlists) {
      run("check", netlist);
      run("check", "--as", "json", netlist);
      run("check", "--as", "sarif", netlist);
      run("states", netlist);
      run("states", "--as", "json", netlist);
      run("rehearse", netlist);
      run("rehearse", "--as", "json", netlist);
      run("faults", netlist);
      String sheet = target.resolve("checklist.pdf").toString();
      run("draw", netlist, "-o", target.resolve("drawing.svg").toString());
      run("draw", netlist, "-o", target.resolve("drawing.png").toString());
      run("checklist", netlist, "--coverage");
      run("checklist", netlist, "--language", "de", "-o", target.resolve("german.pdf").toString());
      run("checklist", netlist, "-o", sheet);
      run("readback", sheet, "-o", target.resolve("record.pdf").toString());
      run("verify", sheet);
      run("verify", target.resolve("record.pdf").toString());
    }
    run("check", netlists.get(0), netlists.get(0), "no-such-file.yaml");
    run("choose", "--power", "9kW", "--voltage", "400V", "--phases", "3");
    run("explain");
    run("explain", "coil.too-low");
    run("schema");
    run("new");
    run("--help");
    run("--version");
    run("chekc");
    System.out.println("trained with " + netlists.size() + " netlists into " + target);
  }

  private static void run(String... args) {
    PrintStream nowhere = new PrintStream(PrintStream.nullOutputStream());
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    PrintStream err = new PrintStream(said, true, StandardCharsets.UTF_8);
    Console console =
        new Console(
            new ByteArrayInputStream(new byte[0]),
            nowhere,
            err,
            Map.of(),
            Set.of("out"),
            () -> LocalDate.EPOCH);
    int code = new Main(console).run(args);
    if (code == Exit.DEFECT) {
      throw new IllegalStateException(
          "a defect in: " + String.join(" ", args) + "\n" + said.toString(StandardCharsets.UTF_8));
    }
  }
}
