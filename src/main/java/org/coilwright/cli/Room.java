package org.coilwright.cli;

import java.util.Locale;
import java.util.Optional;
import org.coilwright.netlist.LargestFile;
import org.coilwright.netlist.ReadingProblem;

/**
 * What fits into the memory of a process. Whatever is larger is refused before the work: a process
 * that runs out of memory on the way has taken minutes and judged nothing.
 *
 * @param heap bytes that the process may take for what it works on
 */
record Room(long heap) {
  /** Bytes that tables, rules and the rest of the program take before anything is read. */
  private static final long PROGRAM = 24L << 20;

  /** Bytes for each of a file while it is read; 50 were seen. */
  private static final long READING = 60;

  private static final String LESS =
      "split the netlist and take it part by part, or give Java more memory, as with java -Xmx4g"
          + " -jar coilwright.jar";

  /** What is done with a netlist once it is read, and what each of its wires then takes. */
  enum Work {
    /** Solving it, judging it, breaking it; 21 kB a wire are held at the end. */
    JUDGING("judging", 32L << 10),

    /** Making its sheet: 25 circuits needed 370 kB a wire, 60 more than 340. */
    SHEET("a checklist", 448L << 10);

    private final String inWords;
    private final long bytesPerWire;

    Work(String inWords, long bytesPerWire) {
      this.inWords = inWords;
      this.bytesPerWire = bytesPerWire;
    }
  }

  /** That of this process. */
  static Room ofProcess() {
    return new Room(Runtime.getRuntime().maxMemory());
  }

  /** A netlist of at most so many bytes can be read. */
  long mostBytes() {
    return Math.min(LargestFile.BYTES, free() / READING);
  }

  /** So much can be done with a netlist of at most so many wires. */
  long mostWires(Work work) {
    long fit = free() / work.bytesPerWire;
    return work == Work.SHEET ? Math.min(LargestFile.CHECKLIST_WIRES, fit) : fit;
  }

  private long free() {
    return Math.max(0, heap - PROGRAM);
  }

  /** Why a file of so many bytes is not read; empty if it is. */
  Optional<ReadingProblem> refuseToRead(String file, long bytes) {
    return bytes <= mostBytes()
        ? Optional.empty()
        : Optional.of(
            problem(
                file,
                "%s are too much for this process: reading them takes some %s of memory and it has %s, enough for %s"
                    .formatted(
                        LargestFile.words(bytes),
                        megabytes(PROGRAM + bytes * READING),
                        megabytes(heap),
                        LargestFile.roundedDown(mostBytes())),
                LESS));
  }

  /** Why a netlist of so many wires is not worked on; empty if it is. */
  Optional<ReadingProblem> refuse(String file, Work work, int wires) {
    if (wires <= mostWires(work)) {
      return Optional.empty();
    }
    if (work == Work.SHEET && wires > LargestFile.CHECKLIST_WIRES) {
      return Optional.of(
          problem(
              file,
              "%s wires are too many for one checklist, which is made for at most %s"
                  .formatted(wires, LargestFile.CHECKLIST_WIRES),
              "split the netlist, and make a checklist of each part"));
    }
    return Optional.of(
        problem(
            file,
            "%s wires are too many for this process: %s takes some %s of memory and it has %s, enough for %s wires"
                .formatted(
                    wires,
                    work.inWords,
                    megabytes(PROGRAM + wires * work.bytesPerWire),
                    megabytes(heap),
                    mostWires(work)),
            LESS));
  }

  /** What is said if the memory does not suffice all the same. */
  ReadingProblem exhausted(String file) {
    return problem(
        file,
        "the %s of memory that this process has did not suffice for it, and nothing was judged"
            .formatted(megabytes(heap)),
        LESS);
  }

  private static ReadingProblem problem(String file, String what, String remedy) {
    return new ReadingProblem(file, Optional.empty(), what, remedy, Optional.empty());
  }

  private static String megabytes(long bytes) {
    return String.format(Locale.ROOT, "%d MB", (bytes + (1 << 20) - 1) >> 20);
  }
}
