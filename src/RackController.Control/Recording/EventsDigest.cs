namespace RackController.Control;

/// <summary>What happened in one scan, in a few bytes: enough to say whether the same happened again.</summary>
/// <param name="Count">How many events there were.</param>
/// <param name="What">A check sum of what happened to what, in order.</param>
/// <param name="Because">A check sum of the reasons in words.</param>
public readonly record struct EventsDigest(int Count, uint What, uint Because)
{
    // FNV-1a, 32 bits: G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, "The FNV Non-Cryptographic Hash Algorithm".
    private const uint Basis = 2166136261;
    private const uint Prime = 16777619;

    /// <summary>The digest of events.</summary>
    /// <param name="events">What happened, in order.</param>
    /// <returns>Null when nothing did.</returns>
    public static EventsDigest? Of(ReadOnlySpan<ControlEvent> events)
    {
        if (events.IsEmpty)
        {
            return null;
        }

        var (what, because) = (Basis, Basis);
        foreach (var happened in events)
        {
            what = Add(Add(Mix(what, (byte)happened.Kind), happened.Subject), happened.What);
            because = Add(because, happened.Because);
        }

        return new EventsDigest(events.Length, what, because);
    }

    private static uint Add(uint sum, string text)
    {
        foreach (var letter in text)
        {
            sum = Mix(Mix(sum, (byte)(letter & 0xff)), (byte)(letter >> 8));
        }

        // Ends a text, so that what is moved from one to the next shows.
        return Mix(sum, byte.MaxValue);
    }

    private static uint Mix(uint sum, byte next) => unchecked((sum ^ next) * Prime);
}
