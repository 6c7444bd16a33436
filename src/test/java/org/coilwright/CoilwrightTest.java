package org.coilwright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.coilwright.Coilwright.Answer;
import org.coilwright.Coilwright.Judged;
import org.coilwright.Coilwright.Unusable;
import org.coilwright.cli.Inspector;
import org.coilwright.netlist.Includes;
import org.coilwright.rule.Verdict;
import org.junit.jupiter.api.Test;

/** The library's way in, from one thread and from many. */
class CoilwrightTest {
  private static final Path EXAMPLES = Path.of("wiring-examples");
  private static final int THREADS = 8;

  /** Each of the examples, and of the rules' netlists every tenth. */
  private static Map<String, byte[]> netlists() throws IOException {
    List<Path> files = new ArrayList<>();
    try (Stream<Path> examples = Files.list(EXAMPLES);
        Stream<Path> fixtures = Files.walk(Path.of("src/test/resources/rules"))) {
      examples.filter(CoilwrightTest::isNetlist).forEach(files::add);
      List<Path> all = fixtures.filter(CoilwrightTest::isNetlist).sorted().toList();
      for (int i = 0; i < all.size(); i += 10) {
        files.add(all.get(i));
      }
    }
    Map<String, byte[]> netlists = new TreeMap<>();
    for (Path file : files) {
      netlists.put(file.toString(), Files.readAllBytes(file));
    }
    netlists.put("no netlist", new byte[] {1, 2, 3});
    return netlists;
  }

  private static boolean isNetlist(Path file) {
    return file.toString().endsWith(".yaml");
  }

  @Test
  void a_text_is_judged() throws IOException {
    String text = Files.readString(EXAMPLES.resolve("attic-mistakes.yaml"));
    Answer answer = Coilwright.check(text, Includes.none());
    assertTrue(answer instanceof Judged, answer.toString());
    assertEquals(Verdict.STOP, ((Judged) answer).report().verdict());
  }

  @Test
  void a_text_that_is_no_netlist_is_unusable_and_says_where() {
    Answer answer = Coilwright.check("coilwright: 1\nparts: [", Includes.none());
    assertTrue(answer instanceof Unusable, answer.toString());
    assertTrue(((Unusable) answer).problems().get(0).mark().isPresent());
  }

  @Test
  void what_is_included_is_asked_of_the_caller() {
    List<String> asked = new ArrayList<>();
    Coilwright.check(
        "coilwright: 1\ninclude: [relays.yaml]\n",
        (from, path) -> {
          asked.add(path + " from " + from);
          return new Includes.Refused("it is not there", "bring it");
        });
    assertEquals(List.of("relays.yaml from netlist"), asked);
  }

  @Test
  void a_netlist_gives_the_same_line_however_often_it_is_asked() throws IOException {
    byte[] bytes = Files.readAllBytes(EXAMPLES.resolve("wash-room-tub.yaml"));
    String first = Coilwright.line("tub", bytes, Includes.none());
    assertTrue(first.startsWith("{\"coilwright\":1,\"file\":\"tub\",\"sha256\":"), first);
    assertTrue(first.indexOf('\n') < 0, first);
    assertEquals(first, Coilwright.line("tub", bytes, Includes.none()));
  }

  /**
   * With tables that nobody has read yet: the threads race for these as well, each with another
   * netlist first.
   */
  @Test
  void many_threads_give_the_same_bytes_as_one() throws Exception {
    Map<String, byte[]> netlists = netlists();
    assertTrue(netlists.size() > 50);
    Map<String, String> alone = lines(Inspector.standard(), netlists, netlists.keySet());
    Inspector shared = Inspector.standard();
    CountDownLatch together = new CountDownLatch(THREADS);
    List<Callable<Map<String, String>>> shares = new ArrayList<>();
    for (int t = 0; t < THREADS; t++) {
      List<String> order = new ArrayList<>(netlists.keySet());
      Collections.shuffle(order, new Random(t));
      shares.add(
          () -> {
            together.countDown();
            together.await();
            return lines(shared, netlists, order);
          });
    }
    ExecutorService workers = Executors.newFixedThreadPool(THREADS);
    try {
      for (Future<Map<String, String>> share : workers.invokeAll(shares)) {
        assertEquals(alone, share.get());
      }
    } finally {
      workers.shutdownNow();
    }
  }

  private static Map<String, String> lines(
      Inspector inspector, Map<String, byte[]> netlists, Iterable<String> order) {
    Map<String, String> lines = new TreeMap<>();
    for (String name : order) {
      byte[] bytes = netlists.getOrDefault(name, new byte[0]);
      lines.put(name, inspector.line(name, bytes, Includes.none()));
    }
    return lines;
  }
}
