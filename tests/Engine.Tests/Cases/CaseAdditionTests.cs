using StarterCtl.Engine.Cases;
using Xunit;

namespace StarterCtl.Engine.Tests.Cases;

public sealed class CaseAdditionTests
{
    private const string Head = "[starter]\npeak-current = \"150 A\"    # twice rated\nstages = 3\n";

    [Fact]
    public void New_keys_stand_behind_the_head_of_their_table_and_all_else_stays()
    {
        string text = Added(Head + "\n[run]\nduration = \"1 s\"\n", ["# why"], (CaseKeys.StarterSwitchingCurrent, "\"90 A\""));
        Assert.Equal("[starter]\n# why\nswitching-current = \"90 A\"\npeak-current = \"150 A\"    # twice rated\nstages = 3\n\n[run]\nduration = \"1 s\"\n", text);
    }

    [Fact]
    public void A_key_that_is_there_gets_the_new_value_and_keeps_its_comment()
    {
        string text = Added(Head, [], (CaseKeys.StarterPeakCurrent, "\"99.5 A\""), (CaseKeys.StarterSwitchingCurrent, "\"60 A\""));
        Assert.Equal("[starter]\nswitching-current = \"60 A\"\npeak-current = \"99.5 A\"    # twice rated\nstages = 3\n", text);
    }

    [Theory]
    [InlineData("starter.peak-current = \"150 A\"\nstarter.stages = 3\n", "starter.peak-current = \"150 A\"\nstarter.switching-current = \"90 A\"\nstarter.stages = 3\n")]
    [InlineData("[starter]\r\npeak-current = \"150 A\"\r\n", "[starter]\r\nswitching-current = \"90 A\"\r\npeak-current = \"150 A\"\r\n")]
    [InlineData("[starter]", "[starter]\nswitching-current = \"90 A\"")]
    public void Dotted_keys_other_line_ends_and_a_missing_last_line_end_are_kept(string before, string after) =>
        Assert.Equal(after, Added(before, [], (CaseKeys.StarterSwitchingCurrent, "\"90 A\"")));

    [Fact]
    public void A_table_that_is_not_there_comes_last_behind_events_too()
    {
        string before = Head + "\n[[event]]\nat = \"1 s\"\nload-torque = \"1 N m\"\n";
        string text = Added(before, ["# why"], (CaseKeys.LimitsPeakTorque, "\"9 N m\""));
        Assert.Equal(before + "\n[limits]\n# why\npeak-torque = \"9 N m\"\n", text);
        Assert.Equal(9, CaseFile.Parse("case.toml", text).Number(CaseKeys.LimitsPeakTorque));
    }

    [Fact]
    public void A_table_on_one_line_is_refused()
    {
        CaseFile file = CaseFile.Parse("case.toml", "starter = { stages = 3 }\n");
        CaseException error = Assert.Throws<CaseException>(() => CaseAddition.To(file, [], [(CaseKeys.StarterSwitchingCurrent, "\"90 A\"")]));
        Assert.Equal("case.toml:1: starter.switching-current: found the starter table on one line; allowed: a [starter] table, to which keys can be added", error.Message);
    }

    private static string Added(string text, string[] comments, params (CaseKey Key, string Value)[] pairs)
    {
        string added = CaseAddition.To(CaseFile.Parse("case.toml", text), comments, pairs);
        CaseFile read = CaseFile.Parse("case.toml", added);
        Assert.All(pairs, pair => Assert.Equal(pair.Value.Trim('"'), read.Written(pair.Key)));
        return added;
    }
}
