package org.coilwright.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Map;
import java.util.Set;

/** Runs the real command line in this process and keeps what it says. */
final class Cli {
  private byte[] stdin = new byte[0];
  private Map<String, String> environment = Map.of();
  private Set<String> terminals = Set.of();

  static Ran run(String... args) {
    return new Cli().with(args);
  }

  Cli stdin(byte[] bytes) {
    stdin = bytes;
    return this;
  }

  Cli environment(Map<String, String> variables) {
    environment = variables;
    return this;
  }

  Cli terminal(Map<String, String> variables) {
    environment = variables;
    terminals = Set.of("in", "out", "err");
    return this;
  }

  Ran with(String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Console console =
        new Console(
            new ByteArrayInputStream(stdin),
            new PrintStream(out, false, StandardCharsets.UTF_8),
            new PrintStream(err, false, StandardCharsets.UTF_8),
            environment,
            terminals,
            () -> LocalDate.of(2026, 3, 1));
    int code = new Main(console).run(args);
    return new Ran(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  /** What came of it. */
  record Ran(int code, String out, String err) {}
}
