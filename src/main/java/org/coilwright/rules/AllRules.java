package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.rule.Rule;
import org.coilwright.rule.Runner;
import org.coilwright.table.Tables;

/** Every rule there is, in the order in which they are explained and run. */
public final class AllRules {
  private AllRules() {}

  /** All rules on these tables. */
  public static List<Rule> of(Tables tables) {
    List<Rule> all = new ArrayList<>();
    PowerSides sides = new PowerSides(tables);

    // wiring
    all.add(new WiringLooseEnd(tables));
    all.add(new WiringReservedPin(tables));
    all.add(new WiringRepeated(tables));
    all.add(new WiringCrowdedTerminal(tables));
    all.add(new WiringSelfJoined(tables));
    all.add(new WiringShortCircuit(tables));
    all.add(new WiringUnusedPart(tables));
    all.add(new WiringIntentDiffers(tables));
    all.add(new WiringNoSteadyState(tables));
    all.add(new WiringTwoSteadyStates(tables));
    all.add(new WiringSneakPath(tables));

    // coil
    all.add(new CoilWrongCurrentKind(tables));
    all.add(new CoilReversed(tables));
    all.add(new CoilNeverOn(tables));
    all.add(new CoilAlwaysOn(tables));
    all.add(new CoilHalfPulled(tables));
    all.add(new CoilTooLow(tables));
    all.add(new CoilTooHigh(tables));
    all.add(new CoilWontRelease(tables));
    all.add(new CoilLineTooLong(tables));

    // drive
    all.add(new DriveVoltage(tables));
    all.add(new DriveCurrent(tables));
    all.add(new DriveInrush(tables));
    all.add(new DriveInductiveBreak(tables));
    all.add(new DriveBelowLeastLoad(tables));

    // supply
    all.add(new SupplyUnfed(tables));
    all.add(new SupplyWrongVoltage(tables));
    all.add(new SupplyRipple(tables));
    all.add(new SupplyOverloaded(sides));
    all.add(new SupplyInrush(tables));
    all.add(new SupplyUnfused(tables));

    // suppression
    all.add(new SuppressionMissing(tables));
    all.add(new SuppressionReversed(tables));
    all.add(new SuppressionDiodeOnAc(tables));
    all.add(new SuppressionSlowRelease(tables));
    all.add(new SuppressionUnderrated(tables));

    // separation
    all.add(new SeparationMainsMeetsElv(tables));
    all.add(new SeparationSharedRun(tables));
    all.add(new SeparationSharedDevice(tables));
    all.add(new SeparationRelayInsulation(tables));
    all.add(new SeparationElvEarthed(tables));
    all.add(new SeparationElvTooHigh(tables));
    all.add(new SeparationInsulationVoltage(tables));

    // poles
    all.add(new PolesLoadNotSwitched(tables));
    all.add(new PolesNeutralOnly(tables));
    all.add(new PolesLineLeftOn(tables));
    all.add(new PolesDevicesApart(tables));
    all.add(new PolesProtectiveConductorSwitched(tables));
    all.add(new PolesLineRepeated(tables));
    all.add(new PolesLineMissing(tables));
    all.add(new PolesNeutralMissing(tables));
    all.add(new PolesEarthMissing(tables));
    all.add(new PolesEarthTooThin(sides));
    all.add(new PolesNeutralCrossed(tables));
    all.add(new PolesNeutralBorrowed(tables));
    all.add(new PolesNeutralShared(tables));
    all.add(new PolesNeutralEarthed(tables));

    // contactor
    all.add(new ContactorCategory(sides));
    all.add(new ContactorCurrent(sides));
    all.add(new ContactorVoltage(sides));
    all.add(new ContactorMaking(sides));
    all.add(new ContactorShortLife(sides));
    all.add(new ContactorBackupMissing(sides));
    all.add(new ContactorBackupTooLarge(sides));

    // conductor
    all.add(new ConductorUnprotected(sides));
    all.add(new ConductorOverloaded(sides));
    all.add(new ConductorVoltageDrop(sides));
    all.add(new ConductorShortCircuit(sides));
    all.add(new ConductorNeutralOverloaded(sides));
    all.add(new ConductorSizeMissing(sides));
    all.add(new ConductorColour(tables));

    // protection
    all.add(new ProtectionMissing(sides));
    all.add(new ProtectionBreakingCapacity(tables));
    all.add(new ProtectionLoadExceedsDevice(sides));
    all.add(new ProtectionCoilsExceedDevice(sides));
    all.add(new ProtectionDeviceTooWarm(sides));
    all.add(new ProtectionExceedsLoad(sides));
    all.add(new ProtectionDisconnectionTime(sides));
    all.add(new ProtectionRcdMissing(sides));
    all.add(new ProtectionRcdTooCoarse(sides));
    all.add(new ProtectionRcdKind(tables));
    all.add(new ProtectionRcdInTnC(tables));
    all.add(new ProtectionSourceBehindRcd(tables));
    all.add(new ProtectionRcdBypassed(tables));
    all.add(new ProtectionIslandEarthFault(sides));
    all.add(new ProtectionIslandNoBond(sides));
    all.add(new ProtectionIslandShortCircuit(sides));

    // load
    all.add(new LoadLimitWrongForm(tables));
    all.add(new LoadNoCutOut(tables));
    all.add(new LoadNoThermostat(tables));
    all.add(new LoadLimitSetting(tables));
    all.add(new LoadWaterTooCool(tables));
    all.add(new LoadNoOverload(sides));
    all.add(new LoadWrongVoltage(sides));
    all.add(new LoadTogether(sides));
    all.add(new LoadUndivided(sides));
    all.add(new LoadExceedsIsland(sides));

    // control
    all.add(new ControlPartOverloaded(tables));

    // enclosure
    all.add(new EnclosureTooWarm(tables));

    // behaviour
    all.add(new BehaviourConfirmTooShort(tables));
    all.add(new BehaviourStartBelowLoad(tables));
    all.add(new BehaviourCycles(tables));
    all.add(new BehaviourBatteryDrain(tables));
    all.add(new BehaviourDailyLimit(tables));
    all.add(new BehaviourWindowForcesOn(tables));
    all.add(new BehaviourWear(tables));
    all.add(new BehaviourFromBattery(tables));
    all.add(new BehaviourIsland(sides));

    // fault
    all.add(new FaultWeldsOn(tables));
    all.add(new FaultEarthStartsLoad(tables));
    all.add(new FaultBreakHoldsOn(tables));
    all.add(new FaultCrossesSeparation(tables));

    // record
    all.add(new RecordFiguresContradict(tables));
    all.add(new RecordNotChecked());
    all.add(new RecordAcceptedNothing());

    return List.copyOf(all);
  }

  /** A runner for all of them. */
  public static Runner runner(Tables tables) {
    return new Runner(of(tables), RecordNotChecked.FACTS, RecordAcceptedNothing.FACTS);
  }

  /** A runner for some of them, for whoever asks the same netlist often before asking all. */
  public static Runner runner(List<Rule> some) {
    return new Runner(some, RecordNotChecked.FACTS, RecordAcceptedNothing.FACTS);
  }
}
