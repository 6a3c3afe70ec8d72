namespace StarterCtl.Firmware;

/// <summary>
/// Records what every analogue channel shows at rest, with coils on, and at the release of a coil. Commands nothing: somebody
/// has to start and stop meanwhile. Sees one sample per control period: a spike between two goes unseen.
/// </summary>
public sealed class NoiseCheck
{
    private const int Unread = -1;

    private readonly CalibratedChannel[] _channels;
    private readonly NoiseFigures[] _figures;
    private readonly int[] _last;

    /// <summary>Builds it, not recording.</summary>
    public NoiseCheck(CalibratedChannel[] channels)
    {
        _channels = channels;
        _figures = new NoiseFigures[channels.Length * (int)NoiseSituation.None];
        _last = new int[channels.Length];
        for (int i = 0; i < _figures.Length; i++) _figures[i] = new NoiseFigures();
    }

    /// <summary>True while it records.</summary>
    public bool IsRecording { get; private set; }

    /// <summary>Forgets what was recorded and begins.</summary>
    public void Begin()
    {
        IsRecording = true;
        for (int i = 0; i < _figures.Length; i++) _figures[i].Restart();
        for (int i = 0; i < _last.Length; i++) _last[i] = Unread;
    }

    /// <summary>Ends; what was recorded stays.</summary>
    public void End() => IsRecording = false;

    /// <summary>What was recorded of a channel in a situation other than none.</summary>
    public NoiseFigures Figures(CalibrationChannel channel, NoiseSituation situation) =>
        _figures[(int)channel * (int)NoiseSituation.None + (int)situation];

    /// <summary>Takes the counts of a control period over.</summary>
    public void Step(NoiseSituation situation)
    {
        if (!IsRecording) return;
        for (int i = 0; i < _channels.Length; i++)
        {
            CalibratedChannel channel = _channels[i];
            if (!channel.IsFitted || !channel.IsRead)
            {
                _last[i] = Unread;
                continue;
            }

            int step = _last[i] == Unread ? 0 : channel.Counts > _last[i] ? channel.Counts - _last[i] : _last[i] - channel.Counts;
            _last[i] = channel.Counts;
            if (situation != NoiseSituation.None) Figures((CalibrationChannel)i, situation).Add(channel.Counts, step);
        }
    }
}
