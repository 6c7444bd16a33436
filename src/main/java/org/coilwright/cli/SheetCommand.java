package org.coilwright.cli;

import java.util.Optional;
import org.coilwright.pdf.Look;
import org.coilwright.pdf.Returned;

/** A command that takes a PDF which coilwright wrote and others may have changed. */
abstract class SheetCommand extends ConsoleCommand {
  SheetCommand(Console console) {
    super(console);
  }

  /** A sheet with what was made once more from it. */
  @SuppressWarnings("ArrayRecordComponent") // handed on, never compared
  record Sheet(byte[] bytes, Returned.Sheet returned, Look look, Remade remade) {}

  /** Opens the sheet, or says why it cannot be used. */
  Optional<Sheet> open(String file) {
    return open(file, SheetFile.open(file, console().in()));
  }

  /** The same with a file that is open already. */
  Optional<Sheet> open(String file, SheetFile.Opened opened) {
    if (opened.returned() instanceof Returned.Unusable unusable) {
      refuse(file, unusable.what(), unusable.remedy());
    } else if (opened.returned() instanceof Returned.Sheet returned) {
      Look look = Look.of(opened.bytes());
      Remade.Outcome outcome = Remade.from(returned, look);
      if (outcome instanceof Remade.Made made) {
        return Optional.of(new Sheet(opened.bytes(), returned, look, made.remade()));
      } else if (outcome instanceof Remade.Refused refused) {
        refuse(file, refused.what(), refused.remedy());
      } else if (outcome instanceof Remade.Unreadable unreadable) {
        tell(unreadable.unusable());
        refuse(file, "its netlist cannot be read by this coilwright", "see above");
      }
    }
    return Optional.empty();
  }

  /** Says that a sheet cannot be used. Both without a full stop. */
  void refuse(String file, String what, String remedy) {
    String name = file.equals(InputFile.STDIN) ? "standard input" : file;
    StringBuilder out = new StringBuilder();
    out.append(errStyle().strong(Lines.harmless(name))).append('\n');
    Lines.wrap(out, "      ", what + ".", errStyle().width());
    Lines.wrap(out, "      Do:    ", remedy + ".", errStyle().width());
    out.append("Nothing was judged.\n");
    console().err().print(out);
  }
}
