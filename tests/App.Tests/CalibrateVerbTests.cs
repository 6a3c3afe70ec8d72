using System;
using System.IO;
using System.Text.Json;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.Link;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>Calibration and noise check from the command line, against the whole firmware on the desk, by this computer's clock.</summary>
public sealed class CalibrateVerbTests : IDisposable
{
    private readonly Cli _cli = new();

    [Fact]
    public async Task Calibrate_TheSpeedInTwoPoints_PutsTheNewPairInForce_AndUndoTheFormer()
    {
        await using RunningBoard board = new(MemoryPath, true, isCompiled: true);
        await AtRest(board, "speed");
        JsonElement zero = _cli.Json();
        Assert.Equal(("ZeroTaken", 0), (zero.GetProperty("state").GetString(), zero.GetProperty("spreadCounts").GetInt32()));
        Assert.Contains("next: make the quantity as large as it safely can be", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal(0, await _cli.Run("link", "start", board.Port));
        await Until(board, "Running");

        // 1000 rpm are a third of what it turns at: a gain below half the nominal one, which no board takes.
        Assert.Equal(1, await _cli.Run("link", "calibrate", "speed", "span", board.Port, "--true", "1000 rpm"));
        Assert.Contains("calibration of TachoSpeed, TakeSpan: the gain would be less than half or more than twice the nominal", _cli.Errors, StringComparison.Ordinal);

        // 300 rad/s are less than this shaft turns at, and more than half of it: allowed.
        Assert.Equal(0, await _cli.Run("link", "calibrate", "speed", "span", board.Port, "--true", "300 rad/s", "--json"));
        JsonElement both = _cli.Json();
        float gain = both.GetProperty("new").GetProperty("unitsPerCount").GetSingle();
        float offset = both.GetProperty("new").GetProperty("offsetCounts").GetSingle();
        Assert.Equal(300f, (both.GetProperty("meanCounts").GetSingle() - offset) * gain, 0.01f);
        Assert.Equal(both.GetProperty("nominal").ToString(), both.GetProperty("inForce").ToString());
        Assert.Equal(1, await _cli.Run("link", "calibrate", "speed", "save", board.Port));
        Assert.Contains("calibration of TachoSpeed, Save: allowed only once every coil has been off and every contact open for 1 s", _cli.Errors, StringComparison.Ordinal);

        Assert.Equal(0, await _cli.Run("link", "stop", board.Port));
        await Saved(board);
        Assert.Equal((gain, offset), Pair("inForce"));
        Assert.Equal(both.GetProperty("nominal").ToString(), _cli.Json().GetProperty("former").ToString());
        Assert.Equal(0, await _cli.Run("link", "calibrate", "speed", "undo", board.Port, "--json"));
        Assert.Equal((gain, offset), Pair("former"));
        Assert.Equal(both.GetProperty("nominal").ToString(), _cli.Json().GetProperty("inForce").ToString());
    }

    /// <summary>The supply of the bench rig is on, 48 V; its channel shows 0 V at 205 counts.</summary>
    [Fact]
    public async Task Calibrate_WhatTheBoardRefuses_IsSaidInItsWordsWithExitCode1_AndChangesNothing()
    {
        await using RunningBoard board = new(MemoryPath, false, isCompiled: true);
        await AtRest(board, "amps");
        Assert.Equal(1, await _cli.Run("link", "calibrate", "volts", "zero", board.Port));
        Assert.Contains("counts (allowed: 205 and up to 10 % of the range, 409.5 counts more or less): was it really zero?", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal(1, await _cli.Run("link", "calibrate", "volts", "span", board.Port, "--true", "48 V"));
        Assert.Contains("calibration of SupplyVolts, TakeSpan: the zero comes first", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal(1, await _cli.Run("link", "calibrate", "field-amps", "show", board.Port));
        Assert.Contains("calibration of FieldAmps, Read: the board has no such channel", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal(0, await _cli.Run("link", "calibrate", "amps", "zero", board.Port));
        Assert.Contains("state       the zero is there; the second point is to be taken\n", _cli.Output, StringComparison.Ordinal);
        Assert.Equal(1, await _cli.Run("link", "calibrate", "amps", "span", board.Port, "--true", "20 A"));
        Assert.Contains("is too near the zero at 2048 (allowed: 10 % of the range, 409.5 counts away or more)", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal(0, await _cli.Run("link", "calibrate", "amps", "show", board.Port));
        Assert.Contains("refused     the second point, 2048 counts, is too near", _cli.Output, StringComparison.Ordinal);
        Assert.Equal(0, await _cli.Run("link", "calibrate", "amps", "drop", board.Port));

        Assert.Equal(0, await _cli.Run("link", "calibrate", "amps", "show", board.Port, "--json"));
        Assert.Equal(("Idle", _cli.Json().GetProperty("nominal").ToString()), (_cli.Json().GetProperty("state").GetString(), _cli.Json().GetProperty("inForce").ToString()));
    }

    [Theory]
    [InlineData("CHANNEL: found \"tacho\"; allowed: volts, amps, field-amps or speed", "tacho", "zero")]
    [InlineData("STEP: found \"begin\"; allowed: show, zero, span, save, undo or drop", "speed", "begin")]
    [InlineData("--true: found nothing; allowed: a voltage in V, mV or kV", "volts", "span")]
    [InlineData("--true: found \"48 A\", a current; allowed: a voltage in V, mV or kV", "volts", "span", "--true", "48 A")]
    [InlineData("--true: found \"48\", a number without a unit; allowed: a voltage in V, mV or kV", "volts", "span", "--true", "48")]
    [InlineData("--true: found \"48 V\" with zero; allowed: with span only", "volts", "zero", "--true", "48 V")]
    [InlineData("PORT: found \"tcp:nowhere\"; allowed: tcp:HOST:PORT", "volts", "zero", "tcp:nowhere")]
    public async Task Calibrate_WrongUsage_SaysWhatIsAllowed_AndAsksNoBoard(string words, string channel, string step, params string[] more)
    {
        string[] port = more is ["tcp:nowhere"] ? [] : ["tcp:127.0.0.1:1"];

        Assert.Equal(2, await _cli.Run(["link", "calibrate", channel, step, .. port, .. more]));

        Assert.Contains(words, _cli.Errors, StringComparison.Ordinal);
    }

    /// <summary>The desk's sensors are still at rest, and with the machine live its quantities change with the coils.</summary>
    [Fact]
    public async Task Noise_OfARun_HasTheFiguresOfEverySituation_AndWhatTheyUsuallyMean()
    {
        await using RunningBoard board = new(MemoryPath, true, isCompiled: true);
        await AtRest(board, "amps");
        using Cli other = new();
        Task<int> noise = other.Run("link", "noise", board.Port, "--seconds", "5", "--json");
        await other.Said("recording for 5 s");
        Assert.Equal(0, await _cli.Run("link", "start", board.Port));
        await Task.Delay(1400, TestContext.Current.CancellationToken);
        Assert.Equal(0, await _cli.Run("link", "stop", board.Port));

        Assert.Equal(1, await noise);
        JsonElement amps = other.Json()[1].GetProperty("noise");
        Assert.Equal(("ArmatureAmps", 4095, 3), (amps.GetProperty("channel").GetString(), amps.GetProperty("fullScaleCounts").GetInt32(), other.Json().GetArrayLength()));
        Assert.True(amps.GetProperty("rest").GetProperty("count").GetInt32() >= NoiseRules.LeastSamples);
        Assert.True(amps.GetProperty("coilsOn").GetProperty("count").GetInt32() >= NoiseRules.LeastSamples);
        Assert.Equal(100, amps.GetProperty("release").GetProperty("count").GetInt32());
        JsonElement shift = other.Json()[1].GetProperty("findings")[0];
        Assert.Equal("shift with coils on", shift.GetProperty("pattern").GetString());
        Assert.Contains("returns of their own", shift.GetProperty("remedy").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Noise_InLines_HasEachChannelThatTheBoardHas()
    {
        await using RunningBoard board = new(MemoryPath, false, isCompiled: true);
        await AtRest(board, "amps");

        Assert.Equal(1, await _cli.Run("link", "noise", board.Port, "--seconds", "0.2"));

        Assert.Contains("armature current, 0 to 4095 counts\n  at rest       ", _cli.Output, StringComparison.Ordinal);
        Assert.Contains("  coils on      no samples\n  at a release  no samples\n  no life: every one of ", _cli.Output, StringComparison.Ordinal);
        Assert.Contains("    do:      put a known signal on the input and look again\nspeed by tacho", _cli.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("field", _cli.Output, StringComparison.Ordinal);
        Assert.Contains("holds with the power circuit isolated", _cli.Errors, StringComparison.Ordinal);
    }

    public void Dispose() => _cli.Dispose();

    private string MemoryPath => Path.Combine(_cli.Folder, "rig.bin");

    // A zero is taken once the board has been at rest for a second.
    private Task AtRest(RunningBoard board, string channel) => Retry("link", "calibrate", channel, "zero", board.Port, "--json");

    private Task Saved(RunningBoard board) => Retry("link", "calibrate", "speed", "save", board.Port, "--json");

    private async Task Until(RunningBoard board, string phase)
    {
        for (int i = 0; i < 2000; i++)
        {
            Assert.Equal(0, await _cli.Run("link", "hello", board.Port, "--json"));
            if (_cli.Json().GetProperty("phase").GetString() == phase) return;
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }

        Assert.Fail($"not {phase}:\n{_cli.Output}");
    }

    private async Task Retry(params string[] asked)
    {
        CancellationToken cancellation = TestContext.Current.CancellationToken;
        for (int i = 0; i < 1000; i++)
        {
            if (await _cli.Run(asked) == 0) return;
            await Task.Delay(50, cancellation);
        }

        Assert.Fail(_cli.Errors);
    }

    private (float Gain, float Offset) Pair(string name) =>
        (_cli.Json().GetProperty(name).GetProperty("unitsPerCount").GetSingle(), _cli.Json().GetProperty(name).GetProperty("offsetCounts").GetSingle());
}
