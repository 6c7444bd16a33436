package org.coilwright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/**
 * The licences of everything in the distribution that others made, in one text: which library is
 * under which, the notices that must go along, and each licence once.
 */
final class Licences {
  private static final Pattern NOTICE = Pattern.compile("META-INF/[A-Za-z-]*NOTICE(\\.\\w+)?");
  private static final Pattern LICENCE = Pattern.compile("META-INF/[A-Za-z-]*LICENSE(\\.\\w+)?");
  private static final String RULE = "=".repeat(78);

  private final Path texts;
  private final Map<String, String> notices = new LinkedHashMap<>();
  private final Map<String, List<String>> licences = new LinkedHashMap<>();

  private Licences(Path texts) {
    this.texts = texts;
  }

  /**
   * The whole text.
   *
   * @param bom list of the libraries (CycloneDX, JSON)
   * @param lib folder of their jars
   * @param texts folders of the licences that jars do not bring, named for a library, a group or a
   *     licence
   * @throws IOException if one of them cannot be read, or a licence is not there
   */
  static String of(Path bom, Path lib, Path texts) throws IOException {
    return new Licences(texts).text(JsonTree.read(Files.readAllBytes(bom)), lib);
  }

  private String text(JsonTree bom, Path lib) throws IOException {
    StringBuilder out = new StringBuilder();
    out.append("coilwright is under the Apache License 2.0 and uses what others made:\n\n");
    for (JsonTree component : bom.elements("components")) {
      String name = component.text("name") + " " + component.text("version");
      String under = String.join(" or ", names(component));
      out.append("  %-28s  %s\n".formatted(name, under));
      Path jar = lib.resolve(component.text("name") + "-" + component.text("version") + ".jar");
      look(component, name, jar);
    }
    out.append("  %-28s  %s\n".formatted("DejaVu fonts, parts of them", "their own"));
    licence(resource("/fonts/LICENSE-DejaVu.txt"), "DejaVu fonts");
    out.append("\nWhere there is a choice, the last one named is taken.\n");
    notices.forEach((name, notice) -> section(out, "Notice of " + name, notice));
    licences.forEach((text, users) -> section(out, "Licence of " + String.join(", ", users), text));
    return out.toString();
  }

  private void look(JsonTree component, String name, Path jar) throws IOException {
    boolean found = false;
    try (ZipFile zip = new ZipFile(jar.toFile())) {
      for (ZipEntry entry :
          zip.stream().sorted((a, b) -> a.getName().compareTo(b.getName())).toList()) {
        if (NOTICE.matcher(entry.getName()).matches()) {
          notices.merge(name, read(zip, entry), (one, more) -> one + "\n" + more);
        } else if (LICENCE.matcher(entry.getName()).matches()) {
          licence(read(zip, entry), name);
          found = true;
        }
      }
    }
    if (!found) {
      licence(kept(component), name);
    }
  }

  /** The licence of a library whose jar has none. */
  private String kept(JsonTree component) throws IOException {
    List<String> names = new ArrayList<>(List.of(component.text("name"), component.text("group")));
    names.addAll(names(component));
    for (String name : names) {
      Path text = texts.resolve(name + ".txt");
      if (Files.exists(text)) {
        return text(Files.readAllBytes(text));
      }
    }
    throw new IOException("no licence text for any of " + names + " in " + texts);
  }

  private static List<String> names(JsonTree component) {
    return component.elements("licenses").stream()
        .map(choice -> choice.at("license"))
        .map(licence -> licence.text("id").isEmpty() ? licence.text("name") : licence.text("id"))
        .map(name -> name.startsWith("Eclipse Public License") ? "EPL-2.0" : name)
        .collect(Collectors.toList());
  }

  private void licence(String text, String user) {
    List<String> users = licences.computeIfAbsent(text, t -> new ArrayList<>());
    if (!users.contains(user)) {
      users.add(user);
    }
  }

  private static void section(StringBuilder out, String head, String text) {
    out.append('\n').append(RULE).append('\n');
    Lines.wrap(out, "", head, RULE.length());
    out.append(RULE).append("\n\n").append(text.strip()).append('\n');
  }

  private static String read(ZipFile zip, ZipEntry entry) throws IOException {
    byte[] bytes = zip.getInputStream(entry).readAllBytes();
    return text(bytes);
  }

  private static String resource(String name) throws IOException {
    try (var in = Licences.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IOException("the build left out " + name);
      }
      return text(in.readAllBytes());
    }
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.UTF_8)
        .replace("\r\n", "\n")
        .lines()
        .map(String::stripTrailing)
        .collect(Collectors.joining("\n"));
  }
}
