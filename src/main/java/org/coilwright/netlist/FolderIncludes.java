package org.coilwright.netlist;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Finds included files beside a netlist or below it, and nowhere else. */
public final class FolderIncludes implements Includes {
  private static final String STAY = "name a file in the netlist's folder or below it";

  private final String netlist;
  private final Path real;
  private final Path root;
  private final Map<String, Path> known = new HashMap<>();

  /**
   * For one netlist.
   *
   * @param netlist its name as messages call it
   * @param path where it is
   * @throws IOException if it is not there
   */
  public FolderIncludes(String netlist, Path path) throws IOException {
    this.netlist = netlist;
    this.real = path.toRealPath();
    // links are followed for the netlist itself; its includes then stay where it really is
    this.root = real.resolveSibling(".").normalize();
    known.put(netlist, real);
  }

  @Override
  public Found find(String from, String path) {
    boolean relative =
        !path.isBlank()
            && !path.startsWith("/")
            && !path.startsWith("~")
            && path.chars().noneMatch(c -> c == '\\' || c == ':' || c < ' ');
    if (!relative) {
      return new Refused("an included file is named by a relative path with /", STAY);
    }
    try {
      Path asked = known.getOrDefault(from, real).resolveSibling(path).normalize();
      return asked.startsWith(root) ? open(asked, path) : outside(path);
    } catch (InvalidPathException e) {
      return new Refused("this cannot be a file name", STAY);
    }
  }

  @Override
  public Collection<Path> files() {
    return List.copyOf(known.values());
  }

  private Found open(Path asked, String path) {
    try {
      Path target = asked.toRealPath();
      if (!target.startsWith(root)) {
        return outside(path);
      }
      if (!Files.isRegularFile(target)) {
        return new Refused(shown(path) + " is not a file", STAY);
      }
      String name = target.equals(real) ? netlist : nameOf(target);
      known.put(name, target);
      try (InputStream in = Files.newInputStream(target)) {
        return new File(name, in.readNBytes(LargestFile.BYTES + 1));
      }
    } catch (NoSuchFileException e) {
      return new Refused("there is no file " + shown(path), "check the name; " + STAY);
    } catch (IOException e) {
      return new Refused(shown(path) + " cannot be read", "check that you may read it");
    }
  }

  private static Refused outside(String path) {
    return new Refused(shown(path) + " lies outside of the netlist's folder", STAY);
  }

  private String nameOf(Path target) {
    String below = root.relativize(target).toString().replace('\\', '/');
    int folder = netlist.lastIndexOf('/') + 1;
    return netlist.substring(0, folder) + below;
  }

  private static String shown(String path) {
    return Problems.shown(path);
  }
}
