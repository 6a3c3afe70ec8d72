using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>What a board keeps, and where: resets, heat, calibration and settings, one behind the other from address 0 on.</summary>
public sealed class BoardMemory
{
    /// <summary>The memory.</summary>
    public readonly INonVolatile Memory;

    /// <summary>First byte of the calibration.</summary>
    public readonly int CalibrationAddress;

    /// <summary>Resets.</summary>
    public readonly ResetMemory Resets;

    /// <summary>Heat of motor and starting resistor.</summary>
    public readonly HeatStore Heat;

    /// <summary>Settings.</summary>
    public readonly SettingsStore Settings;

    /// <summary>Reads what is there, and counts this reset. A place without room says so by its state.</summary>
    /// <param name="memory">The memory; <see cref="BytesNeeded"/> are enough.</param>
    /// <param name="cause">Why the board began anew.</param>
    public BoardMemory(INonVolatile memory, ResetCause cause)
    {
        Memory = memory;
        int heatAddress = TwoCopyStore.BytesNeeded(memory, ResetMemory.ContentBytes);
        CalibrationAddress = heatAddress + TwoCopyStore.BytesNeeded(memory, HeatStore.ContentBytes);
        Resets = new ResetMemory(memory, 0, cause);
        Heat = new HeatStore(memory, heatAddress);
        Settings = new SettingsStore(memory, CalibrationAddress + TwoCopyStore.BytesNeeded(memory, CalibrationStore.ContentBytes));
    }

    /// <summary>Bytes that all of it takes in a memory of this page.</summary>
    public static int BytesNeeded(INonVolatile memory) =>
        TwoCopyStore.BytesNeeded(memory, ResetMemory.ContentBytes) + TwoCopyStore.BytesNeeded(memory, HeatStore.ContentBytes)
        + TwoCopyStore.BytesNeeded(memory, CalibrationStore.ContentBytes) + TwoCopyStore.BytesNeeded(memory, SettingsStore.MostBytes);

    /// <summary>
    /// Keeps compiled settings where none were ever kept. Settings that were kept, and settings that were and are lost or of another
    /// version, are not replaced: nobody has said that the compiled ones fit this machine.
    /// </summary>
    /// <param name="settings">The settings.</param>
    /// <param name="checksum">The checksum compiled with them; if it is not theirs, they are not kept.</param>
    /// <param name="caseHash">The case that they were designed from.</param>
    public void FillBlank(Settings settings, int checksum, int caseHash)
    {
        if (Settings.State == StoreState.Blank) Settings.TryKeep(settings, checksum, caseHash);
    }
}
