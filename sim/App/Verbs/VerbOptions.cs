using System.CommandLine;

namespace StarterCtl.App.Verbs;

/// <summary>What every verb takes.</summary>
internal sealed class VerbOptions
{
    /// <summary>Machine-readable result.</summary>
    public Option<bool> Json { get; } = new("--json")
    {
        Description = "Print the result as JSON on standard output.",
    };

    /// <summary>Where files go.</summary>
    public Option<string?> Out { get; } = OutOption();

    private static Option<string?> OutOption()
    {
        Option<string?> option = new("--out")
        {
            Description = "Folder for the files, or a file name. Without it: the folder 'out' here.",
            HelpName = "PLACE",
        };
        option.Validators.Add(result =>
        {
            if (string.IsNullOrWhiteSpace(result.GetValueOrDefault<string?>())) result.AddError("--out: found nothing; allowed: a folder or a file name");
        });
        return option;
    }
}
