using System;
using CsCheck;
using StarterCtl.Engine.Solving;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

public sealed class RootFinderTests
{
    [Fact]
    public void Find_AnyCrossing_IsJustBehindIt() =>
        Gen.Select(Gen.Double[0.001, 0.999], Gen.Double[0.1, 12], Gen.Bool).Sample((root, power, falls) =>
        {
            double Function(double x) => (falls ? -1 : 1) * (Math.Pow(x, power) - Math.Pow(root, power));

            double found = RootFinder.Find(Function, 0, 1, 1e-12);

            Assert.InRange(found, root - 1e-12, root + 1e-11);
        });

    [Fact]
    public void Find_ZeroAtTheEnd_IsTheEnd() => Assert.Equal(1, RootFinder.Find(x => x - 1, 0, 1, 1e-12), 1e-12);
}
