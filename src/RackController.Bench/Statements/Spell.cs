using NodaTime;

namespace RackController.Bench;

/// <summary>Judging by how long ago something was.</summary>
internal static class Spell
{
    /// <summary>Whether more time has passed since a moment than may; if not yet, asks to be shown the moment at which it will
    /// have.</summary>
    /// <param name="now">What is true now.</param>
    /// <param name="from">The moment, as time since the run began.</param>
    /// <param name="borne">How much may pass.</param>
    public static bool IsLongerSince(this IObserved now, Duration from, Duration borne)
    {
        if (now.Elapsed - from > borne)
        {
            return true;
        }

        now.LookAgainBy(from + borne + Duration.Epsilon);
        return false;
    }
}
