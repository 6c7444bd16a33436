package org.coilwright.cli;

import java.io.FileDescriptor;
import java.io.InputStream;
import java.io.PrintStream;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;

/**
 * The surroundings of a run.
 *
 * @param out for results
 * @param err for messages
 * @param environment variables
 * @param terminals which of {@code in}, {@code out}, {@code err} a person sits at
 * @param date today; asked only where a date is printed, since time zones take long to load
 */
record Console(
    InputStream in,
    PrintStream out,
    PrintStream err,
    Map<String, String> environment,
    Set<String> terminals,
    Supplier<LocalDate> date) {

  /** Told by the launcher, which can ask the system; Java 17 cannot for each stream alone. */
  private static final String TERMINAL = "org.coilwright.terminal";

  private static final int NARROWEST = 80;
  private static final int WIDEST = 120;

  private static final long SECONDS_A_DAY = 86_400;

  /** The process's own, always in UTF-8. */
  static Console ofProcess() {
    // Without the launcher's word nobody is assumed to be there: plain text suits a person, too.
    Set<String> terminals = Set.of(System.getProperty(TERMINAL, "").strip().split(" ", -1));
    return new Console(
        System.in, // a stream on the descriptor itself would seek, which a pipe refuses
        Outlet.of(FileDescriptor.out),
        Outlet.of(FileDescriptor.err),
        System.getenv(),
        terminals,
        () -> LocalDate.now(ZoneId.systemDefault()));
  }

  /** How results are laid out. */
  Style outStyle(Colour colour) {
    return style(colour, "out");
  }

  /** How messages are laid out. */
  Style errStyle(Colour colour) {
    return style(colour, "err");
  }

  private Style style(Colour colour, String stream) {
    boolean on =
        switch (colour) {
          case ALWAYS -> true;
          case NEVER -> false;
          case AUTO ->
              terminals.contains(stream)
                  && environment.getOrDefault("NO_COLOR", "").isEmpty()
                  && !environment.getOrDefault("TERM", "").equals("dumb");
        };
    return new Style(on, terminals.contains(stream) ? columns() : Style.PLAIN.width());
  }

  /** What {@code COLUMNS} asks for, kept to what can be read; files always get the same width. */
  private int columns() {
    String asked = environment.getOrDefault("COLUMNS", "");
    boolean usable = !asked.isEmpty() && asked.length() <= 4;
    return usable && asked.chars().allMatch(c -> c >= '0' && c <= '9')
        ? Math.max(NARROWEST, Math.min(WIDEST, Integer.parseInt(asked)))
        : Style.PLAIN.width();
  }

  /** Today, or the day that {@code SOURCE_DATE_EPOCH} names, so that a PDF can be made again. */
  LocalDate today() {
    String epoch = environment.getOrDefault("SOURCE_DATE_EPOCH", "");
    boolean usable = !epoch.isEmpty() && epoch.length() <= 12;
    return usable && epoch.chars().allMatch(c -> c >= '0' && c <= '9')
        ? LocalDate.ofEpochDay(Long.parseLong(epoch) / SECONDS_A_DAY)
        : date.get();
  }

  /** When colour is used. */
  enum Colour {
    AUTO,
    ALWAYS,
    NEVER;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
