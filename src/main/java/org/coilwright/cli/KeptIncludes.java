package org.coilwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.coilwright.netlist.Includes;

/** Finds what others find, and keeps it, so that it can travel with the netlist. */
final class KeptIncludes implements Includes {
  private final Includes finder;
  private final List<Kept> kept = new ArrayList<>();

  /** A file that was found, and by which words. */
  record Kept(String from, String path, Includes.File file) {}

  KeptIncludes(Includes finder) {
    this.finder = finder;
  }

  @Override
  public Found find(String from, String path) {
    Found found = finder.find(from, path);
    if (found instanceof Includes.File file) {
      kept.add(new Kept(from, path, file));
    }
    return found;
  }

  @Override
  public Collection<Path> files() {
    return finder.files();
  }

  /** What was found, in the order it was asked for. */
  List<Kept> all() {
    return List.copyOf(kept);
  }
}
