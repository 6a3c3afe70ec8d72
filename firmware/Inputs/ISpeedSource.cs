namespace StarterCtl.Firmware;

/// <summary>A speed sensor of any kind.</summary>
public interface ISpeedSource
{
    /// <summary>Shaft speed, rad/s, positive in the direction of the start; meaningless while it is not valid.</summary>
    float RadPerSec { get; }

    /// <summary>True while the speed is known.</summary>
    bool IsValid { get; }

    /// <summary>Reads the sensor.</summary>
    /// <param name="nowMicroseconds">The board's counter, by which edges are stamped.</param>
    /// <param name="elapsedMicroseconds">Time since the last reading.</param>
    /// <param name="armatureAmps">Armature current of this reading, A; NaN counts as flowing.</param>
    void Update(int nowMicroseconds, int elapsedMicroseconds, float armatureAmps);
}
