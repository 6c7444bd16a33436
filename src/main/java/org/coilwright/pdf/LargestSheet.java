package org.coilwright.pdf;

/**
 * How large a sheet that comes back may be. The only place where this is said: what opens a PDF,
 * takes its attached files out or reads its pages takes it from here. The netlist inside may be as
 * large as any that is read, with its results beside it.
 */
public final class LargestSheet {
  /**
   * In bytes: of the file, of its attached files unpacked, of what its pages draw. A sheet is a few
   * hundred kilobytes; what a viewer adds is far less than this.
   */
  public static final int BYTES = 32 << 20;

  private LargestSheet() {}

  /** {@code 32 MiB}. */
  public static String words() {
    return (BYTES >> 20) + " MiB";
  }
}
