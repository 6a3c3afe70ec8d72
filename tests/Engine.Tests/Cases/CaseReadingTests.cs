using System;
using System.IO;
using System.Security.Cryptography;
using System.Text;
using StarterCtl.Engine.Cases;
using Xunit;

namespace StarterCtl.Engine.Tests.Cases;

public sealed class CaseReadingTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("starterctl-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Read_ValidFile_GivesTheCaseItsPathAndTheHashOfItsBytes()
    {
        byte[] bytes = [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Sample.Text)];
        string path = Write("a.toml", bytes);

        CaseFile read = CaseFile.Read(path);

        Assert.Equal(path, read.FileName);
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(bytes)), read.Sha256);
        Assert.Equal(220, read.Number(CaseKeys.SupplyVoltage));
    }

    [Fact]
    public void Read_MissingFile_NamesTheNearestCaseInThatFolder()
    {
        Write("crane.toml", [1]);
        Write("line-shaft.toml", [1]);

        Assert.Equal(
            "found no such file; allowed: a case file that exists; nearest in that folder: line-shaft.toml",
            ProblemOf(Path.Combine(_folder, "lineshaft.toml")));
    }

    [Fact]
    public void Read_MissingFileInEmptyFolder_NamesNone() =>
        Assert.Equal(
            "found no such file; allowed: a case file that exists", ProblemOf(Path.Combine(_folder, "lineshaft.toml")));

    [Fact]
    public void Read_MissingFolder_IsAMissingFile() =>
        Assert.Equal(
            "found no such file; allowed: a case file that exists", ProblemOf(Path.Combine(_folder, "no", "x.toml")));

    [Fact]
    public void Read_NoName_IsAMissingFile() =>
        Assert.StartsWith(": found no such file", Assert.Throws<CaseException>(() => CaseFile.Read("")).Message);

    [Fact]
    public void Read_Folder_NamesACaseInIt()
    {
        Write("crane.toml", [1]);

        Assert.Equal("found a folder; allowed: a case file in it; nearest in that folder: crane.toml", ProblemOf(_folder));
    }

    [Fact]
    public void Read_LockedFile_IsUnreadable()
    {
        string path = Write("a.toml", [1]);
        using FileStream locked = new(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None);

        Assert.Matches(@"^found a file that cannot be read \(.+\); allowed: a readable file$", ProblemOf(path));
    }

    [Fact]
    public void Read_MoreThanOneMebibyte_SaysTheSize() =>
        Assert.Equal(
            "found a file of 1048577 bytes; allowed: up to 1 MiB (1048576 bytes)",
            ProblemOf(Write("a.toml", new byte[(1024 * 1024) + 1])));

    [Fact]
    public void Read_OneMebibyte_IsRead()
    {
        byte[] bytes = new byte[1024 * 1024];
        Array.Fill(bytes, (byte)'\n');
        Encoding.UTF8.GetBytes("title = \"long\"\n").CopyTo(bytes, 0);

        Assert.Equal("long", CaseFile.Read(Write("a.toml", bytes)).Text(CaseKeys.Title));
    }

    [Theory]
    [InlineData("", "found an empty file; allowed: a case, which begins with a title or a [table]")]
    [InlineData("# only\r\n\n  # comments", "found nothing but blank lines and comments; allowed: a case, which begins with a title or a [table]")]
    [InlineData("\uFEFF", "found nothing but blank lines and comments; allowed: a case, which begins with a title or a [table]")]
    [InlineData("title = \"a\0\"", "found bytes of value 0, as in a binary or UTF-16 file; allowed: UTF-8 text")]
    public void Read_NoCaseInIt_SaysSo(string text, string expected) =>
        Assert.Equal(expected, ProblemOf(Write("a.toml", Encoding.UTF8.GetBytes(text))));

    [Fact]
    public void Read_OtherEncoding_NamesTheByte() =>
        Assert.Equal(
            "found no UTF-8 text (byte 10); allowed: UTF-8 text",
            ProblemOf(Write("a.toml", Encoding.Latin1.GetBytes("title = \"é\""))));

    [Fact]
    public void Parse_LostCharacter_IsAProblemOfItsLine()
    {
        CaseException replaced = Assert.Throws<CaseException>(() => CaseFile.Parse("a.toml", "title = \"\uFFFD\""));
        CaseException halved = Assert.Throws<CaseException>(() => CaseFile.Parse("a.toml", "title = \"\ud800\""));

        Assert.Equal(replaced.Message, halved.Message);
        Assert.Equal(
            "a.toml:1: found \"title = \"\uFFFD\"\", with a character that some program could not convert; allowed: UTF-8 text",
            halved.Message);
    }

    [Fact]
    public void Parse_BackslashAtTheEnd_IsATextThatDoesNotEnd() =>
        Assert.StartsWith("a.toml:1: found ", Assert.Throws<CaseException>(() => CaseFile.Parse("a.toml", "a = \"\\")).Message);

    private string Write(string name, byte[] bytes)
    {
        string path = Path.Combine(_folder, name);
        File.WriteAllBytes(path, bytes);
        return path;
    }

    private static string ProblemOf(string path)
    {
        CaseProblem problem = Assert.Single(Assert.Throws<CaseException>(() => CaseFile.Read(path)).Problems);
        Assert.Equal((path, 0, ""), (problem.File, problem.Line, problem.Key));
        return $"found {problem.Found}; allowed: {problem.Allowed}";
    }
}
