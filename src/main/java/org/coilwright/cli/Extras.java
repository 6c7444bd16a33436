package org.coilwright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import picocli.CommandLine;

/** Writes what goes beside the program into its distribution. */
final class Extras {
  private Extras() {}

  /**
   * Writes them.
   *
   * @param args folder to write into, list of the libraries, folder of their jars, folder of
   *     licences that they do not bring
   */
  public static void main(String[] args) throws IOException {
    Map<String, String> files = all();
    Path libraries = Path.of(args[1]);
    if (!Files.exists(libraries)) {
      throw new IOException(
          libraries + " is missing: Maven leaves its plugin out where it is told to stay offline");
    }
    Path texts = Path.of(args[3]);
    files.put("THIRD-PARTY.txt", Licences.of(libraries, Path.of(args[2]), texts));
    for (Map.Entry<String, String> file : files.entrySet()) {
      Path path = Path.of(args[0]).resolve(file.getKey());
      Files.createDirectories(path.resolveSibling("."));
      Files.writeString(path, file.getValue(), StandardCharsets.UTF_8);
    }
  }

  /** Completions and the manual page, by path. */
  static Map<String, String> all() {
    CommandLine root = new Main(Console.ofProcess()).whole();
    Completions completions = new Completions(root);
    Map<String, String> files = new LinkedHashMap<>();
    files.put("completions/coilwright.bash", completions.bash());
    files.put("completions/coilwright.fish", completions.fish());
    files.put("completions/coilwright.ps1", completions.powerShell());
    files.put("man/man1/coilwright.1", ManualPage.of(root.getCommandSpec()));
    return files;
  }
}
