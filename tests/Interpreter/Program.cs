using System;
using StarterCtl.Board;
using StarterCtl.Core;
using StarterCtl.Core.Tests;
using StarterCtl.Firmware;

namespace StarterCtl.Interpreter;

/// <summary>
/// Runs on the board's interpreter, on a desk: the boot check, the million-tick record, and then how long a tick of the core and a
/// period of the whole board take and whether they make objects. A line for each; <c>firmware/board/measure.sh</c> shows them.
/// </summary>
public static class Program
{
    private const int TimedTicks = 100000;
    private const int TimedPeriods = 20000;
    // Both runs together within the longest time of a stage, 5 s.
    private const int TimedPeriodsOfAStart = 2400;
    private const int PeriodsBeforeTheLockOpens = 4000;
    private const int PeriodsOfAPress = 50;
    private const int PeriodMicroseconds = 1000;
    private const int MemoryBytes = 4096;
    // One unit of the clock is a tenth of a microsecond.
    private const int NanosecondsPerUnit = 100;

    public static void Main()
    {
        Console.WriteLine("boot check: " + BootCheck.Run().ToString("X8"));
        Console.WriteLine("million ticks: " + ReplayCourse.Run(1).ToString("X8"));
        MeasureCore();
        MeasureBoard();
        Measure("an object on purpose", new ObjectLoop(), TimedTicks);
        Console.WriteLine("end");
    }

    // The plain starter with its first stage in, which waits: readings as they are.
    private static void MeasureCore()
    {
        Settings settings = Chk01.Settings();
        Controller controller = new Controller(settings);
        Readings readings = new Readings();
        Outputs outputs = new Outputs();
        readings.SupplyVolts = 250f;
        readings.SpeedValid = true;
        controller.Tick(PeriodMicroseconds, readings, outputs);
        readings.StartPressed = true;
        controller.Tick(PeriodMicroseconds, readings, outputs);
        readings.LineClosed = true;
        readings.ArmatureAmps = 600f;
        readings.SpeedRadPerSec = 10f;
        Measure("tick of the core", new TickLoop(controller, readings, outputs), TimedTicks);
    }

    // The shipped wiring and settings on pins of memory: at rest with the lock open, and then behind a press of start.
    private static void MeasureBoard()
    {
        PinMap map = Wiring.Build();
        MemoryPins pins = new MemoryPins(map);
        BoardMemory memory = new BoardMemory(new VolatileMemory(MemoryBytes), ResetCause.PowerUp);
        memory.FillBlank(CaseSettings.Build(), CaseSettings.Checksum, CaseSettings.CaseHash);
        StarterBoard board = new StarterBoard(map, pins, new SilentLine(), memory, new BoardIdentity());
        PeriodLoop loop = new PeriodLoop(board, pins);
        loop.Run(PeriodsBeforeTheLockOpens);
        Console.WriteLine("lock at power-up: " + ((int)board.PowerUp.Problem).ToString());
        Measure("period of the board", loop, TimedPeriods);
        pins.Set(PinRole.StartButton, true);
        pins.Turns = true;
        loop.Run(PeriodsOfAPress);
        Measure("period of the board", loop, TimedPeriodsOfAStart);
    }

    private static void Measure(string what, ILoop loop, int count)
    {
        long begin = DateTime.UtcNow.Ticks;
        loop.Run(count);
        int each = (int)((DateTime.UtcNow.Ticks - begin) * NanosecondsPerUnit / count);
        Console.WriteLine(what + loop.Where() + ", ns: " + each.ToString());

        Ballast ballast = new Ballast();
        WeakReference witness = Ballast.Witness();
        loop.Run(count);
        Console.WriteLine(what + loop.Where() + ", objects in " + count.ToString() + ": " + (witness.IsAlive ? "none" : "some"));
        ballast.Drop();
    }
}
