package org.coilwright.cli;

import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** The manual page, from the texts of {@code --help}, in the language of {@code man(7)}. */
final class ManualPage {
  private final StringBuilder out = new StringBuilder();

  private ManualPage() {}

  /** The page of a command line. */
  static String of(CommandSpec root) {
    ManualPage page = new ManualPage();
    page.write(root);
    return page.out.toString();
  }

  private void write(CommandSpec root) {
    out.append(".TH COILWRIGHT 1 \"\" \"coilwright ").append(Version.text()).append("\"\n");
    head("NAME");
    String about =
        List.of(root.usageMessage().description()).stream()
            .filter(line -> !line.isBlank())
            .collect(Collectors.joining(" "));
    line(
        "coilwright - checks the circuit of a contact, a coil and a load, and prints its"
            + " checklist");
    head("SYNOPSIS");
    out.append(".B coilwright\n.I COMMAND\n[\\fIOPTION\\fR...] [\\fIFILE\\fR...]\n");
    head("DESCRIPTION");
    line(about);
    head("OPTIONS");
    root.options().forEach(this::option);
    head("COMMANDS");
    Commands.of(root).forEach(this::command);
    head("EXAMPLES");
    verbatim(root.usageMessage().footer());
    head("ENVIRONMENT");
    item("NO_COLOR", "No colour on a terminal, whatever its value, unless it is empty.");
    item("COLUMNS", "Width of the text on a terminal.");
    item("SOURCE_DATE_EPOCH", "Seconds since 1970: the date that a sheet or record carries.");
    item("COILWRIGHT_KEYSTORE_PASSWORD", "Password of the keystore that signs a record.");
    item("JAVA_HOME", "The Java that is tried first; then the first one on the PATH.");
    item(
        "COILWRIGHT_CACHE",
        "Folder for the class archive that makes a start faster, made once where the one that"
            + " comes along does not fit; empty: none is made. Without it, coilwright in"
            + " XDG_CACHE_HOME or in .cache of the home folder.");
    item(
        "COILWRIGHT_ARCHIVE",
        "make: writes that archive beside coilwright.jar, for everybody who starts it there.");
    line("JAVA_TOOL_OPTIONS, JDK_JAVA_OPTIONS and _JAVA_OPTIONS are not heeded.");
  }

  private void command(Commands.Command command) {
    CommandSpec spec = command.spec();
    String arguments =
        spec.positionalParameters().stream()
            .map(PositionalParamSpec::paramLabel)
            .collect(Collectors.joining(" "));
    out.append(".SS ").append(escaped((command.name() + " " + arguments).strip())).append('\n');
    for (String text : spec.usageMessage().description()) {
      line(text);
    }
    spec.positionalParameters()
        .forEach(p -> item(p.paramLabel(), String.join(" ", p.description())));
    spec.options().forEach(this::option);
    verbatim(spec.usageMessage().footer());
  }

  private void option(OptionSpec option) {
    String label = option.arity().max() > 0 ? " " + option.paramLabel() : "";
    String values = String.join(", ", choice(option).values());
    item(
        String.join(", ", choice(option).names()) + label,
        String.join(" ", option.description()).replace("${COMPLETION-CANDIDATES}", values));
  }

  private static Commands.Choice choice(OptionSpec option) {
    return Commands.choice(option);
  }

  private void head(String title) {
    out.append(".SH ").append(title).append('\n');
  }

  private void item(String term, String text) {
    out.append(".TP\n.B ").append(escaped(term)).append('\n');
    line(text);
  }

  private void line(String text) {
    out.append(escaped(text)).append('\n');
  }

  private void verbatim(String... lines) {
    out.append(".PP\n.nf\n");
    for (String line : lines) {
      out.append(escaped(line)).append('\n');
    }
    out.append(".fi\n");
  }

  /** A full stop or an apostrophe at the beginning of a line would be a command of the page. */
  private static String escaped(String text) {
    String safe = text.replace("\\", "\\e").replace("-", "\\-");
    return safe.startsWith(".") || safe.startsWith("'") ? "\\&" + safe : safe;
  }
}
