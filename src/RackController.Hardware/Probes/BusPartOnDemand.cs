namespace RackController.Hardware.Probes;

/// <summary>A part on a bus, set up when it is first asked and again after it failed: one that was unplugged has forgotten what it was
/// told.</summary>
/// <typeparam name="TPart">What speaks to it.</typeparam>
/// <param name="setUp">Sets it up; throws <see cref="IOException"/> where it does not answer.</param>
internal sealed class BusPartOnDemand<TPart>(Func<TPart> setUp)
    : IDisposable
    where TPart : class, IDisposable
{
    private TPart? part;

    /// <summary>Asks it for a value.</summary>
    /// <exception cref="IOException">It did not answer, or what it said cannot be true.</exception>
    public double Ask(Func<TPart, double> read)
    {
        try
        {
            part ??= setUp();
            return read(part);
        }
        catch (Exception failure) when (failure
            is IOException or UnauthorizedAccessException or InvalidOperationException or TimeoutException)
        {
            Dispose();
            throw failure as IOException ?? new IOException(failure.Message, failure);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        part?.Dispose();
        part = null;
    }
}
