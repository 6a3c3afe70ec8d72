using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Text.RegularExpressions;
using StarterCtl.House;
using Xunit;

namespace StarterCtl.Board.Tests;

/// <summary>The board's program as it was built: it is there, and uses of pins, converter and port what its page has checked.</summary>
public sealed class BoardProgramTests : IDisposable
{
    private const string Page = "hardware-notes/08-board-project.md";

    private readonly PEReader _program;
    private readonly MetadataReader _metadata;

    public BoardProgramTests()
    {
        string path = Path.Combine(Repository.Root, "firmware", "board", "bin", Repository.Configuration, "netnano1.0", "StarterCtl.Board.exe");
        Assert.True(File.Exists(path), path);
        _program = new PEReader(File.OpenRead(path));
        _metadata = _program.GetMetadataReader();
    }

    [Fact]
    public void Program_ReferencesFirmwareCoreRuntimeAndTheDeclarationsOnly()
    {
        IEnumerable<string> references = _metadata.AssemblyReferences.Select(handle => _metadata.GetString(_metadata.GetAssemblyReference(handle).Name));

        Assert.Equal(["StarterCtl.Core", "StarterCtl.DeviceApi", "StarterCtl.Firmware", "mscorlib"], references.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void MembersThatItCalls_AreThoseOfThePage()
    {
        List<string> called = [.. _metadata.MemberReferences.Select(handle => _metadata.GetMemberReference(handle))
            .Where(member => member.Parent.Kind == HandleKind.TypeReference && IsDeviceType((TypeReferenceHandle)member.Parent))
            .Select(member => $"{TypeName((TypeReferenceHandle)member.Parent)}.{_metadata.GetString(member.Name)}").Distinct().Order(StringComparer.Ordinal)];
        List<string> listed = [.. Regex.Matches(Repository.Text(Page), @"^\| `(\w+\.[\w.]+)` \|", RegexOptions.Multiline).Select(match => match.Groups[1].Value)];

        Assert.True(listed.Order(StringComparer.Ordinal).SequenceEqual(called), $"{Page} should have the rows:\n{string.Join('\n', called)}");
    }

    /// <summary>Where nothing is lit, its lines are all that there is: a build for a board must not leave them out.</summary>
    [Fact]
    public void Program_AnyConfiguration_SaysItsLines()
    {
        IEnumerable<string> called = _metadata.MemberReferences.Select(handle => _metadata.GetMemberReference(handle))
            .Where(member => member.Parent.Kind == HandleKind.TypeReference)
            .Select(member => $"{TypeName((TypeReferenceHandle)member.Parent)}.{_metadata.GetString(member.Name)}");

        Assert.Contains("Console.WriteLine", called);
    }

    public void Dispose() => _program.Dispose();

    private bool IsDeviceType(TypeReferenceHandle handle)
    {
        EntityHandle scope = _metadata.GetTypeReference(handle).ResolutionScope;
        return scope.Kind == HandleKind.AssemblyReference
            && _metadata.GetString(_metadata.GetAssemblyReference((AssemblyReferenceHandle)scope).Name) == "StarterCtl.DeviceApi";
    }

    private string TypeName(TypeReferenceHandle handle) => _metadata.GetString(_metadata.GetTypeReference(handle).Name);
}
