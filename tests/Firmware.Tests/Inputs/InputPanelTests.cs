using System.Linq;
using StarterCtl.Core;
using StarterCtl.Firmware.Tests.Boards;
using Xunit;

namespace StarterCtl.Firmware.Tests.Inputs;

/// <summary>What a board's pins become in the core's readings, one input at a time.</summary>
public sealed class InputPanelTests
{
    private static readonly PinRole[] EveryContact =
        [PinRole.StopChain, PinRole.StopButton, PinRole.StartButton, PinRole.ResetButton, PinRole.LineContact, PinRole.StageContact1, PinRole.Permissive1];

    private readonly Readings _readings = new();

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void AtRest_EitherLevel_ReadsNothingPressedAndNothingClosed(bool isActiveLow)
    {
        (InputPanel panel, SoftPins _) = Built(isActiveLow ? EveryContact : []);

        Read(panel, 30);

        Assert.False(_readings.EmergencyStop || _readings.StopPressed || _readings.StartPressed || _readings.ResetPressed || _readings.LineClosed);
        Assert.Equal((0, 1), (_readings.StagesClosed, _readings.Permissives));
        Assert.Equal(250f, _readings.SupplyVolts, 0.07f);
        Assert.Equal(0f, _readings.ArmatureAmps, 0.33f);
    }

    [Fact]
    public void FirstReading_CountsAsWhatPermitsLess()
    {
        (InputPanel panel, SoftPins _) = Built();

        Read(panel, 1);

        Assert.True(_readings is { StartPressed: true, ResetPressed: true, LineClosed: true, StagesClosed: 7, Permissives: 0 });
        Assert.False(_readings.EmergencyStop || _readings.StopPressed);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void StopChainAndStop_Open_ShowOnTheSameReading(bool isActiveLow)
    {
        (InputPanel panel, SoftPins pins) = Built(isActiveLow ? EveryContact : []);
        Read(panel, 30);

        pins.Close(PinRole.StopChain, false);
        Read(panel, 1);
        Assert.Equal((true, false), (_readings.EmergencyStop, _readings.StopPressed));

        pins.Close(PinRole.StopButton, false);
        Read(panel, 1);
        Assert.Equal((true, true), (_readings.EmergencyStop, _readings.StopPressed));
    }

    [Fact]
    public void StopChain_OpenAtPowerUp_ShowsOnTheFirstReading()
    {
        (InputPanel panel, SoftPins pins) = Built();
        pins.Close(PinRole.StopChain, false);

        Read(panel, 1);

        Assert.True(_readings.EmergencyStop);
    }

    [Theory]
    [InlineData(PinRole.StopChain, false, 20)]
    [InlineData(PinRole.StartButton, true, 20)]
    [InlineData(PinRole.LineContact, true, 5)]
    [InlineData(PinRole.Permissive1, false, 5)]
    public void Contact_Moves_CountsAfterItsTime(PinRole role, bool isClosed, int milliseconds)
    {
        (InputPanel panel, SoftPins pins) = Built();
        if (role == PinRole.StopChain) pins.Close(role, false);
        Read(panel, 30);
        string before = Shown();

        pins.Close(role, role == PinRole.StopChain || isClosed);
        Read(panel, milliseconds);
        Assert.Equal(before, Shown());

        Read(panel, 1);
        Assert.NotEqual(before, Shown());
    }

    [Fact]
    public void Contacts_OfStagesAndPermissives_HaveTheirBits()
    {
        (InputPanel panel, SoftPins pins) = Built();
        pins.Close(PinRole.StageContact1 + 2);

        Read(panel, 30);

        Assert.Equal((4, 1), (_readings.StagesClosed, _readings.Permissives));
    }

    [Fact]
    public void Analog_BrokenWire_IsNaNAndNotZero()
    {
        (InputPanel panel, SoftPins pins) = Built();
        Read(panel, 30);

        pins.ShowCounts(PinRole.ArmatureAmps, 0);
        Read(panel, 2);

        Assert.Equal((float.NaN, AnalogFault.TooFewCounts), (_readings.ArmatureAmps, panel.Armature.Fault));
        Assert.False(float.IsNaN(_readings.SupplyVolts));
    }

    [Fact]
    public void Speed_CurrentUnknown_IsNotTakenForStanding()
    {
        (InputPanel panel, SoftPins pins) = Built();
        pins.ShowCounts(PinRole.ArmatureAmps, 0);

        Read(panel, 3000);

        Assert.False(_readings.SpeedValid);
    }

    [Fact]
    public void Sensors_ThatAreFitted_AreRead()
    {
        Settings settings = FakeBoard.Chk01();
        PinMap map = SoftPins.Wired(settings);
        foreach (PinRole role in new[] { PinRole.FieldAmps, PinRole.ResistorCelsius, PinRole.TachoRadPerSec, PinRole.BrakeContact, PinRole.FieldContact }) map.Wire(role, (int)role, false);
        foreach (AnalogSetup setup in new[] { map.Field, map.Resistor, map.Tacho }) SoftPins.Scale(setup, -400f, 400f);
        SoftPins pins = new SoftPins(map).AtRest();
        InputPanel panel = new(map, pins);
        pins.Show(PinRole.FieldAmps, map.Field, 2);
        pins.Show(PinRole.ResistorCelsius, map.Resistor, 80);
        pins.Show(PinRole.TachoRadPerSec, map.Tacho, -100);
        pins.Close(PinRole.FieldContact);

        Read(panel, 30);

        Assert.Equal((true, false, true), (_readings.SpeedValid, _readings.BrakeClosed, _readings.FieldClosed));
        Assert.Equal((2.0, 80.0, -100.0), (System.Math.Round(_readings.FieldAmps), System.Math.Round(_readings.ResistorCelsius), System.Math.Round(_readings.SpeedRadPerSec)));
    }

    private static (InputPanel Panel, SoftPins Pins) Built(params PinRole[] activeLow)
    {
        PinMap map = SoftPins.Wired(FakeBoard.Chk01(), activeLow);
        SoftPins pins = new SoftPins(map).AtRest();
        return (new InputPanel(map, pins), pins);
    }

    private void Read(InputPanel panel, int milliseconds)
    {
        for (int i = 0; i < milliseconds; i++) panel.Read(0, 1000, _readings);
    }

    private string Shown() =>
        string.Join(' ', new object[] { _readings.EmergencyStop, _readings.StopPressed, _readings.StartPressed, _readings.LineClosed, _readings.StagesClosed, _readings.Permissives }.Select(shown => $"{shown}"));
}
