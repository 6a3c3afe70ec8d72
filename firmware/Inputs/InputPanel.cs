using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>Reads every input of a board into the core's readings. What is not fitted keeps its resting value.</summary>
public sealed class InputPanel
{
    private readonly AnalogChannel? _resistor;
    private readonly ISpeedSource? _speed;
    private readonly ContactInput? _line;
    private readonly ContactInput? _brake;
    private readonly ContactInput? _fieldContact;
    private readonly ContactInput _stopChain;
    private readonly ContactInput? _stop;
    private readonly ContactInput? _start;
    private readonly ContactInput? _reset;
    private readonly ContactInput?[] _stages = new ContactInput?[Settings.MostStages];
    private readonly ContactInput?[] _permissives = new ContactInput?[PinMap.MostPermissives];

    /// <summary>Supply voltage.</summary>
    public readonly AnalogChannel Supply;

    /// <summary>Armature current.</summary>
    public readonly AnalogChannel Armature;

    /// <summary>Field current, where it is measured.</summary>
    public readonly AnalogChannel? Field;

    /// <summary>Tacho generator, where there is one.</summary>
    public readonly AnalogChannel? Tacho;

    /// <summary>Opens every input.</summary>
    /// <param name="map">A wiring that <see cref="BoardCheck"/> has passed.</param>
    /// <param name="pins">The board.</param>
    public InputPanel(PinMap map, IBoardPins pins)
    {
        Supply = new AnalogChannel(pins.Analog(map.Pin(PinRole.SupplyVolts)), map.Supply);
        Armature = new AnalogChannel(pins.Analog(map.Pin(PinRole.ArmatureAmps)), map.Armature);
        Field = Channel(map, pins, PinRole.FieldAmps, map.Field);
        _resistor = Channel(map, pins, PinRole.ResistorCelsius, map.Resistor);
        Tacho = Channel(map, pins, PinRole.TachoRadPerSec, map.Tacho);
        _speed = Tacho != null ? new TachoSpeed(Tacho, map.Standstill) : Edges(map, pins);

        // Before its first time is over a contact counts as what permits less: not proven open, start held, permission not given. The
        // openings of stop and stop chain have no such time and show on the first reading.
        int contact = map.ContactDebounceMicroseconds;
        int button = map.ButtonDebounceMicroseconds;
        _line = Contact(map, pins, PinRole.LineContact, new Debounce(true, contact, contact));
        _brake = Contact(map, pins, PinRole.BrakeContact, new Debounce(true, contact, contact));
        _fieldContact = Contact(map, pins, PinRole.FieldContact, new Debounce(true, contact, contact));
        for (int i = 0; i < _stages.Length; i++) _stages[i] = Contact(map, pins, PinRole.StageContact1 + i, new Debounce(true, contact, contact));
        for (int i = 0; i < _permissives.Length; i++) _permissives[i] = Contact(map, pins, PinRole.Permissive1 + i, new Debounce(false, contact, contact));
        _stopChain = new ContactInput(pins.Input(map.Pin(PinRole.StopChain)), map.IsActiveLow(PinRole.StopChain), new Debounce(true, button, 0));
        _stop = Contact(map, pins, PinRole.StopButton, new Debounce(true, button, 0));
        _start = Contact(map, pins, PinRole.StartButton, new Debounce(true, button, button));
        _reset = Contact(map, pins, PinRole.ResetButton, new Debounce(true, button, button));
    }

    /// <summary>Reads every input once.</summary>
    /// <param name="nowMicroseconds">The board's counter.</param>
    /// <param name="elapsedMicroseconds">Time since the last reading.</param>
    /// <param name="readings">Receives them.</param>
    public void Read(int nowMicroseconds, int elapsedMicroseconds, Readings readings)
    {
        Supply.Update(elapsedMicroseconds);
        Armature.Update(elapsedMicroseconds);
        readings.SupplyVolts = Supply.Units;
        readings.ArmatureAmps = Armature.Units;
        if (Field != null) readings.FieldAmps = Units(Field, elapsedMicroseconds);
        if (_resistor != null) readings.ResistorCelsius = Units(_resistor, elapsedMicroseconds);
        if (_speed != null) ReadSpeed(_speed, nowMicroseconds, elapsedMicroseconds, readings);

        readings.EmergencyStop = !_stopChain.IsClosed(elapsedMicroseconds);
        readings.StopPressed = _stop != null && !_stop.IsClosed(elapsedMicroseconds);
        readings.StartPressed = IsClosed(_start, elapsedMicroseconds);
        readings.ResetPressed = IsClosed(_reset, elapsedMicroseconds);
        readings.LineClosed = IsClosed(_line, elapsedMicroseconds);
        readings.BrakeClosed = IsClosed(_brake, elapsedMicroseconds);
        readings.FieldClosed = IsClosed(_fieldContact, elapsedMicroseconds);
        readings.StagesClosed = Bits(_stages, elapsedMicroseconds);
        readings.Permissives = Bits(_permissives, elapsedMicroseconds);
    }

    private static AnalogChannel? Channel(PinMap map, IBoardPins pins, PinRole role, AnalogSetup setup) =>
        map.IsFitted(role) ? new AnalogChannel(pins.Analog(map.Pin(role)), setup) : null;

    private static ContactInput? Contact(PinMap map, IBoardPins pins, PinRole role, Debounce debounce) =>
        map.IsFitted(role) ? new ContactInput(pins.Input(map.Pin(role)), map.IsActiveLow(role), debounce) : null;

    private static EdgeSpeed? Edges(PinMap map, IBoardPins pins)
    {
        if (!map.IsFitted(PinRole.SpeedEdges)) return null;
        IPulseInput input = pins.Pulses(map.Pin(PinRole.SpeedEdges), map.Pin(PinRole.SpeedDirection));
        return new EdgeSpeed(input, map.Pulses, map.Standstill, map.IsFitted(PinRole.SpeedDirection) ? null : new EdgeDoubt(map.Pulses));
    }

    private static void ReadSpeed(ISpeedSource speed, int nowMicroseconds, int elapsedMicroseconds, Readings readings)
    {
        speed.Update(nowMicroseconds, elapsedMicroseconds, readings.ArmatureAmps);
        readings.SpeedRadPerSec = speed.RadPerSec;
        readings.SpeedValid = speed.IsValid;
    }

    private static float Units(AnalogChannel channel, int elapsedMicroseconds)
    {
        channel.Update(elapsedMicroseconds);
        return channel.Units;
    }

    private static bool IsClosed(ContactInput? contact, int elapsedMicroseconds) => contact != null && contact.IsClosed(elapsedMicroseconds);

    private static int Bits(ContactInput?[] contacts, int elapsedMicroseconds)
    {
        int bits = 0;
        for (int i = 0; i < contacts.Length; i++)
        {
            if (IsClosed(contacts[i], elapsedMicroseconds)) bits |= 1 << i;
        }

        return bits;
    }
}
