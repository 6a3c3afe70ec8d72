namespace StarterCtl.Core;

/// <summary>The last events, in a ring that allocates nothing: a new one takes the place of the oldest.</summary>
public sealed class EventLog
{
    /// <summary>How many events are kept.</summary>
    public const int Capacity = 32;

    private readonly Uptime _uptime;
    private readonly int[] _kinds = new int[Capacity];
    private readonly int[] _numbers = new int[Capacity];
    private readonly float[] _values = new float[Capacity];
    private readonly int[] _seconds = new int[Capacity];
    private int _next;

    /// <summary>How many events are held, 0 to <see cref="Capacity"/>.</summary>
    public int Count;

    /// <summary>Builds an empty log.</summary>
    /// <param name="uptime">Gives each event its time.</param>
    public EventLog(Uptime uptime)
    {
        _uptime = uptime;
    }

    /// <summary>Adds an event.</summary>
    public void Add(EventKind kind, int number, float measured)
    {
        _kinds[_next] = (int)kind;
        _numbers[_next] = number;
        _values[_next] = measured;
        _seconds[_next] = _uptime.Seconds;
        _next = _next + 1 < Capacity ? _next + 1 : 0;
        if (Count < Capacity) Count++;
    }

    /// <summary>What an event is about; index 0 is the oldest kept, <see cref="Count"/> - 1 the newest.</summary>
    public EventKind KindAt(int index) => IsKept(index) ? (EventKind)_kinds[Place(index)] : EventKind.None;

    /// <summary>Its number; meaning in <see cref="EventKind"/>. 0 for an index that is not kept.</summary>
    public int NumberAt(int index) => IsKept(index) ? _numbers[Place(index)] : 0;

    /// <summary>Its value; meaning in <see cref="EventKind"/>. 0 for an index that is not kept.</summary>
    public float ValueAt(int index) => IsKept(index) ? _values[Place(index)] : 0f;

    /// <summary>Its time since the controller was built, s. 0 for an index that is not kept.</summary>
    public int SecondsAt(int index) => IsKept(index) ? _seconds[Place(index)] : 0;

    private bool IsKept(int index) => index >= 0 && index < Count;

    private int Place(int index)
    {
        int place = _next - Count + index;
        return place < 0 ? place + Capacity : place;
    }
}
