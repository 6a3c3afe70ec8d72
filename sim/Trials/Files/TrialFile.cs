using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Security.Cryptography;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.Trials.Judging;
using StarterCtl.Trials.Targets;
using Tomlyn.Syntax;

namespace StarterCtl.Trials.Files;

/// <summary>A trial's file, read and held against the case that it runs.</summary>
public static class TrialFile
{
    /// <summary>How the name of a trial's file ends.</summary>
    public const string Extension = ".trial.toml";

    /// <summary>Reads a trial's file.</summary>
    /// <param name="path">Its path; messages repeat it as given.</param>
    /// <returns>Its trials, one for each row of parameters, in their order.</returns>
    /// <exception cref="CaseException">Anything in the file, in the case or between them is wrong; carries every problem.</exception>
    public static IReadOnlyList<Trial> Read(string path) => Read(path, CaseBytes.Read(path), CaseBytes.Read);

    /// <summary>Reads a trial from bytes that need not be files.</summary>
    /// <param name="path">The name that messages give, and from whose folder the case is named.</param>
    /// <param name="bytes">TOML.</param>
    /// <param name="readCase">Gives the bytes of a case by its path.</param>
    /// <param name="only">The one row that is wanted; null: all.</param>
    /// <exception cref="CaseException">As above.</exception>
    public static IReadOnlyList<Trial> Read(string path, byte[] bytes, Func<string, byte[]> readCase, string? only = null)
    {
        string text = CaseBytes.Decode(path, bytes);
        ProblemList problems = new(path);
        BrokenLines lines = new(text, problems);
        TrialTree tree = new(problems, lines);
        if (lines.Parse(isStrict: false) is DocumentSyntax document) tree.Read(document);
        IReadOnlyList<ParameterRow> rows = ParameterRows.Read(tree, problems);
        IReadOnlyList<string> tags = TagList.Read(tree.Head, problems);
        if (tree.Expectations.Count == 0) problems.Add(0, "", "nothing that is expected", "at least one [[expect]]");
        problems.ThrowIfAny();

        string sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes));
        List<Trial> trials = [];
        List<CaseProblem> found = [];
        foreach (ParameterRow row in rows.Where(row => only == null || row.Name == only))
        {
            try
            {
                trials.Add(ReadRow(path, tree, row, readCase) with { Tags = tags, FileBytes = bytes, FileSha256 = sha256 });
            }
            catch (CaseException error)
            {
                found.AddRange(error.Problems);
            }
        }

        // What is wrong in every row is one mistake.
        return found.Count == 0 ? trials : throw new CaseException(found.Distinct());
    }

    private static Trial ReadRow(string path, TrialTree tree, ParameterRow row, Func<string, byte[]> readCase)
    {
        ProblemList problems = new(path);
        CaseValueReader reader = new(problems);
        TrialTable head = tree.Head.With(row);
        CaseValue? title = head.Entry(TrialKeys.Title) is CaseEntry titled ? reader.Read(titled) : null;
        CaseValue? keeps = head.Entry(TrialKeys.KeepEvents) is CaseEntry kept ? reader.Read(kept) : CaseValueReader.Default(TrialKeys.KeepEvents);
        CaseValue? casePath = null;
        if (head.Entry(TrialKeys.Case) is CaseEntry cased) casePath = reader.Read(cased);
        else problems.Add(0, TrialKeys.Case.Path, "nothing", TrialKeys.Case.Allowed);
        problems.ThrowIfAny();

        (CaseFile file, byte[] caseBytes) = ReadCase(path, tree, row, casePath!, keeps!.Written == "yes", readCase);
        PreparedRun run = CaseRunner.Prepare(file);
        string stem = StemOf(path);
        return new Trial
        {
            Name = row.Name.Length == 0 ? stem : $"{stem} [{row.Name}]",
            Title = title?.Written ?? stem,
            FileName = path,
            FileBytes = default,
            CaseBytes = caseBytes,
            FileSha256 = "",
            Row = row.Name,
            Tags = [],
            Case = file,
            Job = new TargetJob(run, file.Sha256),
            Expectations = ReadExpectations(path, tree, row, file, problems),
        };
    }

    private static (CaseFile File, byte[] Bytes) ReadCase(string path, TrialTree tree, ParameterRow row, CaseValue casePath, bool keepsEvents, Func<string, byte[]> readCase)
    {
        string place = Path.Combine(Path.GetDirectoryName(path) ?? "", casePath.Written);
        CaseChanges changes = new(path, [.. tree.Case.Entries.Select(row.Take)], tree.Case.EventLines, keepsEvents);
        try
        {
            byte[] bytes = readCase(place);
            return (CaseParser.Parse(place, bytes, changes), bytes);
        }
        catch (CaseException error) when (error.Problems is [{ Line: 0, Key: "" } whole] && whole.File == place)
        {
            throw new CaseException([new CaseProblem(path, casePath.Line, TrialKeys.Case.Path, $"{Words.Quote(casePath.Written)}, {whole.Found}", whole.Allowed)]);
        }
    }

    private static Expectation[] ReadExpectations(string path, TrialTree tree, ParameterRow row, CaseFile file, ProblemList problems)
    {
        CaseEvent[] own = [.. file.Events.Where(happening => happening.FileName == path).OrderBy(happening => happening.Line)];
        ExpectationReader reader = new(problems, own, file.Number(CaseKeys.RunDuration), file.Written(CaseKeys.RunDuration));
        Expectation[] expectations = [.. tree.Expectations.Select(table => reader.Read(table.With(row))).OfType<Expectation>()];
        foreach (IGrouping<string, Expectation> same in expectations.GroupBy(expectation => expectation.Name).Where(same => same.Count() > 1))
        {
            problems.Add(same.Last().Line, TrialKeys.ExpectName.Path, $"{Words.Quote(same.Key)} a second time", "a name of its own for each expectation");
        }

        Contradictions.Report(expectations, file.Events, problems);
        problems.ThrowIfAny();
        return expectations;
    }

    private static string StemOf(string path)
    {
        string name = Path.GetFileName(path);
        return name.EndsWith(Extension, StringComparison.OrdinalIgnoreCase) ? name[..^Extension.Length] : Path.GetFileNameWithoutExtension(name);
    }
}
