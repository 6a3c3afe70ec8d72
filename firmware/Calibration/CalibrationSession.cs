namespace StarterCtl.Firmware;

/// <summary>
/// Takes the two points of one channel at a time: its zero, with every output proven off, and a second one whose true value
/// somebody has measured. Nothing is in force until it is saved.
/// </summary>
public sealed class CalibrationSession
{
    private readonly CalibratedChannel[] _channels;
    private readonly CalibrationStore _store;
    private readonly SampleMean _samples = new SampleMean();
    private float _trueUnits;

    /// <summary>The channel of the session.</summary>
    public CalibrationChannel Channel = CalibrationChannel.Count;

    /// <summary>How far it has come.</summary>
    public CalibrationState State;

    /// <summary>What came of its last step.</summary>
    public CalibrationReason Reason;

    /// <summary>Offset and gain so far; the gain is that in force until the second point is there.</summary>
    public readonly ChannelCalibration New = new ChannelCalibration();

    /// <summary>Mean of the last point, counts.</summary>
    public float MeanCounts => _samples.Mean;

    /// <summary>Spread of the last point, counts.</summary>
    public int SpreadCounts => _samples.Spread;

    /// <summary>Builds an idle session.</summary>
    public CalibrationSession(CalibratedChannel[] channels, CalibrationStore store)
    {
        _channels = channels;
        _store = store;
    }

    /// <summary>True while samples are being taken.</summary>
    public bool IsTaking => State == CalibrationState.TakingZero || State == CalibrationState.TakingSpan;

    /// <summary>Begins with a channel that is fitted; what another session has left is dropped.</summary>
    public CalibrationReason Begin(CalibrationChannel channel)
    {
        Abort();
        Channel = channel;
        return Go(CalibrationState.Begun);
    }

    /// <summary>Begins to take the zero.</summary>
    /// <param name="isAtRest">True while every output is proven off.</param>
    public CalibrationReason TakeZero(bool isAtRest)
    {
        if (State == CalibrationState.Idle) return Say(CalibrationReason.NotBegun);
        if (IsTaking) return Say(CalibrationReason.Busy);
        if (!isAtRest) return Say(CalibrationReason.NotAtRest);
        _samples.Restart();
        return Go(CalibrationState.TakingZero);
    }

    /// <summary>Begins to take the second point.</summary>
    /// <param name="trueUnits">What another instrument shows, in the channel's unit.</param>
    public CalibrationReason TakeSpan(float trueUnits)
    {
        if (State == CalibrationState.Idle) return Say(CalibrationReason.NotBegun);
        if (IsTaking) return Say(CalibrationReason.Busy);
        if (State == CalibrationState.Begun) return Say(CalibrationReason.NoZero);
        if (!(trueUnits > 0f || trueUnits < 0f) || float.IsInfinity(trueUnits)) return Say(CalibrationReason.UnusableValue);
        _trueUnits = trueUnits;
        _samples.Restart();
        return Go(CalibrationState.TakingSpan);
    }

    /// <summary>Saves both points, reads them back, and puts them in force. Ends the session.</summary>
    /// <param name="isAtRest">True while every output is proven off.</param>
    public CalibrationReason Save(bool isAtRest)
    {
        if (State == CalibrationState.Idle) return Say(CalibrationReason.NotBegun);
        if (IsTaking) return Say(CalibrationReason.Busy);
        if (State != CalibrationState.Complete) return Say(CalibrationReason.NothingToSave);
        if (!isAtRest) return Say(CalibrationReason.NotAtRest);
        if (!_store.TryKeep(Channel, New)) return Say(CalibrationReason.NotStored);
        return Go(CalibrationState.Idle);
    }

    /// <summary>Saves the former pair of a channel and puts it in force; done twice, it undoes itself. Ends a session.</summary>
    /// <param name="channel">One that is fitted.</param>
    /// <param name="isAtRest">True while every output is proven off.</param>
    public CalibrationReason Undo(CalibrationChannel channel, bool isAtRest)
    {
        Abort();
        Channel = channel;
        if (!isAtRest) return Say(CalibrationReason.NotAtRest);
        return Say(_store.TryUndo(channel) ? CalibrationReason.Done : CalibrationReason.NotStored);
    }

    /// <summary>Ends the session; nothing of it is kept.</summary>
    public void Abort()
    {
        Channel = CalibrationChannel.Count;
        _samples.Restart();
        Go(CalibrationState.Idle);
    }

    /// <summary>Takes the counts of a control period over.</summary>
    /// <param name="isAtRest">True while every output is proven off.</param>
    public void Step(bool isAtRest)
    {
        if (!IsTaking) return;
        CalibratedChannel channel = _channels[(int)Channel];
        if (State == CalibrationState.TakingZero && !isAtRest) Fail(CalibrationReason.NotAtRest);
        else if (!channel.IsRead) Fail(CalibrationReason.NotRead);
        else if (IsAtRail(channel)) Fail(CalibrationReason.AtRail);
        else Take(channel);
    }

    // A zero may lie at the lower end: what is not there cannot be less. A second point may lie at neither.
    private bool IsAtRail(CalibratedChannel channel) =>
        channel.Counts == channel.FullScaleCounts || (channel.Counts == 0 && State == CalibrationState.TakingSpan);

    private void Take(CalibratedChannel channel)
    {
        _samples.Add(channel.Counts);
        if (_samples.Spread > CalibrationLimits.MostSpreadRatio * channel.FullScaleCounts) Fail(CalibrationReason.Noisy);
        else if (_samples.Count < CalibrationLimits.Samples) return;
        else if (State == CalibrationState.TakingZero) EndZero(channel);
        else EndSpan(channel);
    }

    private void EndZero(CalibratedChannel channel)
    {
        CalibrationReason reason = CalibrationLimits.CheckOffset(channel, _samples.Mean);
        if (reason != CalibrationReason.Done)
        {
            Fail(reason);
            return;
        }

        New.OffsetCounts = _samples.Mean;
        New.UnitsPerCount = channel.InForce.UnitsPerCount;
        Go(CalibrationState.ZeroTaken);
    }

    private void EndSpan(CalibratedChannel channel)
    {
        float span = _samples.Mean - New.OffsetCounts;
        float least = CalibrationLimits.LeastSpanRatio * channel.FullScaleCounts;
        if (span < least && span > -least)
        {
            Fail(CalibrationReason.SpanTooSmall);
            return;
        }

        float unitsPerCount = _trueUnits / span;
        CalibrationReason reason = CalibrationLimits.CheckGain(channel, unitsPerCount);
        if (reason != CalibrationReason.Done)
        {
            Fail(reason);
            return;
        }

        New.UnitsPerCount = unitsPerCount;
        Go(CalibrationState.Complete);
    }

    // A point that was refused is taken again; what was there before it stands.
    private void Fail(CalibrationReason reason)
    {
        State = State == CalibrationState.TakingZero ? CalibrationState.Begun : CalibrationState.ZeroTaken;
        Say(reason);
    }

    private CalibrationReason Go(CalibrationState state)
    {
        State = state;
        return Say(CalibrationReason.Done);
    }

    private CalibrationReason Say(CalibrationReason reason)
    {
        Reason = reason;
        return reason;
    }
}
