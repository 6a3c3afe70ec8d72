using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Emit;

namespace StarterCtl.Mutation;

/// <summary>The core with all of its mutants, compiled once.</summary>
internal sealed class MutatedCore
{
    private const string Library = "StarterCtl.Core";
    private const int MostAttempts = 30;

    private static readonly CSharpParseOptions Language = new(LanguageVersion.CSharp14, DocumentationMode.None);

    private readonly List<SyntaxTree> _sources = [];
    private readonly HashSet<int> _left = [];
    private readonly CSharpCompilation _original;
    private readonly SyntaxTree _assemblyInfo;

    /// <summary>Reads the sources of a checkout whose core has been built in this configuration.</summary>
    internal MutatedCore(string root, string configuration)
    {
        string core = Path.Combine(root, "core");
        foreach (string path in Directory.EnumerateFiles(core, "*.cs", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            string file = Path.GetRelativePath(root, path).Replace('\\', '/');
            if (file.Split('/').Any(part => part is "bin" or "obj")) continue;
            _sources.Add(CSharpSyntaxTree.ParseText(File.ReadAllText(path), Language, file));
        }

        // Version and friends of the library that this one replaces.
        string info = Path.Combine(core, "obj", configuration, "net10.0", Library + ".AssemblyInfo.cs");
        _assemblyInfo = CSharpSyntaxTree.ParseText(File.ReadAllText(info), Language);
        string runtime = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        _original = CSharpCompilation.Create(
            Library,
            _sources.Append(_assemblyInfo),
            [MetadataReference.CreateFromFile(Path.Combine(runtime, "System.Private.CoreLib.dll")), MetadataReference.CreateFromFile(Path.Combine(runtime, "System.Runtime.dll"))],
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release));
    }

    /// <summary>All mutants that compile.</summary>
    internal List<Mutant> Mutants { get; private set; } = [];

    /// <summary>Mutants that do not compile.</summary>
    internal List<Mutant> LeftOut { get; private set; } = [];

    /// <summary>Writes the library, without the mutants that do not compile.</summary>
    internal void Write(string path)
    {
        for (int attempt = 1; attempt <= MostAttempts; attempt++)
        {
            List<Mutant> mutants = [];
            List<SyntaxTree> trees = [.. _sources.Select(tree => Rewritten(tree, mutants))];
            trees.Add(_assemblyInfo);
            trees.Add(CSharpSyntaxTree.ParseText(MutantSwitch.Source(mutants.Count), Language));
            CSharpCompilation mutated = _original.RemoveAllSyntaxTrees().AddSyntaxTrees(trees);
            using MemoryStream library = new();
            EmitResult result = mutated.Emit(library);
            if (result.Success)
            {
                File.WriteAllBytes(path, library.ToArray());
                Mutants = mutants.FindAll(mutant => !_left.Contains(mutant.Number));
                LeftOut = mutants.FindAll(mutant => _left.Contains(mutant.Number));
                return;
            }

            Leave([.. result.Diagnostics.Where(found => found.Severity == DiagnosticSeverity.Error)]);
        }

        throw new InvalidOperationException("the mutated core does not compile");
    }

    // A table is data with names: what stands in it is compared with a page elsewhere.
    private SyntaxTree Rewritten(SyntaxTree tree, List<Mutant> mutants)
    {
        if (tree.FilePath.EndsWith("Row.cs", StringComparison.Ordinal) || tree.FilePath.EndsWith("Table.cs", StringComparison.Ordinal)) return tree;
        Schemata schemata = new(tree.FilePath, _original.GetSemanticModel(tree), _left, mutants);
        return CSharpSyntaxTree.Create((CSharpSyntaxNode)schemata.Visit(tree.GetRoot())!, Language, tree.FilePath);
    }

    // The innermost place around an error is to blame; else those within it; else, as with a value that is missing further
    // down, all of its member.
    private void Leave(Diagnostic[] errors)
    {
        int before = _left.Count;
        foreach (Diagnostic error in errors)
        {
            SyntaxNode? node = error.Location.SourceTree?.GetRoot().FindNode(error.Location.SourceSpan, getInnermostNodeForTie: true);
            SyntaxNode? place = node?.AncestorsAndSelf().FirstOrDefault(around => around.HasAnnotations(Schemata.Mark));
            if (place != null) Leave([place]);
            else if (node != null && node.GetAnnotatedNodes(Schemata.Mark).ToArray() is { Length: > 0 } within) Leave(within);
            else Leave(node?.FirstAncestorOrSelf<MemberDeclarationSyntax>()?.GetAnnotatedNodes(Schemata.Mark) ?? []);
        }

        if (_left.Count == before) throw new InvalidOperationException("the mutated core does not compile: " + string.Join('\n', (object[])errors));
    }

    private void Leave(IEnumerable<SyntaxNode> places)
    {
        foreach (SyntaxAnnotation mark in places.SelectMany(place => place.GetAnnotations(Schemata.Mark))) _left.Add(int.Parse(mark.Data!, null));
    }
}
