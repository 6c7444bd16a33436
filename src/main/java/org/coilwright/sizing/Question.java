package org.coilwright.sizing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.quantity.Rating;
import org.coilwright.table.Cited;

/**
 * Which contactor for this load, in this place?
 *
 * @param title what is asked, in words
 * @param nominal A at rated power and nominal voltage
 * @param worst A at the highest voltage and power
 * @param worstWords where {@code worst} is reached
 * @param volts nominal, line to line with several lines
 * @param wires conductors that carry the load's current: 2 or 3
 * @param poles poles that take every line, and the neutral of a two-wire load, off it
 * @param kind row word of the table of load categories
 * @param air °C around the contactor
 * @param ratedAir °C its rating holds to; empty: the standard's
 * @param startsPerDay empty if life is not asked
 * @param duty eight-hour or uninterrupted
 * @param method reference method of the cable; {@code lengthMetres} its length
 * @param core metal and insulation of the cable
 * @param loopOhms loop impedance of the mains, Ω
 * @param delta true for a load joined in delta
 * @param tt true for a mains whose earth is the ground alone
 * @param life cycles of one closing and one opening, at a current, from the data sheet
 * @param outputs the contacts that shall drive the coil, all of them in its way
 * @param coil its coil, if that is given; else one of a usual size
 * @param basis what {@code nominal} and {@code worst} rest on
 * @param appliance true for a single appliance, to which the upper limit of its device applies
 */
public record Question(
    String title,
    double nominal,
    double worst,
    String worstWords,
    double volts,
    int wires,
    int poles,
    String kind,
    double air,
    OptionalDouble ratedAir,
    boolean closeMounted,
    OptionalDouble altitude,
    double hertz,
    OptionalDouble startsPerDay,
    double years,
    boolean nec,
    String duty,
    String method,
    double wireAir,
    OptionalDouble lengthMetres,
    OptionalDouble faultAmps,
    Core core,
    OptionalDouble loopOhms,
    boolean delta,
    boolean tt,
    Optional<Rating> life,
    List<Output> outputs,
    Optional<Coil> coil,
    boolean appliance,
    List<Cited<?>> basis) {

  /**
   * A contact that shall drive the coil.
   *
   * @param name how it is spoken of: {@code the output}
   * @param rating current, and the voltage it is rated at; empty if none is written
   * @param category utilization category of the rating; empty text if it is not said
   */
  public record Output(String name, Optional<Rating> rating, String category) {}

  /**
   * The contactor's coil.
   *
   * @param volts nominal
   * @param direct true on direct voltage, where it draws the same while it pulls in and holds
   * @param holding VA while it holds, W on direct voltage; 0 if that is not written
   * @param pickUp VA while it pulls in; empty if it is not known
   */
  public record Coil(double volts, boolean direct, double holding, OptionalDouble pickUp) {}

  /** The same in other air. */
  public Question inAir(double celsius) {
    return with(nominal, worst, celsius, ratedAir, closeMounted);
  }

  /** The same with a gap on both sides. */
  public Question spaced() {
    return with(nominal, worst, air, ratedAir, false);
  }

  /** The same for a contactor whose rating holds in warmer air. */
  public Question ratedFor(double celsius) {
    return with(nominal, worst, air, OptionalDouble.of(celsius), closeMounted);
  }

  /** The same with a third of the power: a delta joined in star. */
  public Question inStar() {
    return with(nominal / 3, worst / 3, air, ratedAir, closeMounted);
  }

  private Question with(
      double amps, double atWorst, double celsius, OptionalDouble rated, boolean close) {
    return new Question(
        title,
        amps,
        atWorst,
        worstWords,
        volts,
        wires,
        poles,
        kind,
        celsius,
        rated,
        close,
        altitude,
        hertz,
        startsPerDay,
        years,
        nec,
        duty,
        method,
        wireAir,
        lengthMetres,
        faultAmps,
        core,
        loopOhms,
        delta,
        tt,
        life,
        outputs,
        coil,
        appliance,
        basis);
  }
}
