using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>A copy of the event log that stands still while it is downloaded.</summary>
public sealed class LogCopy
{
    private readonly EventKind[] _kinds = new EventKind[EventLog.Capacity];
    private readonly int[] _numbers = new int[EventLog.Capacity];
    private readonly float[] _values = new float[EventLog.Capacity];
    private readonly int[] _seconds = new int[EventLog.Capacity];
    private int _count;

    /// <summary>Copies the log as it is now.</summary>
    public void Take(EventLog log)
    {
        _count = log.Count;
        for (int i = 0; i < _count; i++)
        {
            _kinds[i] = log.KindAt(i);
            _numbers[i] = log.NumberAt(i);
            _values[i] = log.ValueAt(i);
            _seconds[i] = log.SecondsAt(i);
        }
    }

    /// <summary>Gives one event of the copy; an empty copy has one of kind none at index 0.</summary>
    /// <returns>False if there is none of this index.</returns>
    public bool TryGet(int index, LogAnswer answer)
    {
        if (index >= _count && index != 0) return false;
        bool isKept = index < _count;
        answer.Index = index;
        answer.Count = _count;
        answer.Kind = isKept ? _kinds[index] : EventKind.None;
        answer.Number = isKept ? _numbers[index] : 0;
        answer.Value = isKept ? _values[index] : 0f;
        answer.Seconds = isKept ? _seconds[index] : 0;
        return true;
    }
}
