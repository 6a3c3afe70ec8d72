using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;
using StarterCtl.House;
using Xunit;

namespace StarterCtl.Core.Tests.House;

/// <summary>What the core keeps to beyond every other library of the board.</summary>
public sealed class CoreSourceTests
{
    [Fact]
    public void Core_Sources_UseNothingFromOutside() =>
        Assert.DoesNotContain(Repository.Files("core", "*.cs"), path => Regex.IsMatch(Repository.Code(path), @"\busing\b"));

    [Fact]
    public void Core_References_NothingButTheRuntime() =>
        Assert.Equal(["System.Runtime"], typeof(Controller).Assembly.GetReferencedAssemblies().Select(reference => reference.Name));

    [Fact]
    public void Core_PublicTypes_HaveNoSeams() => Assert.DoesNotContain(typeof(Controller).Assembly.GetExportedTypes(), type => type.IsInterface);

    [Fact]
    public void Core_Texts_StandInTheTablesOnly()
    {
        IEnumerable<string> files = Repository.Files("core", "*.cs").Where(path => Regex.IsMatch(Repository.Code(path), @"\bstring\b"));

        Assert.All(files, path => Assert.Matches("(Row|Table)\\.cs$", path));
    }
}
