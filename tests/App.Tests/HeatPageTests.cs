using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>The page of heat, contactors and cables says what the program prints, and its JSON keeps its keys.</summary>
public sealed class HeatPageTests : IDisposable
{
    private static readonly string Case = Path.Combine(Repository.Root, "sim", "cases", "batch-mixer.toml");
    private static readonly string[] Page = File.ReadAllLines(Path.Combine(Repository.Root, "sim", "heat.md"));

    private readonly Cli _cli = new();

    [Fact]
    public async Task HeatPage_MixerBlocks_AreWhatDesignPrints()
    {
        int code = await _cli.Run("design", Case);

        Assert.Equal(0, code);
        string[] missing = [.. _cli.Output.Split('\n').Select(line => line.TrimEnd()).Where(line => line.Length > 0).Except(Page.Select(line => line.TrimEnd()))];
        Assert.True(missing.Length == 0, "not in sim/heat.md:\n" + string.Join('\n', missing));
    }

    [Fact]
    public async Task HeatPage_ExcessBlock_IsWhatTooManyStartsAreAnswered()
    {
        int code = await _cli.Run("design", _cli.Write("mixer.toml", File.ReadAllText(Case).Replace("starts-per-hour = 20", "starts-per-hour = 40", StringComparison.Ordinal)));

        Assert.Equal(1, code);
        string warning = Assert.Single(_cli.Errors.Split('\n'), line => line.Contains("The duty is not permitted", StringComparison.Ordinal));
        Assert.Contains(warning.Trim(), Page.Select(line => line.Trim()));
    }

    [Fact]
    public async Task Design_Json_HasTheKeysOfRatings()
    {
        await _cli.Run("design", Case, "--json");

        JsonElement ratings = _cli.Json().GetProperty("ratings");
        AssertHasKeys(ratings, "supply", "heat", "overload", "contactors", "excesses");
        AssertHasKeys(ratings.GetProperty("supply"), "busOhms", "cableOhms", "points", "permittedDip", "permittedLineAmps", "largestRatedAmps", "largestDirectRatedAmps");
        AssertHasKeys(ratings.GetProperty("supply").GetProperty("points")[0], "name", "lineAmps", "cableVolts", "cableFraction", "busDipFraction", "terminalVolts");
        AssertHasKeys(ratings.GetProperty("heat"), "ambientCelsius", "bodies", "startSeconds", "consecutiveStarts", "consecutiveExcess", "runSeconds", "startsPerHour", "startsExcess", "duty");
        AssertHasKeys(ratings.GetProperty("heat").GetProperty("bodies")[0], "body", "limitCelsius", "firstStartCelsius", "startsPerHourCelsius", "dutyCelsius");
        AssertHasKeys(ratings.GetProperty("heat").GetProperty("duty"), "runSeconds", "restSeconds", "startsPerHour", "durationFactor", "class", "designation", "startsFromCold", "excess");
        AssertHasKeys(ratings.GetProperty("overload"), "settingAmps", "chosen", "why", "set", "classes");
        AssertHasKeys(
            ratings.GetProperty("overload").GetProperty("classes")[0], "class", "timeConstantSeconds", "levelAfterColdStart", "levelAfterHotStart", "dutyLevel", "dutyStartLevel", "unprotectedMultiple", "objection");
        AssertHasKeys(ratings.GetProperty("contactors")[0], "contactor", "category", "ratedAmps", "decides", "ratedVolts", "carriedAmps", "peakVolts", "givenAmps", "switchings");
        AssertHasKeys(ratings.GetProperty("contactors")[0].GetProperty("switchings")[0], "when", "isMaking", "amps", "volts", "timeConstantSeconds");
        Assert.Equal(5, ratings.GetProperty("contactors").GetArrayLength());
        Assert.Equal(20, ratings.GetProperty("heat").GetProperty("duty").GetProperty("startsPerHour").GetDouble(), 1e-9);
    }

    [Fact]
    public async Task Design_JsonOfACaseWithoutItsKeys_HasNoRatings()
    {
        await _cli.Run("design", Path.Combine(Repository.Root, "sim", "cases", "bench-rig.toml"), "--json");

        Assert.Equal(JsonValueKind.Null, _cli.Json().GetProperty("ratings").ValueKind);
    }

    public void Dispose() => _cli.Dispose();

    private static void AssertHasKeys(JsonElement json, params string[] keys) =>
        Assert.Empty(keys.Except(json.EnumerateObject().Select(property => property.Name)));
}
