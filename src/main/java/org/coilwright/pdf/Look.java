package org.coilwright.pdf;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How a PDF looks to whoever opens it, as far as that tells whether it still is what was printed.
 *
 * @param pages in their order
 * @param places where each form field stands, by full name; only those that are on a page
 * @param redrawn true if the file asks the viewer to draw every field anew from its value
 */
public record Look(List<Page> pages, Map<String, List<Place>> places, boolean redrawn) {
  /** Copies them. */
  public Look {
    pages = List.copyOf(pages);
    places = Map.copyOf(places);
  }

  /** Looks. Never throws because of what the bytes hold: what cannot be read looks like nothing. */
  public static Look of(byte[] pdf) {
    return LookReader.read(pdf);
  }

  /**
   * A page without its form fields.
   *
   * @param drawn digest of what is drawn and with which fonts; two that look the same have the same
   * @param stated every netlist digest that is printed on it after "SHA-256", as far as printed
   * @param foreign kinds of annotation on it that are no form fields
   */
  public record Page(String drawn, List<String> stated, List<String> foreign) {
    /** Copies the lists. */
    public Page {
      stated = List.copyOf(stated);
      foreign = List.copyOf(foreign);
    }
  }

  /**
   * One place of a form field.
   *
   * @param page from 0
   * @param box its corners, in tenths of a point
   * @param hidden true if a viewer does not show it
   * @param shown what stands there, without blanks; empty if there is no appearance or it is none
   *     of text; for a box to tick, something if anything is drawn
   * @param readable false if letters are drawn there that cannot be told
   */
  public record Place(
      int page, List<Long> box, boolean hidden, Optional<String> shown, boolean readable) {
    /** Copies the list. */
    public Place {
      box = List.copyOf(box);
    }
  }
}
