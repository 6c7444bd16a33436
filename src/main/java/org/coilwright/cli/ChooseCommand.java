package org.coilwright.cli;

import java.util.Optional;
import org.coilwright.sizing.Choice;
import org.coilwright.sizing.Chooser;
import org.coilwright.sizing.Question;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code coilwright choose}. */
final class ChooseCommand extends ConsoleCommand {
  ChooseCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    CommandSpec spec = CommandSpec.create();
    spec.usageMessage()
        .description(
            "Which contactor for this element? Current, derating, rating, life, breaker, wire,"
                + " coil.",
            "With FILE and --part load, air, mounting and the wire's run come from the netlist.",
            "An option that says what FILE already gives is refused; what FILE leaves open is"
                + " typed.")
        .footer(
            "",
            "Examples:",
            "  coilwright choose --power 9kW --voltage 400V --phases 3 --connection star --air"
                + " 50C",
            "  coilwright choose --power 4.5kW --voltage 240V --phases split --practice nec",
            "  coilwright choose --power 3kW --table",
            "  coilwright choose boiler.yaml --part Q1");
    ChooseOptions.declare(spec);
    return spec;
  }

  @Override
  int run(ParseResult parsed) {
    Tables tables = Tables.load();
    try {
      ChooseOptions typed = new ChooseOptions(parsed);
      return typed.file().isEmpty()
          ? answer(typed, ChooseQuestion.of(typed, tables), Optional.empty(), tables)
          : fromFile(typed, tables);
    } catch (ChooseOptions.Refused refused) {
      console().err().println("coilwright: " + Lines.harmless(refused.sentence()));
      console().err().println("Try:   coilwright choose --help");
      return Exit.UNUSABLE;
    }
  }

  private int fromFile(ChooseOptions typed, Tables tables) throws ChooseOptions.Refused {
    Optional<Study> study = study(typed.file(), tables);
    if (study.isEmpty()) {
      return Exit.UNUSABLE;
    }
    Question question = ChooseFromFile.of(study.get(), typed, tables);
    // the part in the file is judged in the air that was asked about
    Optional<Study> there =
        typed
            .typedAir()
            .map(air -> Study.of(study.get().circuit().in(air), tables))
            .or(() -> study);
    return answer(typed, question, there, tables);
  }

  private int answer(ChooseOptions typed, Question question, Optional<Study> study, Tables tables) {
    if (typed.asTable()) {
      console().out().print(ChooseText.table(question, tables));
      return Exit.NOTHING_FOUND;
    }
    Choice answer = Chooser.answer(question, tables);
    Choice choice =
        study.map(s -> PartInFile.judged(answer, typed.part(), s, tables)).orElse(answer);
    console()
        .out()
        .print(
            switch (typed.form()) {
              case TEXT -> ChooseText.of(choice, outStyle());
              case JSON -> ChooseJson.of(choice);
            });
    return choice.fits() ? Exit.NOTHING_FOUND : Exit.UNUSABLE;
  }
}
