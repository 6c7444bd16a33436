package org.coilwright.netlist;

import java.nio.file.Path;
import java.util.Collection;
import java.util.List;

/** Brings the files that a netlist includes. */
public interface Includes {
  /**
   * Finds a file.
   *
   * @param from name of the including file, as the reader knows it
   * @param path what stands under {@code include:}
   */
  Found find(String from, String path);

  /** The files behind what was found so far, where they really are; none if not from a folder. */
  default Collection<Path> files() {
    return List.of();
  }

  /** What came of it. */
  sealed interface Found {}

  /** A file. */
  final class File implements Found {
    private final String name;
    private final byte[] bytes;

    /**
     * A file with its bytes.
     *
     * @param name unique name, by which messages call it and by which it is found to be read
     *     already
     */
    public File(String name, byte[] bytes) {
      this.name = name;
      this.bytes = bytes.clone();
    }

    /** Its unique name. */
    public String name() {
      return name;
    }

    /** What it holds. */
    public byte[] bytes() {
      return bytes.clone();
    }
  }

  /**
   * No file.
   *
   * @param what why, one sentence without its full stop
   * @param remedy what to do
   */
  record Refused(String what, String remedy) implements Found {}

  /** For a netlist that does not come from a folder, such as standard input. */
  static Includes none() {
    return (from, path) ->
        new Refused(
            "this netlist does not come from a folder, so it cannot include files",
            "give its file name, or copy the types into it");
  }
}
