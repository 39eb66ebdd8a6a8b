namespace RackController.Hardware.Probes;

/// <summary>A line whose pulses the kernel counts and dates.</summary>
internal interface IPulseLine : IDisposable
{
    /// <summary>Takes pulses that were not taken before, without waiting.</summary>
    /// <param name="pulses">Where to put them.</param>
    /// <returns>How many there were: where more came than fit anywhere, the newest.</returns>
    /// <exception cref="IOException">The line is gone.</exception>
    int Take(Span<Pulse> pulses);
}

/// <summary>One pulse.</summary>
/// <param name="Nanoseconds">When it came, by a clock of the kernel.</param>
/// <param name="Number">Which one it was; those that were lost count too, and it wraps.</param>
internal readonly record struct Pulse(ulong Nanoseconds, uint Number);
