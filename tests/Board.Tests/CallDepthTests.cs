using System;
using StarterCtl.House;
using Xunit;

namespace StarterCtl.Board.Tests;

/// <summary>The stack that the board's loop needs, against the bounds of its page.</summary>
public sealed class CallDepthTests
{
    private const string Page = "hardware-notes/08-board-project.md";
    private const string Tick = "System.Void StarterCtl.Core.Controller::Tick(System.Int32,StarterCtl.Core.Readings,StarterCtl.Core.Outputs)";
    private const string Period = "System.Void StarterCtl.Firmware.StarterBoard::Step()";

    [Theory]
    [InlineData("a tick of the core", Tick)]
    [InlineData("a period of the board", Period)]
    public void CallsAndSlots_WorstWay_AreThoseOfThePage(string what, string method)
    {
        (int calls, int slots) = new CallDepth().Of(method);

        // Only the optimised build's slots are those that are flashed.
        string row = Repository.Configuration == "Release" ? $"| {what} | {calls} | {slots} |" : $"| {what} | {calls} |";
        Assert.True(Repository.Text(Page).Contains(row, StringComparison.Ordinal), $"{Page} should have the row:\n{row}");
    }
}
