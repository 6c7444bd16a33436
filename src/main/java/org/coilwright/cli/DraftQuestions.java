package org.coilwright.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Asks for what a draft needs, one line each. A script may answer through a pipe; what it answers
 * wrongly is not asked twice.
 */
final class DraftQuestions {
  /**
   * One question.
   *
   * @param option the option that says the same
   * @param asks what is asked
   * @param usual what Enter takes; empty if it has to be answered, {@code -} leaves it out
   * @param hint what it is and where to read it
   */
  private record Question(String option, String asks, String usual, String hint) {}

  private static final String LEFT_OUT = "-";

  private static final List<Question> ALL =
      List.of(
          new Question(
              "load",
              "Load: power, voltage, and star or delta if it has three lines",
              "",
              "From the element's nameplate: 3 kW, 230 V; or 9 kW, 400 V, star."),
          new Question(
              "vessel",
              "Vessel: litres, closed or open, relief valve",
              LEFT_OUT,
              "From the tank's plate: 300 l, closed, 90..95 C. Open means that water can escape"
                  + " freely."),
          new Question(
              "controller",
              "Controller: its auxiliary supply or none; contact and its ratings",
              "",
              "From its manual: 24 V DC 200 mA; contact 0.5 A at 30 V DC-13. Write the ratings as"
                  + " the manual words them; without a supply: none; contact 5 A 250 V AC."),
          new Question("practice", "Practice, iec or nec", "iec", "nec is North America."),
          new Question(
              "mains",
              "Mains: phases, voltage, earthing, fault current, loop impedance",
              LEFT_OUT,
              "As far as you know them: 3 phases, 400 V, TN-S, 3 kA, 0.35 ohm. From the utility,"
                  + " or measured at the board."),
          new Question(
              "air",
              "Hottest air around the devices",
              "40 C",
              "In their box on a summer afternoon, not in the room."),
          new Question(
              "board-to-box",
              "Cable from the board to the box",
              "1 m",
              "One way, along the cable."),
          new Question(
              "box-to-load", "Cable from the box to the load", "1 m", "One way, along the cable."),
          new Question(
              "controller-to-box",
              "Cable from the controller to the box",
              "1 m",
              "One way, along the cable."),
          new Question(
              "plant",
              "Plant: peak, base, largest step, battery",
              LEFT_OUT,
              "For the switching settings: peak 10 kW, base 350 W, step 7 kW, battery 10 kWh,"
                  + " discharge 5 kW, charge 5 kW, settles 6 s, floor 10 %. Each is in the"
                  + " inverter's manual; the step is the largest other load that can stop at"
                  + " once."));

  /** What a line that cannot be used ends with. */
  static final class NoAnswer extends Exception {
    private static final long serialVersionUID = 1L;

    NoAnswer(String sentence) {
      super(sentence);
    }

    String sentence() {
      return String.valueOf(getMessage());
    }
  }

  /** Says whether what was answered so far can be read; if not, why. */
  @FunctionalInterface
  interface Check {
    Optional<String> trouble(Map<String, String> typed);
  }

  private final Console console;
  private final BufferedReader in;

  DraftQuestions(Console console, BufferedReader in) {
    this.console = console;
    this.in = in;
  }

  /**
   * Asks for what was not typed.
   *
   * @param given what was typed already, by option
   * @return all of it
   */
  Map<String, String> ask(Map<String, String> given, Check check) throws IOException, NoAnswer {
    Map<String, String> all = new LinkedHashMap<>(given);
    boolean person = console.terminals().contains("in");
    console.err().println("Enter takes what stands in brackets, ? explains.");
    for (Question question : ALL) {
      while (!all.containsKey(question.option())) {
        String answer = answered(question);
        if (answer.equals(LEFT_OUT)) {
          break;
        }
        all.put(question.option(), answer);
        Optional<String> trouble = check.trouble(all);
        if (trouble.isPresent()) {
          if (!person) {
            throw new NoAnswer(trouble.get());
          }
          console.err().println(Lines.harmless(trouble.get()));
          all.remove(question.option());
        }
      }
    }
    return all;
  }

  private String answered(Question question) throws IOException, NoAnswer {
    while (true) {
      String usual =
          question.usual().isEmpty()
              ? ""
              : question.usual().equals(LEFT_OUT) ? " [not known]" : " [" + question.usual() + "]";
      console.err().print(question.asks() + usual + ": ");
      console.err().flush();
      String line = in.readLine();
      String answer = line == null ? "" : line.strip();
      if (answer.equals("?")) {
        console.err().println("  " + question.hint());
      } else if (!answer.isEmpty()) {
        return answer;
      } else if (!question.usual().isEmpty()) {
        if (line == null) {
          console.err().println();
        }
        return question.usual();
      } else if (line == null) {
        throw new NoAnswer("No answer to \"%s\". %s".formatted(question.asks(), question.hint()));
      } else {
        console.err().println("  This has to be answered. " + question.hint());
      }
    }
  }
}
