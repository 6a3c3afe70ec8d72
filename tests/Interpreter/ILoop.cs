namespace StarterCtl.Interpreter;

/// <summary>What is measured.</summary>
public interface ILoop
{
    void Run(int count);

    /// <summary>In which phase it is, as the end of a sentence.</summary>
    string Where();
}
