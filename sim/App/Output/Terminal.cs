using System;
using System.IO;
using System.Threading.Tasks;
using Spectre.Console;

namespace StarterCtl.App.Output;

/// <summary>The two streams: results on standard output, everything else on standard error.</summary>
public sealed class Terminal
{
    // Wide enough that nothing of ours wraps where no terminal says how wide it is.
    private const int RedirectedWidth = 10_000;

    // No table of ours is narrower; a smaller terminal folds lines itself and no number is torn.
    private const int LeastWidth = 80;
    private const int SilentMilliseconds = 1000;

    private readonly bool _showsProgress;

    /// <summary>Opens both streams.</summary>
    /// <param name="output">Results.</param>
    /// <param name="error">Notes, warnings, errors, progress.</param>
    /// <param name="isOutputTerminal">False when results are redirected: no colour, no wrapping.</param>
    /// <param name="isErrorTerminal">False when notes are redirected: no progress either.</param>
    public Terminal(TextWriter output, TextWriter error, bool isOutputTerminal, bool isErrorTerminal)
    {
        Data = output;
        Results = Open(output, isOutputTerminal);
        Notes = Open(error, isErrorTerminal);
        _showsProgress = isErrorTerminal;
    }

    /// <summary>Standard output as it is, for JSON.</summary>
    public TextWriter Data { get; }

    /// <summary>Standard output for tables.</summary>
    public IAnsiConsole Results { get; }

    /// <summary>Standard error.</summary>
    public IAnsiConsole Notes { get; }

    /// <summary>The terminal of this process.</summary>
    public static Terminal OfProcess() => new(Console.Out, Console.Error, !Console.IsOutputRedirected, !Console.IsErrorRedirected);

    /// <summary>Says a warning.</summary>
    public void Warn(string text) => Notes.MarkupLineInterpolated($"[yellow]warning:[/] {text}");

    /// <summary>Says an error, a line for each of its lines.</summary>
    public void Fail(string text)
    {
        foreach (string line in text.Split('\n')) Notes.MarkupLineInterpolated($"[red]error:[/] {line}");
    }

    /// <summary>Says what was written where.</summary>
    public void Wrote(string what, string path) => Notes.MarkupLineInterpolated($"wrote {what}: {path}");

    /// <summary>Works, and shows a progress bar with the time left once it has taken a second.</summary>
    public T Work<T>(string what, Func<IProgress<double>, T> work)
    {
        Latest progress = new();
        Task<T> task = Task.Run(() => work(progress));
        if (_showsProgress && Task.WaitAny([task], SilentMilliseconds) < 0) ShowUntilDone(what, task, progress);
        return task.GetAwaiter().GetResult();
    }

    private void ShowUntilDone(string what, Task task, Latest progress) =>
        Notes.Progress()
            .AutoClear(true)
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(), new RemainingTimeColumn())
            .Start(context =>
            {
                ProgressTask bar = context.AddTask(what, maxValue: 1);
                while (Task.WaitAny([task], 100) < 0) bar.Value = progress.Value;
            });

    private static IAnsiConsole Open(TextWriter writer, bool isTerminal)
    {
        bool colour = isTerminal && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = isTerminal ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = colour ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = isTerminal ? InteractionSupport.Detect : InteractionSupport.No,
            Out = new AnsiConsoleOutput(writer),
        });
        console.Profile.Width = isTerminal ? Math.Max(console.Profile.Width, LeastWidth) : RedirectedWidth;
        return console;
    }

    private sealed class Latest : IProgress<double>
    {
        public double Value { get; private set; }

        public void Report(double value) => Value = value;
    }
}
