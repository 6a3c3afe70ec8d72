namespace StarterCtl.Core;

/// <summary>
/// The controller against a built-in course of inputs: a board whose interpreter, compiler or memory does anything else than
/// the desk's comes to another number, and must not start a motor.
/// </summary>
public static class BootCheck
{
    /// <summary>What the course comes to. Changes only when the controller's behaviour does.</summary>
    public const int Expected = 0x5D6C5940;

    private const int Ticks = 3000;

    /// <summary>Runs the course. Allocates: for power-up, not for the loop.</summary>
    /// <returns>True if this runtime runs the controller as the desk does.</returns>
    public static bool Passes() => Run() == Expected;

    /// <summary>Runs the course.</summary>
    /// <returns>Its number, over every output, phase, stage, reason and fault of every tick.</returns>
    public static int Run()
    {
        Settings settings = BootCourse.Settings();
        Controller controller = new Controller(settings);
        BootCourse course = new BootCourse(settings);
        Readings readings = new Readings();
        Outputs outputs = new Outputs();
        Fnv sum = new Fnv();
        for (int tick = 0; tick < Ticks; tick++)
        {
            int elapsedMicroseconds = course.Next(readings, outputs);
            controller.Tick(elapsedMicroseconds, readings, outputs);
            Add(sum, controller, outputs);
        }

        return sum.Sum;
    }

    private static void Add(Fnv sum, Controller controller, Outputs outputs)
    {
        int coils = (outputs.CloseLine ? 1 : 0) | (outputs.CloseBrake ? 2 : 0) | (outputs.CloseField ? 4 : 0);
        int lamps = (outputs.ReadyLamp ? 8 : 0) | (outputs.RunningLamp ? 16 : 0) | (outputs.TrippedLamp ? 32 : 0);
        sum.Add(coils | lamps | (outputs.CloseStages << 6));
        sum.Add((int)controller.Phase | (controller.Stage << 8) | ((int)controller.Fault.Id << 16));
        sum.Add((int)controller.Why.Reason);
        sum.Add(controller.Why.Quantity);
        sum.Add(controller.Why.Limit);
        sum.Add(controller.Why.MicrosecondsLeft);
    }
}
