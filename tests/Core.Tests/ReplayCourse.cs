using StarterCtl.Core.Tests.Invariants;

namespace StarterCtl.Core.Tests;

/// <summary>
/// Half a million ticks of pseudo-random input for the plain starter and as many for one with everything switched on, and the one number that all
/// that is decided in them comes to. Written with what the board's runtime has: <c>tests/Interpreter</c> compiles it for the board.
/// </summary>
internal static class ReplayCourse
{
    internal const int Expected = 0x43390ACF;

    private const int TicksEach = 500_000;

    internal static int Run(uint seed)
    {
        Settings plain = Chk01.Settings();
        plain.BrushDropVolts = 1.5f;
        plain.LockoutAmps = 750f;
        plain.ConfirmMicroseconds = 2000;
        plain.MinimumDwellMicroseconds = 3000;
        Fnv sum = new Fnv();
        Run(seed, plain, sum);
        Run(seed, BootCourse.Settings(), sum);
        return sum.Sum;
    }

    private static void Run(uint seed, Settings settings, Fnv sum)
    {
        Controller controller = new Controller(settings);
        Nonsense nonsense = new Nonsense(settings, 1);
        Readings readings = new Readings();
        Outputs outputs = new Outputs();
        uint number = seed;
        for (int tick = 0; tick < TicksEach; tick++)
        {
            number = unchecked(number * 1664525u + 1013904223u);
            nonsense.Next(number, readings, outputs);
            controller.Tick(nonsense.ElapsedMicroseconds, readings, outputs);
            Add(sum, controller, outputs);
        }
    }

    private static void Add(Fnv sum, Controller controller, Outputs outputs)
    {
        int lamps = (outputs.ReadyLamp ? 1 : 0) | (outputs.RunningLamp ? 2 : 0) | (outputs.TrippedLamp ? 4 : 0);
        sum.Add((outputs.CloseLine ? 1 : 0) | (outputs.CloseBrake ? 2 : 0) | (outputs.CloseField ? 4 : 0));
        sum.Add(outputs.CloseStages);
        sum.Add(lamps);
        sum.Add((int)controller.Phase);
        sum.Add(controller.Stage);
        sum.Add((int)controller.Why.Reason);
        sum.Add(controller.Why.Quantity);
        sum.Add(controller.Why.Limit);
        sum.Add(controller.Why.MicrosecondsLeft);
        sum.Add((int)controller.Fault.Id);
    }
}
