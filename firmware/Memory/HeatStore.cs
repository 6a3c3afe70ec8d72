using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// Keeps the heat of motor and starting resistor over a power loss. Saved only while every coil is off, so what a run has added
/// is lost if the power goes before it is over. How long the power was off is not known: no cooling is taken for it.
/// </summary>
public sealed class HeatStore
{
    /// <summary>Change of a level that is worth a save.</summary>
    public const float LevelStep = 0.05f;

    /// <summary>Shortest time between two saves, s: memory wears.</summary>
    public const int SecondsBetweenSaves = 60;

    /// <summary>Version of the content.</summary>
    public const int Version = 1;

    /// <summary>Length of the content, bytes.</summary>
    public const int ContentBytes = 8;

    private const int ResistorAt = 4;
    private const int MicrosecondsPerSecond = 1000000;

    private readonly TwoCopyStore _store;
    private float _motorLevel;
    private float _resistorLevel;
    private float _motorKept;
    private float _resistorKept;
    private int _microsecondsToSave;

    /// <summary>Reads what was kept. Levels that were kept and cannot be read back count as the limit.</summary>
    public HeatStore(INonVolatile memory, int address)
    {
        _store = new TwoCopyStore(memory, address, ContentBytes, Version);
        bool isFound = _store.State == StoreState.Sound && _store.Content.Length == ContentBytes;
        float unknown = _store.State == StoreState.Blank ? 0f : 1f;
        _motorLevel = isFound ? _store.Content.GetFloat(0) : unknown;
        _resistorLevel = isFound ? _store.Content.GetFloat(ResistorAt) : unknown;
        _motorKept = _motorLevel;
        _resistorKept = _resistorLevel;
    }

    /// <summary>Writes the levels into the heat of a controller that was just built.</summary>
    public void Restore(HeatWatch heat)
    {
        heat.Motor.Level = _motorLevel;
        heat.Resistor.Level = _resistorLevel;
    }

    /// <summary>Takes the levels over, and saves them when that is due.</summary>
    /// <param name="elapsedMicroseconds">Time since the last call; negative counts as 0.</param>
    /// <param name="isAtRest">True while every coil is off, so that the memory may take its time.</param>
    /// <param name="heat">The heat of the controller.</param>
    public void Step(int elapsedMicroseconds, bool isAtRest, HeatWatch heat)
    {
        _motorLevel = heat.Motor.Level;
        _resistorLevel = heat.Resistor.Level;
        if (elapsedMicroseconds > 0 && _microsecondsToSave > 0)
        {
            _microsecondsToSave = elapsedMicroseconds < _microsecondsToSave ? _microsecondsToSave - elapsedMicroseconds : 0;
        }

        if (!isAtRest || _microsecondsToSave > 0 || (IsNear(_motorLevel, _motorKept) && IsNear(_resistorLevel, _resistorKept))) return;
        _microsecondsToSave = SecondsBetweenSaves * MicrosecondsPerSecond;
        _store.Content.PutFloat(0, _motorLevel);
        _store.Content.PutFloat(ResistorAt, _resistorLevel);
        _store.Content.Length = ContentBytes;
        if (!_store.TrySave()) return;
        _motorKept = _motorLevel;
        _resistorKept = _resistorLevel;
    }

    private static bool IsNear(float level, float kept)
    {
        float change = level - kept;
        return change < LevelStep && change > -LevelStep;
    }
}
