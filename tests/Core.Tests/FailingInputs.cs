using System;
using System.Collections.Generic;
using static StarterCtl.Core.Tests.Failure;

namespace StarterCtl.Core.Tests;

/// <summary>How every input can fail, and what is read then.</summary>
internal static class FailingInputs
{
    private delegate void Put(Readings readings, Func<float, float> change);

    internal static IEnumerable<FailingInput> All()
    {
        foreach (FailingInput cell in Analogue(Input.SupplyVolts, "V", (r, f) => r.SupplyVolts = f(r.SupplyVolts), 0f, 510f, -30f, -20f, 20f, 400f)) yield return cell;
        foreach (FailingInput cell in Analogue(Input.ArmatureAmps, "A", (r, f) => r.ArmatureAmps = f(r.ArmatureAmps), 0f, 1200f, 50f, 100f, 50f, 900f)) yield return cell;
        foreach (FailingInput cell in Analogue(Input.Speed, "rad/s", (r, f) => r.SpeedRadPerSec = f(r.SpeedRadPerSec), float.NaN, 0f, 10f, -10f, 5f, 110f)) yield return cell;
        foreach (FailingInput cell in Analogue(Input.FieldAmps, "A", (r, f) => r.FieldAmps = f(r.FieldAmps), 0f, 10f, 1f, 1f, 1f, 0f)) yield return cell;
        foreach (FailingInput cell in Analogue(Input.ResistorTemperature, "degC", (r, f) => r.ResistorCelsius = f(r.ResistorCelsius), 2001f, -200f, -50f, -20f, 20f, 300f)) yield return cell;
        foreach (FailingInput cell in Contact(Input.LineContact, (r, f) => r.LineClosed = On(f, r.LineClosed))) yield return cell;
        foreach (FailingInput cell in Contact(Input.StageContact, (r, f) => r.StagesClosed = (r.StagesClosed & ~1) | (On(f, (r.StagesClosed & 1) != 0) ? 1 : 0))) yield return cell;
        foreach (FailingInput cell in Contact(Input.BrakeContact, (r, f) => r.BrakeClosed = On(f, r.BrakeClosed))) yield return cell;
        foreach (FailingInput cell in Contact(Input.FieldContact, (r, f) => r.FieldClosed = On(f, r.FieldClosed))) yield return cell;
        foreach (FailingInput cell in Contact(Input.Start, (r, f) => r.StartPressed = On(f, r.StartPressed))) yield return cell;
        foreach (FailingInput cell in Contact(Input.Stop, (r, f) => r.StopPressed = !On(f, !r.StopPressed))) yield return cell;
        foreach (FailingInput cell in Contact(Input.Reset, (r, f) => r.ResetPressed = On(f, r.ResetPressed))) yield return cell;
        foreach (FailingInput cell in Contact(Input.EmergencyStop, (r, f) => r.EmergencyStop = !On(f, !r.EmergencyStop))) yield return cell;
        foreach (FailingInput cell in Contact(Input.Permissive, (r, f) => r.Permissives = On(f, r.Permissives == 3) ? 3 : 2)) yield return cell;
        foreach (FailingInput cell in TickTimes()) yield return cell;
    }

    private static IEnumerable<FailingInput> Analogue(Input input, string unit, Put put, float open, float shorted, float offset, float perSecond, float noise, float spike)
    {
        // A pick-up without a wire is found out by the board.
        if (float.IsNaN(open)) yield return Cell(input, OpenWire, "not valid", rig => rig.Wiring = (r, _) => r.SpeedValid = false);
        else yield return Cell(input, OpenWire, $"{open} {unit}", Fails(put, () => (_, _) => open));
        yield return Cell(input, Short, $"{shorted} {unit}", Fails(put, () => (_, _) => shorted));
        yield return Cell(input, Stuck, "the value of the moment", Fails(put, Failures.Frozen));
        yield return Cell(input, Offset, $"{Signed(offset)} {unit}", Fails(put, () => (truth, _) => truth + offset));
        yield return Cell(input, Drift, $"{Signed(perSecond)} {unit} in every second", Fails(put, () => (truth, ms) => truth + perSecond * ms * 0.001f));
        yield return Cell(input, Noise, $"up to {noise} {unit} either way", Fails(put, () => Failures.Noisy(noise)));
        yield return Cell(input, Late, "what was 100 ms before", Fails(put, () => Failures.Delayed(100)));
        yield return Cell(input, ImpossibleRate, $"{spike} {unit} for 1 ms in every 100", Fails(put, () => Failures.Spiking(spike)));
    }

    private static IEnumerable<FailingInput> Contact(Input input, Put put)
    {
        yield return Cell(input, OpenWire, "open", Fails(put, () => (_, _) => 0f));
        yield return Cell(input, Short, "closed", Fails(put, () => (_, _) => 1f));
        yield return Cell(input, Stuck, "as at the moment", Fails(put, Failures.Frozen));
        yield return Cell(input, Offset, "the wrong way round", Fails(put, () => (truth, _) => 1f - truth));
        yield return Cell(input, Drift, "open for longer and longer: 10 ms more in every 200", Fails(put, Failures.Worn));
        yield return Cell(input, Noise, "open or closed by chance", Fails(put, Failures.Chattering));
        yield return Cell(input, Late, "what was 50 ms before", Fails(put, () => Failures.Delayed(50)));
        yield return Cell(input, ImpossibleRate, "another on every tick", Fails(put, () => Failures.Toggling));
    }

    private static IEnumerable<FailingInput> TickTimes()
    {
        Func<float, int, float> noise = Failures.Noisy(1000f);
        yield return Cell(Input.TickTime, OpenWire, "0, the clock stands", rig => rig.Clock = _ => 0);
        yield return Cell(Input.TickTime, Short, "1 ms backwards", rig => rig.Clock = _ => -1000);
        yield return Cell(Input.TickTime, Stuck, "0.5 ms, whatever passes", rig => rig.Clock = _ => 500);
        yield return Cell(Input.TickTime, Offset, "0.2 ms too much", rig => rig.Clock = _ => 1200);
        yield return Cell(Input.TickTime, Drift, "2 ms more in every second", rig => rig.Clock = ms => 1000 + 2 * ms);
        yield return Cell(Input.TickTime, Noise, "0 to 2 ms by chance", rig => rig.Clock = ms => (int)noise(1000f, ms));
        yield return Cell(Input.TickTime, Late, "6 ms once in every 100", rig => rig.Clock = ms => ms % 100 == 99 ? 6000 : 1000);
        yield return Cell(Input.TickTime, ImpossibleRate, "hours", rig => rig.Clock = _ => int.MaxValue);
    }

    private static FailingInput Cell(Input input, Failure failure, string reads, Action<ReactionRig> fail) => new(input, failure, reads, fail);

    private static Action<ReactionRig> Fails(Put put, Func<Func<float, int, float>> failure) => rig =>
    {
        Func<float, int, float> failed = failure();
        rig.Wiring = (readings, ms) => put(readings, truth => failed(truth, ms));
    };

    private static bool On(Func<float, float> change, bool truth) => change(truth ? 1f : 0f) > 0.5f;

    private static string Signed(float number) => number > 0f ? $"+{number}" : $"{number}";
}
