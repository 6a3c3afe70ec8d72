using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Threading.Tasks;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>From a case to source for the board: what is compiled is what the simulator runs on, bit for bit.</summary>
public sealed class ExportSettingsTests : IDisposable
{
    private readonly Cli _cli = new();

    public static TheoryData<string> Cases { get; } =
        [.. Directory.GetFiles(Path.Combine(Repository.Root, "sim", "cases"), "*.toml").Select(path => Path.GetFileName(path)!).Order()];

    [Theory]
    [MemberData(nameof(Cases))]
    public async Task Settings_OfEachShippedCase_CompileToTheSimulatorsOwn(string name)
    {
        string casePath = Path.Combine(Repository.Root, "sim", "cases", name), path = Path.Combine(_cli.Folder, "CaseSettings.cs");

        int code = await _cli.Run("export", "settings", casePath, "--out", path);

        Assert.Equal(0, code);
        Assert.Empty(_cli.Output);
        PreparedRun prepared = CaseRunner.Prepare(CaseFile.Read(casePath));
        Type written = Compiled(await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken));
        Settings settings = (Settings)written.GetMethod("Build")!.Invoke(null, null)!;
        Assert.Equal(SettingId.None, settings.FirstProblem());
        Assert.Equal(SettingsChecksum.Of(prepared.Settings), SettingsChecksum.Of(settings));
        Assert.Equal(SettingsChecksum.Of(settings), Constant(written, "Checksum"));
        Assert.Equal(prepared.Setup.PeriodMicroseconds, Constant(written, "PeriodMicroseconds"));
        Assert.Equal(SettingTable.Version, Constant(written, "Version"));
    }

    [Fact]
    public async Task SettingsCompiledIntoTheBoard_AreThoseOfTheBenchRig()
    {
        string path = Path.Combine(_cli.Folder, "CaseSettings.cs");
        Assert.Equal(0, await _cli.Run("export", "settings", Path.Combine(Repository.Root, "sim", "cases", "bench-rig.toml"), "--out", path));

        string kept = await File.ReadAllTextAsync(Path.Combine(Repository.Root, "firmware", "board", "CaseSettings.cs"), TestContext.Current.CancellationToken);
        Assert.True(
            kept == await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken),
            "firmware/board/CaseSettings.cs is to be written anew: starterctl export settings sim/cases/bench-rig.toml --out firmware/board/CaseSettings.cs");
    }

    [Fact]
    public async Task Settings_OfACase_CarryTheBeginningOfItsHash()
    {
        string casePath = _cli.WriteLineShaft("title = \"", "title = \"<a> & ");
        Assert.Equal(0, await _cli.Run("export", "settings", casePath, "--out", _cli.OutFolder));

        string text = await File.ReadAllTextAsync(Path.Combine(_cli.OutFolder, "case.settings.cs"), TestContext.Current.CancellationToken);
        string sha256 = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(await File.ReadAllBytesAsync(casePath, TestContext.Current.CancellationToken)));
        Assert.Contains("/// <summary>&lt;a&gt; &amp; ", text, StringComparison.Ordinal);
        Assert.Equal(sha256[..8], Constant(Compiled(text), "CaseHash").ToString("x8", CultureInfo.InvariantCulture));
    }

    [Fact]
    public async Task Settings_OfACaseThatFailsItsCheck_AreRefusedAndNothingIsWritten()
    {
        string casePath = _cli.WriteLineShaft("confirm-time = \"2 ms\"", "confirm-time = \"3 A\"");

        Assert.Equal(2, await _cli.Run("export", "settings", casePath, "--out", _cli.OutFolder));

        Assert.Matches(@"case\.toml:\d+: control\.confirm-time: found .*3 A", _cli.Errors);
        Assert.False(Directory.Exists(_cli.OutFolder));
    }

    public void Dispose() => _cli.Dispose();

    private static int Constant(Type written, string name) => (int)written.GetField(name)!.GetRawConstantValue()!;

    // By the language that the board's target is built with.
    private static Type Compiled(string source)
    {
        IEnumerable<MetadataReference> references = AppDomain.CurrentDomain.GetAssemblies()
            .Where(assembly => !assembly.IsDynamic && assembly.GetName().Name is "System.Runtime" or "System.Private.CoreLib")
            .Append(typeof(Settings).Assembly)
            .Select(assembly => MetadataReference.CreateFromFile(assembly.Location));
        CSharpCompilation compilation = CSharpCompilation.Create(
            "written",
            [CSharpSyntaxTree.ParseText(source, new CSharpParseOptions(LanguageVersion.CSharp12))],
            references,
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, generalDiagnosticOption: ReportDiagnostic.Error));
        using MemoryStream assembly = new();
        Assert.Empty(compilation.Emit(assembly).Diagnostics.Where(found => found.Severity == DiagnosticSeverity.Error));
        return Assembly.Load(assembly.ToArray()).GetType("StarterCtl.Board.CaseSettings", true)!;
    }
}
