namespace StarterCtl.Core.Tests;

/// <summary>
/// The fault-reaction matrix: what comes of each failure of each input where it meets the rig running, starting, ready, stopping
/// and tripped. A fault is followed by its deadline in ms; @ gives the highest current where it passed the permitted peak.
/// Blind is a failure that changes nothing the controller sees, and may hurt; harmless one that does not.
/// </summary>
internal static class ReactionTable
{
    internal const string Text = """
        SupplyVolts | OpenWire | SupplyLow 310 | SupplyLow 310 | refuses SupplyLow | refuses SupplyLow | refuses SupplyLow | A dead signal is taken for a dip: no cutout, then the line opens. A live-zero signal says so at once.
        SupplyVolts | Short | ReadingInvalid 1 | ReadingInvalid 1 | ReadingInvalid 1 | ReadingInvalid 1 | stays tripped | Out of its believable range: seen at once.
        SupplyVolts | Stuck | blind | blind | blind | blind | blind | The thresholds follow a voltage that is no more. Compare with a panel voltmeter.
        SupplyVolts | Offset | blind | Overcurrent 120 @1013 | Overcurrent 930 @1014 | blind | blind | Cutouts come early; within the 40 V of the disagreement nothing shows while running. Check the scale at commissioning; a hardware overcurrent device.
        SupplyVolts | Drift | BackEmfDisagreement 2410 | SectionDrifted 410 @743 | ContactDidNotOpen 1050 @907 | refuses SupplyLow | refuses SupplyLow | Seen once the current of a closing or the two back-EMFs differ enough; the contact named is the nearest explanation, not the cause.
        SupplyVolts | Noise | blind | blind @926 | ContactDidNotClose 1170 @930 | blind | blind | A cutout comes on the lowest of many readings. A filter ahead of the input; a confirm-time alone leaves the proof by current, which then trips falsely.
        SupplyVolts | Late | harmless | harmless | harmless | harmless | harmless | Harmless on a steady supply; in a dip the thresholds come 100 ms late.
        SupplyVolts | ImpossibleRate | harmless | harmless | no start | harmless | harmless | supply-high-time rides over it; a press of start that meets it is refused and must be made again.
        ArmatureAmps | OpenWire | blind | SectionDrifted 320 | ContactDidNotClose 300 | blind | blind | No overcurrent, no stall, no overload is seen. The hardware overcurrent device must act. The proof by current sees it at the next closing.
        ArmatureAmps | Short | Overcurrent 1 | Overcurrent 1 | Overcurrent 1 | Overcurrent 1 | stays tripped | Above the instantaneous trip: seen at once.
        ArmatureAmps | Stuck | blind | blind | ContactDidNotClose 300 | CurrentWhileOpen 1920 | blind | As with an open wire: the hardware overcurrent device must act. Seen at a closing from rest and once everything is open.
        ArmatureAmps | Offset | blind | blind | CurrentWhileOpen 110 | CurrentWhileOpen 1920 | stays tripped | Within the tolerance of the proof by current; seen once everything is open.
        ArmatureAmps | Drift | blind | blind | CurrentWhileOpen 210 | CurrentWhileOpen 1920 | stays tripped | Seen once everything is open. Check the zero at every inspection.
        ArmatureAmps | Noise | harmless | harmless | harmless | harmless | harmless | It averages out in the images of heat; an overcurrent is seen up to 50 A early or late.
        ArmatureAmps | Late | blind | ContactDidNotClose 320 | ContactDidNotClose 300 | blind | blind | An overcurrent is seen 100 ms late: the hardware overcurrent device is faster. A closing is judged by what was before it: a false trip.
        ArmatureAmps | ImpossibleRate | harmless | harmless | harmless | harmless | harmless | Below the instantaneous trip nothing acts on a single reading; above it a single reading trips.
        Speed | OpenWire | SpeedSignalLost 1 | SpeedSignalLost 1 | SpeedSignalLost 1 | SpeedSignalLost 1 | stays tripped | With speed-loss 0 and no time for it: seen at once.
        Speed | Short | BackEmfDisagreement 410 | BackEmfDisagreement 390 | BackEmfDisagreement 820 | blind | blind | Seen while the line is closed. A stop within those 400 ms does not brake: the shaft is taken to stand. Guard it until it does.
        Speed | Stuck | blind | BackEmfDisagreement 590 | BackEmfDisagreement 820 | BrakeDidNotFinish 2270 | blind | Seen once the true speed has changed by 16 rad/s. While it is steady nothing shows.
        Speed | Offset | blind | ContactDidNotOpen 160 @960 | ContactDidNotOpen 990 @959 | BrakeDidNotFinish 2270 | blind | Cutouts come early; the proof by current names the contact that would explain it. Within the 40 V of the disagreement nothing shows while running. Compare with a hand tachometer.
        Speed | Drift | BackEmfDisagreement 2010 | BackEmfDisagreement 2010 | refuses ShaftTurnsBackwards | refuses ShaftTurnsBackwards | refuses ShaftTurnsBackwards | Seen once it is 16 rad/s off. At rest it looks like a shaft that turns backwards.
        Speed | Noise | blind | blind @804 | blind @819 | refuses ShaftTurnsBackwards | refuses ShaftTurnsBackwards | A cutout comes on the highest of many readings. A confirm-time of several periods and a filter ahead of the input.
        Speed | Late | harmless | ContactDidNotClose 640 | ContactDidNotClose 1630 | harmless | harmless | A steady speed is the same 100 ms later. While it rises it reads low, which errs to the quiet side, but the proof by current trips falsely.
        Speed | ImpossibleRate | harmless | Overcurrent 20 @1288 | Overcurrent 320 @1335 | harmless | harmless | One reading is enough for a cutout while confirm-time is 0, as here: set it to several periods. The overcurrent that follows is seen; a hardware overcurrent device stands behind it.
        FieldAmps | OpenWire | FieldLost 30 | FieldLost 30 | NoField 1210 | FieldLost 30 | harmless | Seen while the field is needed; with the field off it is as it should be.
        FieldAmps | Short | blind | blind | blind | blind | blind | A field that is lost is not seen, and an unloaded motor runs away up to the overspeed trip. A field-loss relay in the coil circuit.
        FieldAmps | Stuck | blind | blind | NoField 1210 | blind | blind | As with a short: a field-loss relay in the coil circuit. Stuck at nothing it is seen at the next start.
        FieldAmps | Offset | harmless | harmless | harmless | harmless | harmless | A lost field would read 1 A, still below the 2 A that are needed.
        FieldAmps | Drift | blind | blind | blind | blind | blind | Once it reads 2 A too much a lost field is not seen. A field-loss relay in the coil circuit.
        FieldAmps | Noise | harmless | harmless | harmless | harmless | harmless | 5 A less 1 A is above the 2 A that are needed.
        FieldAmps | Late | harmless | harmless | harmless | harmless | harmless | A steady field is the same 100 ms later; its loss is seen as much later.
        FieldAmps | ImpossibleRate | harmless | harmless | harmless | harmless | harmless | trip-confirm-time rides over it.
        ResistorTemperature | OpenWire | ReadingInvalid 1 | ReadingInvalid 1 | ReadingInvalid 1 | ReadingInvalid 1 | stays tripped | A resistance thermometer with an open wire reads far too hot: seen at once.
        ResistorTemperature | Short | ReadingInvalid 1 | ReadingInvalid 1 | ReadingInvalid 1 | ReadingInvalid 1 | stays tripped | Below -100 degC: seen at once.
        ResistorTemperature | Stuck | blind | blind | blind | blind | blind | Only the image of the resistor still watches (resistor-energy). A thermostat in the coil circuit.
        ResistorTemperature | Offset | blind | blind | blind | blind | blind | Trips 50 degC too late. The image of the resistor still watches.
        ResistorTemperature | Drift | blind | blind | blind | blind | blind | Trips ever later. The image of the resistor still watches; a thermostat in the coil circuit.
        ResistorTemperature | Noise | harmless | harmless | harmless | harmless | harmless | 20 degC are small against the 350 degC of the trip.
        ResistorTemperature | Late | harmless | harmless | harmless | harmless | harmless | The resistor takes minutes.
        ResistorTemperature | ImpossibleRate | harmless | harmless | harmless | harmless | harmless | 300 degC are permitted; above 350 degC a single reading trips.
        LineContact | OpenWire | ContactDidNotClose 100 | ContactDidNotClose 100 | ContactDidNotClose 370 | ContactDidNotClose 100 | harmless | A line that is open says the same: seen at the next closing.
        LineContact | Short | blind | blind | ContactDidNotOpen 100 | ContactDidNotOpen 310 | stays tripped | It says what it should while the contact is closed; seen once it should be open.
        LineContact | Stuck | blind | blind | ContactDidNotClose 370 | ContactDidNotOpen 310 | blind | It says what it should until the contact moves.
        LineContact | Offset | ContactDidNotClose 100 | ContactDidNotClose 100 | ContactDidNotOpen 100 | ContactDidNotClose 100 | stays tripped | Wired to the other kind of contact: seen at once or within the contact time.
        LineContact | Drift | ContactDidNotClose 2100 | ContactDidNotClose 2100 | ContactDidNotClose 2100 | harmless | harmless | Seen once an opening lasts for the contact time. While the contact is open it says what it should.
        LineContact | Noise | blind | blind | blind | BrakeDidNotFinish 2320 | blind | Each tick on which it agrees starts the contact time anew, and chatter shorter than that is not seen while the contact is closed. A stop never proves it open: no braking. Listen to the contactor.
        LineContact | Late | harmless | harmless | harmless | harmless | harmless | 50 ms are within the contact time of 100 ms.
        LineContact | ImpossibleRate | blind | blind | blind | BrakeDidNotFinish 2310 | refuses LineNotOpen | As chatter: not seen while the contact is closed; a stop never proves it open, and a start may be refused.
        StageContact | OpenWire | ContactDidNotClose 100 | ContactDidNotClose 100 | ContactDidNotClose 1000 | ContactDidNotClose 100 | harmless | A stage that is open says the same: seen at the next cutout. The mirror contact in series with start shows a weld.
        StageContact | Short | blind | blind | ContactDidNotOpen 100 | ContactDidNotOpen 310 | stays tripped | It says what it should while the contact is closed; seen once it should be open.
        StageContact | Stuck | blind | blind | ContactDidNotClose 1000 | ContactDidNotOpen 310 | blind | It says what it should until the contact moves.
        StageContact | Offset | ContactDidNotClose 100 | ContactDidNotClose 100 | ContactDidNotOpen 100 | ContactDidNotClose 100 | stays tripped | Wired to the other kind of contact: seen at once or within the contact time.
        StageContact | Drift | ContactDidNotClose 2100 | ContactDidNotClose 2100 | ContactDidNotClose 2100 | harmless | harmless | Seen once an opening lasts for the contact time. While the contact is open it says what it should.
        StageContact | Noise | blind | blind | ContactDidNotOpen 270 | BrakeDidNotFinish 2320 | blind | Each tick on which it agrees starts the contact time anew, and chatter shorter than that is not seen while the contact is closed. A stop never proves it open: no braking. Listen to the contactor.
        StageContact | Late | harmless | harmless | harmless | harmless | harmless | 50 ms are within the contact time of 100 ms.
        StageContact | ImpossibleRate | blind | blind | ContactDidNotOpen 270 | BrakeDidNotFinish 2310 | refuses StageNotOpen | As chatter: not seen while the contact is closed; a stop never proves it open, and a start may be refused.
        BrakeContact | OpenWire | harmless | harmless | harmless | ContactDidNotClose 370 | harmless | A brake that is open says the same: seen at the next braking. A welded brake is not: a mirror contact in series with start.
        BrakeContact | Short | ContactDidNotOpen 1 | ContactDidNotOpen 1 | ContactDidNotOpen 110 | ContactDidNotOpen 1 | stays tripped | The line opens at once for it.
        BrakeContact | Stuck | harmless | harmless | harmless | ContactDidNotClose 370 | harmless | As with an open wire: seen at the next braking.
        BrakeContact | Offset | ContactDidNotOpen 1 | ContactDidNotOpen 1 | ContactDidNotOpen 110 | ContactDidNotOpen 1 | stays tripped | Wired to the other kind of contact: seen at once.
        BrakeContact | Drift | harmless | harmless | harmless | harmless | harmless | Only while it brakes is it closed, and then it did not open for as long as the contact time.
        BrakeContact | Noise | ContactDidNotOpen 10 | ContactDidNotOpen 10 | ContactDidNotOpen 270 | ContactDidNotOpen 10 | blind | The line opens on the first tick that says closed. Open and unbraked it disagrees for too short a time to trip.
        BrakeContact | Late | harmless | harmless | harmless | harmless | harmless | 50 ms are within the contact time of 100 ms.
        BrakeContact | ImpossibleRate | ContactDidNotOpen 10 | ContactDidNotOpen 10 | ContactDidNotOpen 270 | ContactDidNotOpen 10 | refuses BrakeNotOpen | The line opens on the first tick that says closed. Open and unbraked it disagrees for too short a time to trip.
        FieldContact | OpenWire | ContactDidNotClose 110 | ContactDidNotClose 110 | ContactDidNotClose 310 | ContactDidNotClose 110 | harmless | With the field off it is as it should be; seen within the contact time otherwise.
        FieldContact | Short | blind | blind | ContactDidNotOpen 110 | ContactDidNotOpen 1930 | stays tripped | It says what it should while the field is on. The field current is the second proof.
        FieldContact | Stuck | blind | blind | ContactDidNotClose 310 | ContactDidNotOpen 1930 | blind | It says what it should until the contact moves. The field current is the second proof.
        FieldContact | Offset | ContactDidNotClose 110 | ContactDidNotClose 110 | ContactDidNotOpen 110 | ContactDidNotClose 110 | stays tripped | Wired to the other kind of contact: seen within the contact time.
        FieldContact | Drift | ContactDidNotClose 2310 | ContactDidNotClose 2310 | ContactDidNotClose 2310 | harmless | harmless | Seen once an opening lasts for the contact time. With the field off it is as it should be.
        FieldContact | Noise | blind | blind | NoField 1210 | blind | blind | Chatter shorter than the contact time is not seen while running; a start waits for the contact to hold and gives up. The field current is the second proof.
        FieldContact | Late | harmless | harmless | harmless | harmless | harmless | 50 ms are within the contact time of 100 ms.
        FieldContact | ImpossibleRate | blind | blind | NoField 1210 | blind | blind | As chatter: the field current is the second proof.
        Start | OpenWire | harmless | harmless | no start | harmless | harmless | No start.
        Start | Short | harmless | harmless | blind | refuses StartHeld | stays tripped | Where it comes while ready it is a press: **the motor starts**. Later it counts as held: no reset, no second start. Two conductors apart from any that is live; a permissive behind a key.
        Start | Stuck | harmless | harmless | no start | harmless | harmless | No start.
        Start | Offset | harmless | harmless | blind | refuses StartHeld | stays tripped | Wired to the other kind of contact: while ready **the motor starts** as soon as the wire is connected. Connect with the line isolated.
        Start | Drift | harmless | harmless | harmless | harmless | harmless | A press is long enough.
        Start | Noise | harmless | harmless | blind | runs again | runs again | Every edge is a press: **the motor starts by itself**, again behind a stop and, where reset is pressed, behind a trip. Shielded cable, filtered input, a permissive behind a key.
        Start | Late | harmless | harmless | harmless | harmless | harmless | The start comes 50 ms later.
        Start | ImpossibleRate | harmless | harmless | blind | runs again | runs again | As chatter: **the motor starts by itself**. Filtered input, a permissive behind a key.
        Stop | OpenWire | stops 1 | stops 1 | refuses StopPressed | refuses StopPressed | refuses StopPressed | A broken wire stops the motor: that is what the normally closed contact is for.
        Stop | Short | blind | blind | harmless | runs again | harmless | **The stop button does nothing.** The emergency stop, hard-wired, does. Two conductors apart from each other; try the stop at every inspection.
        Stop | Stuck | blind | blind | harmless | runs again | harmless | As with a short: the emergency stop does what it should.
        Stop | Offset | stops 1 | stops 1 | refuses StopPressed | refuses StopPressed | refuses StopPressed | Wired to the other kind of contact: it stops, and cannot be started.
        Stop | Drift | stops 210 | stops 210 | no start | harmless | harmless | The first opening stops. A press of start that meets an opening is refused and must be made again.
        Stop | Noise | stops 1 | stops 1 | refuses StopPressed | refuses StopPressed | refuses StopPressed | The first opening stops.
        Stop | Late | stops 1060 | stops 1060 | harmless | harmless | harmless | The stop comes 50 ms later.
        Stop | ImpossibleRate | stops 1 | stops 1 | no start | harmless | harmless | The first opening stops. A press of start that meets an opening is refused.
        Reset | OpenWire | harmless | harmless | harmless | harmless | stays tripped | No reset: the trip stays. Elsewhere it does nothing.
        Reset | Short | harmless | harmless | harmless | harmless | blind | Where it comes behind a trip it is a press: it clears a trip whose cause has gone, and starts nothing. Held, it clears nothing more.
        Reset | Stuck | harmless | harmless | harmless | harmless | stays tripped | No reset: the trip stays. Elsewhere it does nothing.
        Reset | Offset | harmless | harmless | harmless | harmless | blind | Wired to the other kind of contact: letting go is the press. It starts nothing.
        Reset | Drift | harmless | harmless | harmless | harmless | harmless | A press is long enough.
        Reset | Noise | harmless | harmless | harmless | harmless | blind | Every edge is a press: each trip whose cause has gone clears itself. It starts nothing. Filtered input; the event log keeps the trips.
        Reset | Late | harmless | harmless | harmless | harmless | harmless | The reset comes 50 ms later.
        Reset | ImpossibleRate | harmless | harmless | harmless | harmless | blind | As chatter: each trip whose cause has gone clears itself. It starts nothing.
        EmergencyStop | OpenWire | EmergencyStop 1 | EmergencyStop 1 | EmergencyStop 1 | EmergencyStop 1 | stays tripped | A broken wire is an emergency stop.
        EmergencyStop | Short | blind | blind | blind | blind | blind | The controller does not know. **The hard-wired chain drops every coil whatever it does**, and contacts then did not close. Two contacts of the relay, in different conductors; try it at every inspection.
        EmergencyStop | Stuck | blind | blind | blind | blind | blind | As with a short: the hard-wired chain drops every coil.
        EmergencyStop | Offset | EmergencyStop 1 | EmergencyStop 1 | EmergencyStop 1 | EmergencyStop 1 | stays tripped | Wired to the other kind of contact: tripped until that is put right.
        EmergencyStop | Drift | EmergencyStop 210 | EmergencyStop 210 | EmergencyStop 210 | EmergencyStop 210 | stays tripped | The first opening trips.
        EmergencyStop | Noise | EmergencyStop 1 | EmergencyStop 1 | EmergencyStop 1 | EmergencyStop 1 | stays tripped | The first opening trips.
        EmergencyStop | Late | EmergencyStop 1060 | EmergencyStop 1060 | harmless | harmless | harmless | The trip comes 50 ms later; the hard-wired chain has dropped the coils by then.
        EmergencyStop | ImpossibleRate | EmergencyStop 1 | EmergencyStop 1 | EmergencyStop 1 | EmergencyStop 1 | stays tripped | The first opening trips.
        Permissive | OpenWire | PermissiveLost 30 | PermissiveLost 30 | refuses PermissiveMissing | PermissiveLost 30 | refuses PermissiveMissing | A broken wire withdraws it. A stop that is under way is not disturbed.
        Permissive | Short | blind | blind | blind | blind | blind | What stands behind the input is not watched. Where people or the motor depend on it, it belongs into the coil circuit.
        Permissive | Stuck | blind | blind | blind | blind | blind | As with a short: what people or the motor depend on belongs into the coil circuit.
        Permissive | Offset | PermissiveLost 30 | PermissiveLost 30 | refuses PermissiveMissing | PermissiveLost 30 | refuses PermissiveMissing | Wired to the other kind of contact: refused while it is given.
        Permissive | Drift | PermissiveLost 630 | PermissiveLost 630 | no start | harmless | harmless | Seen once a withdrawal lasts for trip-confirm-time. A press of start that meets one is refused.
        Permissive | Noise | blind | blind | refuses PermissiveMissing | refuses PermissiveMissing | refuses PermissiveMissing | Withdrawn for a shorter time than trip-confirm-time it is not seen while running; a start is refused by chance.
        Permissive | Late | PermissiveLost 1080 | PermissiveLost 1080 | harmless | harmless | harmless | The withdrawal is seen 50 ms later.
        Permissive | ImpossibleRate | blind | blind | no start | blind | blind | Withdrawn for a shorter time than trip-confirm-time it is not seen; a start may be refused.
        TickTime | OpenWire | blind | gets nowhere | gets nowhere | gets nowhere | blind | All times stand still: what waits for a time never comes, and no fault that needs one. Overcurrent, bad readings, stop and emergency stop still act. A watchdog with its own clock that opens the coil circuit.
        TickTime | Short | blind | gets nowhere | gets nowhere | gets nowhere | blind | Counts as 0, as a clock that stands: a watchdog with its own clock.
        TickTime | Stuck | blind | blind | blind | blind | blind | Every time takes twice as long. A watchdog with its own clock, with a window.
        TickTime | Offset | harmless | harmless | harmless | harmless | harmless | Every time ends a sixth early.
        TickTime | Drift | LoopLate 2010 | LoopLate 2010 | LoopLate 2010 | BrakeDidNotFinish 1100 | harmless | Seen once a period passes maximum-tick; times end early until then, and braking may be given up. With every coil off it does not matter.
        TickTime | Noise | harmless | harmless | harmless | harmless | harmless | Times end within a tick of where they should.
        TickTime | Late | LoopLate 100 | LoopLate 100 | LoopLate 300 | LoopLate 100 | harmless | One late period trips while a coil is on. With every coil off it does not matter.
        TickTime | ImpossibleRate | LoopLate 1 | Overload 1 | LoopLate 210 | LoopLate 1 | harmless | Taken as 1000 s at most. In a start the image of the motor takes the current for as long and is named first.
        """;
}
