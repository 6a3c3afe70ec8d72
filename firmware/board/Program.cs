using System;
using System.Threading;
using StarterCtl.Firmware;

namespace StarterCtl.Board;

/// <summary>Starts the firmware on a board and runs its loop.</summary>
public static class Program
{
    private const int MemoryBytes = 4096;
    private const int VersionMinor = 1;

    /// <summary>
    /// Runs for ever. What goes wrong beyond what the firmware itself handles ends the loop with every output at rest; the watchdog
    /// outside the processor then drops the coils too.
    /// </summary>
    public static void Main()
    {
        ProcessorPins? pins = null;
        try
        {
            pins = new ProcessorPins();
            Run(Build(pins));
        }
        catch (Exception exception)
        {
            pins?.Rest();
            Console.WriteLine("stopped: " + exception.Message);
        }

        Thread.Sleep(Timeout.Infinite);
    }

    private static StarterBoard Build(ProcessorPins pins)
    {
        BoardIdentity identity = new BoardIdentity();
        identity.Name = Wiring.BoardName;
        identity.VersionMinor = VersionMinor;
        identity.ResetCause = ResetCause.Unknown;
        // No package that this program uses offers memory that keeps its bytes: an adapter for one goes here.
        BoardMemory memory = new BoardMemory(new VolatileMemory(MemoryBytes), identity.ResetCause);
        memory.FillBlank(CaseSettings.Build(), CaseSettings.Checksum, CaseSettings.CaseHash);
        SerialPortLine line = new SerialPortLine(Wiring.PortName, Wiring.BaudRate, Wiring.BytesPerPeriod);
        StarterBoard board = new StarterBoard(Wiring.Build(), pins, line, memory, identity);
        Console.WriteLine("wiring problem " + ((int)board.Wiring.Problem).ToString() + ", role " + ((int)board.Wiring.Role).ToString());
        return board;
    }

    private static void Run(StarterBoard board)
    {
        PowerUpProblem shown = PowerUpProblem.None;
        while (true)
        {
            // Lets the edges' events in.
            while (!board.IsDue()) Thread.Sleep(0);
            board.Step();
            if (board.PowerUp.Problem == shown) continue;
            shown = board.PowerUp.Problem;
            Console.WriteLine("lock at power-up " + ((int)shown).ToString());
        }
    }
}
