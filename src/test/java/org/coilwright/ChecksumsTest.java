package org.coilwright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What the libraries are is written down, so that another file under the same name is noticed. */
class ChecksumsTest {
  private static final Path TRUSTED = Path.of(".mvn/checksums/checksums.sha256");

  private static Map<String, String> trusted() throws IOException {
    return Files.readAllLines(TRUSTED).stream()
        .map(line -> line.split(" +", 2))
        .filter(parts -> parts[1].endsWith(".jar"))
        .collect(Collectors.toMap(parts -> Path.of(parts[1]).getFileName().toString(), p -> p[0]));
  }

  @Test
  void every_library_is_the_one_that_is_trusted() throws IOException, NoSuchAlgorithmException {
    Map<String, String> trusted = trusted();
    List<String> wrong = new ArrayList<>();
    int seen = 0;
    for (String entry : System.getProperty("java.class.path").split(File.pathSeparator, -1)) {
      Path jar = Path.of(entry);
      if (entry.contains("repository") && entry.endsWith(".jar")) {
        byte[] sha = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(jar));
        String name = jar.getFileName().toString();
        if (!HexFormat.of().formatHex(sha).equals(trusted.get(name))) {
          wrong.add(name);
        }
        seen++;
      }
    }
    assertTrue(seen > 20, "only " + seen + " libraries on the class path");
    assertEquals(List.of(), wrong, "not in " + TRUSTED + ", or another file");
  }
}
