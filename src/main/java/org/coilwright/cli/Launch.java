package org.coilwright.cli;

import java.util.Locale;

/** The way into the process. It needs no library, so that it can say that one is missing. */
public final class Launch {
  /** The launcher's word for findings: it takes a 1 for a Java that did not start. */
  private static final String FINDINGS = "org.coilwright.findings";

  private static final String LIBRARY_LOG = "org.apache.commons.logging.Log";

  private Launch() {}

  /** Runs one command and ends the process with its exit code. */
  public static void main(String[] args) {
    // digits, calendars and letters of the machine's language have no place in a result
    Locale.setDefault(Locale.ROOT);
    // what the PDF library thinks of a damaged file would else be written on standard error
    System.setProperty(LIBRARY_LOG, "org.apache.commons.logging.impl.NoOpLog");
    int code;
    try {
      code = new Main(Console.ofProcess()).run(args);
    } catch (NoClassDefFoundError e) {
      System.err.println(incomplete(e));
      code = Exit.DEFECT;
    }
    System.exit(code == Exit.FINDINGS ? Integer.getInteger(FINDINGS, code) : code);
  }

  /** That a library is missing, as one line. */
  static String incomplete(NoClassDefFoundError missing) {
    return "coilwright: its folder lib is not complete ("
        + missing.getMessage()
        + "). Unpack or build it again. Nothing was judged.";
  }
}
