package org.coilwright.netlist;

/**
 * How large a netlist may be. The only place where this is said: readers, messages and help take it
 * from here. Ten thousand heating circuits, each with its devices and wires, are 10 to 17 MiB.
 */
public final class LargestFile {
  /** In bytes; checked before anything is decoded. */
  public static final int BYTES = 24 << 20;

  /**
   * So many values a file may hold, and so many its aliases may make of it: no netlist has one for
   * less than twelve bytes.
   */
  static final int VALUES = BYTES / 12;

  /** A checklist is made of a circuit of at most so many wires; some three hundred circuits. */
  public static final int CHECKLIST_WIRES = 8000;

  private LargestFile() {}

  /** {@code 24 MiB}. */
  public static String words() {
    return words(BYTES);
  }

  /** {@code 3.8 MiB}, never more than there are. */
  public static String roundedDown(long bytes) {
    return words((((bytes * 10) >> 20) << 20) / 10);
  }

  /** {@code 30.2 MiB}, never rounded down to the limit. */
  public static String words(long bytes) {
    long tenths = (bytes * 10 + (1 << 20) - 1) >> 20;
    return tenths % 10 == 0 ? tenths / 10 + " MiB" : tenths / 10 + "." + tenths % 10 + " MiB";
  }
}
