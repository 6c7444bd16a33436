package org.coilwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;

/** What a person is told when the program itself is at fault. */
final class Defect {
  private Defect() {}

  /** Says so, keeps the trace in a file, and gives the exit code. */
  static int tell(Console console, Throwable fault) {
    return tell(console, "", "Nothing was judged; do not read this as a result.", fault);
  }

  /** The same of one file among others that are judged. */
  static int tell(Console console, String file, Throwable fault) {
    String name = file.equals(InputFile.STDIN) ? "standard input" : Lines.harmless(file);
    return tell(
        console,
        " at " + name,
        name
            + " was not judged; do not read this as a result. Other files are judged all the same.",
        fault);
  }

  private static int tell(Console console, String where, String judged, Throwable fault) {
    console
        .err()
        .println(
            "coilwright "
                + Version.text()
                + " met a fault of its own"
                + where
                + " ("
                + Lines.harmless(fault.toString())
                + ").");
    console.err().println(judged);
    console
        .err()
        .println(
            "Please report it to whoever maintains your copy, with the netlist and "
                + trace(fault)
                + ".");
    return Exit.DEFECT;
  }

  private static String trace(Throwable fault) {
    StringWriter trace = new StringWriter();
    fault.printStackTrace(new PrintWriter(trace));
    try {
      Path file = Files.createTempFile("coilwright-fault-", ".txt");
      Files.writeString(file, "coilwright " + Version.text() + "\n" + trace);
      return file.toString();
    } catch (IOException e) {
      StackTraceElement[] frames = fault.getStackTrace();
      return frames.length == 0 ? "this message" : "this place: " + frames[0];
    }
  }
}
