using System.Threading;
using System.Threading.Tasks;
using StarterCtl.Core;
using StarterCtl.Firmware;

namespace StarterCtl.Trials.Tests.Targets;

/// <summary>A board whose firmware is older than the exchange of readings, as far as its link goes.</summary>
internal static class OldBoard
{
    internal static Task Run(ISerialLine line, BoardIdentity identity, BoardMemory memory, CancellationToken off)
    {
        LinkPort link = new(line, memory.Settings, new NoPermit(), identity);
        link.Serve(new Controller(memory.Settings.Kept));
        return Task.Run(
            () =>
            {
                Readings readings = new();
                Outputs outputs = new();
                while (!off.IsCancellationRequested)
                {
                    link.Receive();
                    link.Send(1000, readings, outputs);
                    Thread.Sleep(1);
                }
            },
            CancellationToken.None);
    }

    private sealed class NoPermit : ILocalPermit
    {
        public bool IsGiven() => false;
    }
}
