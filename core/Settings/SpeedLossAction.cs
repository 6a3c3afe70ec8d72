namespace StarterCtl.Core;

/// <summary>What happens when the speed signal is lost. Numbers are published and never reused.</summary>
public enum SpeedLossAction
{
    /// <summary>The starter trips.</summary>
    Trip = 0,

    /// <summary>A motor that runs keeps running; a start trips.</summary>
    KeepRunning = 1,

    /// <summary>A motor that runs keeps running, and a start goes on by the resistive estimate with its longer confirm time.</summary>
    FinishStart = 2,
}
