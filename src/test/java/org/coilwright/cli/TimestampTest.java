package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.coilwright.checklist.Fillings;
import org.coilwright.cli.Cli.Ran;
import org.coilwright.pdf.Authority;
import org.coilwright.pdf.Baseline;
import org.coilwright.pdf.Filler;
import org.coilwright.pdf.Validator;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Records with a time stamp, from a server of this test's own on this machine. */
class TimestampTest {
  private static final String EXAMPLE = "wiring-examples/wash-room-tub.yaml";

  @TempDir static Path made;
  private static Path filled;
  private static Authority authority;
  private static Authority clock;
  private static Authority.Certified server;

  @TempDir Path folder;

  /** What the server does with a request. */
  private interface Answer {
    byte[] to(byte[] request) throws Exception;
  }

  private HttpServer http;
  private Answer answer;
  private int status;

  @BeforeAll
  static void fill() throws Exception {
    byte[] sheet = Files.readAllBytes(Sheets.of(EXAMPLE, made.resolve("sheet.pdf")));
    filled =
        Files.write(
            made.resolve("filled.pdf"),
            Filler.filled(sheet, Fillings.complete(Sheets.checklist(EXAMPLE)).filledIn()));
    authority = Authority.named("Bench authority");
    clock = Authority.named("Clock authority");
    server = clock.server("Bench clock");
  }

  @BeforeEach
  void open() throws IOException {
    status = 200;
    answer = request -> server.stamp(request, Instant.now());
    http = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    http.createContext("/tsr", this::serve);
    http.start();
  }

  @AfterEach
  void close() {
    http.stop(0);
  }

  private void serve(HttpExchange exchange) throws IOException {
    byte[] request = exchange.getRequestBody().readAllBytes();
    boolean asked =
        "application/timestamp-query".equals(exchange.getRequestHeaders().getFirst("Content-Type"))
            && exchange.getRequestMethod().equals("POST");
    byte[] reply;
    try {
      reply = asked ? answer.to(request) : new byte[0];
    } catch (Exception e) { // whatever it is, the client gets no answer that fits
      reply = new byte[0];
    }
    exchange.getResponseHeaders().set("Content-Type", "application/timestamp-reply");
    exchange.sendResponseHeaders(status, reply.length == 0 ? -1 : reply.length);
    exchange.getResponseBody().write(reply);
    exchange.close();
  }

  private String address() {
    return "http://127.0.0.1:" + http.getAddress().getPort() + "/tsr";
  }

  private Ran signed(Path record, int from, int to, String... more) throws Exception {
    Path keystore =
        Files.write(
            folder.resolve("me.p12"), authority.signer("Bench", from, to).keystore("secret"));
    List<String> command =
        new ArrayList<>(
            List.of(
                "readback",
                filled.toString(),
                "-o",
                record.toString(),
                "--sign",
                keystore.toString()));
    command.addAll(List.of(more));
    return new Cli()
        .environment(Map.of("COILWRIGHT_KEYSTORE_PASSWORD", "secret"))
        .with(command.toArray(String[]::new));
  }

  private Path trusted(Authority... authorities) throws IOException {
    Path file = folder.resolve("trusted.pem");
    Files.deleteIfExists(file);
    Files.createFile(file);
    for (Authority each : authorities) {
      Files.write(file, each.pem(), java.nio.file.StandardOpenOption.APPEND);
    }
    return file;
  }

  private static Ran verify(Path record, Path trust) {
    return Cli.run("verify", record.toString(), "--trust", trust.toString());
  }

  private static String squeezed(String text) {
    return text.replaceAll("\\s+", " ");
  }

  @Test
  void a_time_stamp_is_asked_for_shown_and_found_good_by_another_validator() throws Exception {
    Path record = folder.resolve("record.pdf");
    Ran ran = signed(record, -1, 1, "--timestamp", address());
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.err().contains(", signed and time-stamped."), ran.err());
    byte[] pdf = Files.readAllBytes(record);
    assertEquals(List.of("PAdES-BASELINE-T, intact, 1 time stamp intact"), Baseline.of(pdf));
    assertEquals(List.of(), Validator.broken(pdf));
    Ran verified = verify(record, trusted(authority, clock));
    assertEquals(0, verified.code(), verified.out());
    String out = squeezed(verified.out());
    assertTrue(out.contains(", confirmed by CN=Bench clock."), out);
    assertTrue(out.contains("leads to one that you gave as trusted"), out);
    Ran half = verify(record, trusted(authority));
    assertEquals(1, half.code(), half.out());
    assertTrue(squeezed(half.out()).contains("its time stamp's certificate does not lead"));
  }

  @Test
  void without_a_time_stamp_it_is_the_plain_form() throws Exception {
    Path record = folder.resolve("record.pdf");
    Ran ran = signed(record, -1, 1);
    assertEquals(0, ran.code(), ran.err());
    byte[] pdf = Files.readAllBytes(record);
    assertEquals(List.of("PAdES-BASELINE-B, intact, 0 time stamps"), Baseline.of(pdf));
    assertEquals(0, verify(record, trusted(authority)).code());
    Ran other = verify(record, trusted(clock));
    assertEquals(1, other.code(), other.out());
    assertTrue(squeezed(other.out()).contains("does not lead to any that was given as trusted"));
  }

  /** A signature outlives its certificate only where somebody else confirms the time. */
  @Test
  void a_certificate_that_ran_out_counts_at_the_time_of_the_stamp() throws Exception {
    Path plain = folder.resolve("plain.pdf");
    assertEquals(0, signed(plain, -30, -2).code());
    Ran ran = verify(plain, trusted(authority, clock));
    assertEquals(1, ran.code(), ran.out());
    assertTrue(squeezed(ran.out()).contains("no longer valid, and no time stamp shows"), ran.out());
    answer = request -> server.stamp(request, Instant.now().minus(10, ChronoUnit.DAYS));
    Path stamped = folder.resolve("stamped.pdf");
    assertEquals(0, signed(stamped, -30, -2, "--timestamp", address()).code());
    ran = verify(stamped, trusted(authority, clock));
    assertEquals(0, ran.code(), ran.out());
  }

  @Test
  void no_time_stamp_no_record() throws Exception {
    Path record = folder.resolve("record.pdf");
    List<Answer> answers =
        List.of(
            request -> new byte[0],
            request -> "no".getBytes(java.nio.charset.StandardCharsets.US_ASCII),
            request -> new byte[1 << 17],
            // a stamp over something that was not asked for
            request -> {
              byte[] other = request.clone();
              other[other.length / 2] ^= 1;
              return server.stamp(other, Instant.now());
            });
    for (Answer each : answers) {
      answer = each;
      Ran ran = signed(record, -1, 1, "--timestamp", address());
      assertEquals(2, ran.code(), ran.err());
      assertTrue(ran.err().contains("The time stamp server gives no time stamp: "), ran.err());
      assertTrue(ran.err().contains("No record was written."), ran.err());
      assertFalse(Files.exists(record));
    }
    status = 503;
    Ran ran = signed(record, -1, 1, "--timestamp", address());
    assertTrue(ran.err().contains("it answers with HTTP status 503"), ran.err());
    http.stop(0);
    ran = signed(record, -1, 1, "--timestamp", address());
    assertEquals(2, ran.code(), ran.err());
    assertFalse(Files.exists(record));
  }

  @Test
  void what_cannot_be_meant_is_refused_at_once() throws Exception {
    Path record = folder.resolve("record.pdf");
    for (String address : List.of("ftp://127.0.0.1/", "somewhere", "file:///etc/passwd")) {
      Ran ran = signed(record, -1, 1, "--timestamp", address);
      assertEquals(2, ran.code(), ran.err());
      assertTrue(ran.err().contains("is no address of a time stamp server"), ran.err());
    }
    Ran unsigned =
        Cli.run("readback", filled.toString(), "-o", record.toString(), "--timestamp", address());
    assertEquals(2, unsigned.code());
    assertTrue(unsigned.err().contains("sign it with --sign"), unsigned.err());
    for (Path trust : List.of(filled, folder.resolve("none.pem"), trusted())) {
      Ran ran = verify(filled, trust);
      assertEquals(2, ran.code(), ran.err());
      assertTrue(ran.err().contains("it must hold certificates"), ran.err());
    }
    Ran ran = Cli.run("readback", filled.toString(), "-o", record.toString());
    assertEquals(0, ran.code(), ran.err());
    Ran asked = verify(record, trusted(authority));
    assertEquals(1, asked.code(), asked.out());
    assertTrue(asked.out().contains("It is not signed, so that --trust"), asked.out());
  }
}
