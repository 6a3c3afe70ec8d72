using System;
using System.IO;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Parts;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Parts;

public sealed class StockListTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("starterctl-stock").FullName;

    [Fact]
    public void Read_EveryWayToWriteARow_IsUnderstood()
    {
        StockList list = Read("shelf, part ,ohm,watts,joules,time-constant,price,quantity\n7,\"A, long\",470 mohm,0.1 kW,,20 s,2.30,4\n\n8,,1.5,50,900,,0,\r\n", false);

        Assert.Equal([new Part("A, long", 0.47, new PartRating(100, 2000), 2.30m, 4), new Part("1.5 ohm 50 W", 1.5, new PartRating(50, 900), 0m, null)], list.Parts);
        Assert.Equal(["shelf"], list.UnusedColumns);
    }

    [Theory]
    [InlineData("X,half,100,5 kJ,3,1", "ohm", "half")]
    [InlineData("X,,100,5 kJ,3,1", "ohm", "nothing")]
    [InlineData("X,-1,100,5 kJ,3,1", "ohm", "-1")]
    [InlineData("X,0,100,5 kJ,3,1", "ohm", "\"0\"")]
    [InlineData("X,NaN,100,5 kJ,3,1", "ohm", "not a finite number")]
    [InlineData("X,0.5 A,100,5 kJ,3,1", "ohm", "a current")]
    [InlineData("X,0.5,5 kJ,100,3,1", "watts", "an energy")]
    [InlineData("X,0.5,100,18 s,3,1", "joules", "a time")]
    [InlineData("X,0.5,100,,3,1", "joules", "nothing")]
    [InlineData("X,0.5,100,5 kJ,EUR 3,1", "price", "EUR 3")]
    [InlineData("X,0.5,100,5 kJ,-3,1", "price", "-3")]
    [InlineData("X,0.5,100,5 kJ,0.12345,1", "price", "0.12345")]
    [InlineData("X,0.5,100,5 kJ,3,1.5", "quantity", "1.5")]
    [InlineData("A,0.6,100,5 kJ,3,1", "part", "\"A\" a second time, after line 2")]
    [InlineData("X,0.5,100,5 kJ,3", "", "5 cells")]
    [InlineData("X,0,5,100,5 kJ,3,1", "", "7 cells")]
    public void Read_WrongRow_IsRefusedWithLineColumnAndReasonOrSkipped(string row, string column, string words)
    {
        string text = $"part,ohm,watts,joules,price,quantity\nA,0.5,100,5 kJ,3,1\n{row}\nB,0.6,100,5 kJ,3,1\n";

        CaseProblem problem = Assert.Single(Assert.Throws<CaseException>(() => Read(text, false)).Problems);
        StockList skipped = Read(text, true);

        Assert.Equal(3, problem.Line);
        Assert.Equal(column, problem.Key);
        Assert.Contains(words, problem.Found, StringComparison.Ordinal);
        Assert.Equal(["A", "B"], skipped.Parts.Select(part => part.Name));
        Assert.Equal(problem, Assert.Single(skipped.Skipped));
    }

    [Fact]
    public void Read_SeveralWrongRows_SaysAllAtOnce() =>
        Assert.Equal([2, 3, 3, 4], Assert.Throws<CaseException>(() => Read("ohm,watts,joules,price\nx,1,1,1\n1,y,z,1\n1,1,1\n", false)).Problems.Select(problem => problem.Line));

    [Fact]
    public void Read_JoulesBesideTimeConstant_IsRefused() =>
        Assert.Contains("beside", Assert.Single(Assert.Throws<CaseException>(() => Read("ohm,watts,joules,time-constant,price\n1,1,1,1,1\n", false)).Problems).Found, StringComparison.Ordinal);

    [Theory]
    [InlineData("part,ohms,watts,joules,price\nA,1,1,1,1\n", "ohm", "\"ohms\" is near it")]
    [InlineData("part,ohm,watts,price\nA,1,1,1\n", "joules", "time-constant")]
    [InlineData("ohm;watts;joules;price\n1;1;1;1\n", "ohm", "parted by commas")]
    [InlineData("ohm,ohm,watts,joules,price\n1,1,1,1,1\n", "ohm", "once")]
    public void Read_WrongColumns_AreRefusedWithWhatIsWanted(string text, string column, string words)
    {
        CaseProblem[] problems = [.. Assert.Throws<CaseException>(() => Read(text, true)).Problems];

        Assert.All(problems, problem => Assert.Equal(1, problem.Line));
        Assert.Contains(problems, problem => problem.Key == column && problem.Allowed.Contains(words, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("", "an empty file")]
    [InlineData("\n\n", "nothing but blank lines")]
    [InlineData("ohm,watts,joules,price\n", "no usable row")]
    public void Read_NothingInIt_IsSaid(string text, string words) =>
        Assert.Contains(words, Assert.Throws<CaseException>(() => Read(text, true)).Message, StringComparison.Ordinal);

    [Fact]
    public void Read_NoSuchFile_NamesTheNearest()
    {
        Read("ohm,watts,joules,price\n1,1,1,1\n", false);

        Assert.Contains("nearest in that folder: list.csv", Assert.Throws<CaseException>(() => StockList.Read(Path.Combine(_folder, "lits.csv"), false)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ShippedStock_IsWhole()
    {
        StockList list = StockList.Read(ShippedCase.PathOf("stock.csv"), false);

        Assert.Equal(24, list.Parts.Count);
        Assert.Empty(list.UnusedColumns);
    }

    public void Dispose() => Directory.Delete(_folder, true);

    private StockList Read(string text, bool skips)
    {
        string path = Path.Combine(_folder, "list.csv");
        File.WriteAllText(path, text);
        return StockList.Read(path, skips);
    }
}
