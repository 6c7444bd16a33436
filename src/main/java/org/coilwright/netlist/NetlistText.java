package org.coilwright.netlist;

import java.util.List;
import java.util.function.Supplier;

/** The file as text, for excerpts and for the record. */
public final class NetlistText {
  private final String file;
  private final List<String> lines;
  private final Supplier<String> sha256;

  /**
   * A text whose digest is known.
   *
   * @param file name as the user gave it; {@code -} for standard input
   * @param lines without line ends
   * @param sha256 lower-case hex digest of the bytes
   */
  public NetlistText(String file, List<String> lines, String sha256) {
    this(file, lines, () -> sha256);
  }

  /**
   * A text whose digest is computed when asked for: few ask, and Java takes longer to find its
   * digests than to read a netlist.
   */
  NetlistText(String file, List<String> lines, Supplier<String> sha256) {
    this.file = file;
    this.lines = List.copyOf(lines);
    this.sha256 = sha256;
  }

  /** Its name as the user gave it. */
  public String file() {
    return file;
  }

  /** Its lines, without line ends. */
  public List<String> lines() {
    return lines;
  }

  /** Lower-case hex digest of its bytes. */
  public String sha256() {
    return sha256.get();
  }
}
