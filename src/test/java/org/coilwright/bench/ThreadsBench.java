package org.coilwright.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.coilwright.Coilwright;
import org.coilwright.netlist.Includes;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Threads;
import org.openjdk.jmh.annotations.Warmup;

/** The library's way in, called by one thread and by two: the examples in turn, lines a second. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 5, time = 5)
@Measurement(iterations = 5, time = 5)
public class ThreadsBench {
  private final List<byte[]> netlists = netlists();

  private static List<byte[]> netlists() {
    try (Stream<Path> files = Files.list(Path.of("wiring-examples"))) {
      return files
          .filter(f -> f.toString().endsWith(".yaml"))
          .sorted()
          .map(ThreadsBench::bytes)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private int all() {
    int characters = 0;
    for (byte[] netlist : netlists) {
      characters += Coilwright.line("netlist", netlist, Includes.none()).length();
    }
    return characters;
  }

  /** Four netlists. */
  @Benchmark
  @Threads(1)
  public int oneThread() {
    return all();
  }

  /** Four netlists in each of two threads. */
  @Benchmark
  @Threads(2)
  public int twoThreads() {
    return all();
  }
}
