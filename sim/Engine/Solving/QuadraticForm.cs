namespace StarterCtl.Engine.Solving;

/// <summary>A number that follows from current and speed squared: x' M x for x = (Ia, w, 1), by the upper half of the symmetric M.</summary>
/// <param name="AmpsAmps">Factor of Ia Ia.</param>
/// <param name="AmpsSpeed">Half the factor of Ia w.</param>
/// <param name="AmpsOne">Half the factor of Ia.</param>
/// <param name="SpeedSpeed">Factor of w w.</param>
/// <param name="SpeedOne">Half the factor of w.</param>
/// <param name="One">What is there without either.</param>
internal readonly record struct QuadraticForm(
    double AmpsAmps, double AmpsSpeed, double AmpsOne, double SpeedSpeed, double SpeedOne, double One)
{
    /// <summary>The number at a current and a speed.</summary>
    public double At(double amps, double speed) =>
        amps * (AmpsAmps * amps + 2 * (AmpsSpeed * speed + AmpsOne)) + speed * (SpeedSpeed * speed + 2 * SpeedOne) + One;

    /// <summary>The form times a factor.</summary>
    public QuadraticForm Times(double factor) => new(
        factor * AmpsAmps, factor * AmpsSpeed, factor * AmpsOne, factor * SpeedSpeed, factor * SpeedOne, factor * One);

    /// <summary>The form plus another.</summary>
    public QuadraticForm Plus(in QuadraticForm other) => new(
        AmpsAmps + other.AmpsAmps,
        AmpsSpeed + other.AmpsSpeed,
        AmpsOne + other.AmpsOne,
        SpeedSpeed + other.SpeedSpeed,
        SpeedOne + other.SpeedOne,
        One + other.One);

    /// <summary>Its time derivative along x' = A x: A' M + M A.</summary>
    /// <param name="amps">Row of A for the current.</param>
    /// <param name="speed">Row of A for the speed.</param>
    public QuadraticForm Derivative(in LinearForm amps, in LinearForm speed) => new(
        2 * (AmpsAmps * amps.Amps + AmpsSpeed * speed.Amps),
        AmpsAmps * amps.Speed + AmpsSpeed * (amps.Amps + speed.Speed) + SpeedSpeed * speed.Amps,
        AmpsAmps * amps.One + AmpsSpeed * speed.One + AmpsOne * amps.Amps + SpeedOne * speed.Amps,
        2 * (AmpsSpeed * amps.Speed + SpeedSpeed * speed.Speed),
        AmpsSpeed * amps.One + SpeedSpeed * speed.One + AmpsOne * amps.Speed + SpeedOne * speed.Speed,
        2 * (AmpsOne * amps.One + SpeedOne * speed.One));

    /// <summary>The form of the state that a span of time makes of x: P' M P.</summary>
    /// <param name="amps">Row of P for the current.</param>
    /// <param name="speed">Row of P for the speed.</param>
    public QuadraticForm After(in LinearForm amps, in LinearForm speed)
    {
        double a0 = AmpsAmps * amps.Amps + AmpsSpeed * speed.Amps, a1 = AmpsAmps * amps.Speed + AmpsSpeed * speed.Speed;
        double a2 = AmpsAmps * amps.One + AmpsSpeed * speed.One + AmpsOne;
        double s0 = AmpsSpeed * amps.Amps + SpeedSpeed * speed.Amps, s1 = AmpsSpeed * amps.Speed + SpeedSpeed * speed.Speed;
        double s2 = AmpsSpeed * amps.One + SpeedSpeed * speed.One + SpeedOne;
        double o2 = AmpsOne * amps.One + SpeedOne * speed.One + One;
        return new(
            amps.Amps * a0 + speed.Amps * s0,
            amps.Amps * a1 + speed.Amps * s1,
            amps.Amps * a2 + speed.Amps * s2,
            amps.Speed * a1 + speed.Speed * s1,
            amps.Speed * a2 + speed.Speed * s2,
            amps.One * a2 + speed.One * s2 + o2);
    }
}
