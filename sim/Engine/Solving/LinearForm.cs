namespace StarterCtl.Engine.Solving;

/// <summary>A number that follows from current and speed in a straight line: a row of factors of (Ia, w, 1).</summary>
/// <param name="Amps">Factor of the armature current.</param>
/// <param name="Speed">Factor of the shaft speed.</param>
/// <param name="One">What is there without either.</param>
public readonly record struct LinearForm(double Amps, double Speed, double One)
{
    /// <summary>The number at a current and a speed.</summary>
    public double At(double amps, double speed) => Amps * amps + Speed * speed + One;

    /// <summary>The form times a factor.</summary>
    internal LinearForm Times(double factor) => new(factor * Amps, factor * Speed, factor * One);

    /// <summary>The form plus another.</summary>
    internal LinearForm Plus(in LinearForm other) => new(Amps + other.Amps, Speed + other.Speed, One + other.One);

    /// <summary>The form of other numbers that take the place of current and speed, without its own constant.</summary>
    /// <param name="amps">What takes the place of the current.</param>
    /// <param name="speed">What takes the place of the speed.</param>
    internal LinearForm Of(in LinearForm amps, in LinearForm speed) => new(
        Amps * amps.Amps + Speed * speed.Amps,
        Amps * amps.Speed + Speed * speed.Speed,
        Amps * amps.One + Speed * speed.One);
}
