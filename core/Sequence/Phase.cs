namespace StarterCtl.Core;

/// <summary>Where the controller is in its sequence. Numbers are published and never reused.</summary>
public enum Phase
{
    /// <summary>The settings failed their check; nothing closes until the controller is built with sound ones.</summary>
    NotSetUp = 0,

    /// <summary>Every contact open, waiting for start.</summary>
    Ready = 1,

    /// <summary>Stages preset for a turning shaft, line closed or closing, resistance being cut out stage by stage.</summary>
    Accelerating = 2,

    /// <summary>All resistance cut out.</summary>
    Running = 3,

    /// <summary>Stop was asked for; waiting until every contact is proven open.</summary>
    Stopping = 4,

    /// <summary>A fault is latched; waits for a reset that finds the cause gone.</summary>
    Tripped = 5,

    /// <summary>Start was pressed; the field is building, the line is open.</summary>
    FieldBuilding = 6,

    /// <summary>The line is proven open and the brake resistor takes the energy of the shaft.</summary>
    Braking = 7,
}
