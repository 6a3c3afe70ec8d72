namespace StarterCtl.Interpreter;

/// <summary>Makes an object each time: what the measurement must see.</summary>
public sealed class ObjectLoop : ILoop
{
    private object? _last;

    public void Run(int count)
    {
        for (int i = 0; i < count; i++) _last = new object();
    }

    public string Where() => "";
}
