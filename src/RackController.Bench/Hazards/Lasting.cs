using NodaTime;

namespace RackController.Bench;

/// <summary>Whether something has lasted for longer than it may, at each of several places. It counts from the moment at which it was
/// first seen, and asks to be shown the moment at which it will have lasted too long.</summary>
/// <param name="places">How many places.</param>
/// <param name="borne">How long it may last.</param>
internal sealed class Lasting(int places, Duration borne)
{
    private readonly Duration?[] since = new Duration?[places];

    /// <summary>Looks at one place.</summary>
    /// <param name="place">Which.</param>
    /// <param name="holds">Whether it is so now.</param>
    /// <param name="now">What is true now.</param>
    /// <returns>Whether it has been so for too long without a break.</returns>
    public bool IsTooLong(int place, bool holds, IObserved now)
    {
        since[place] = holds ? since[place] ?? now.Elapsed : null;
        return since[place] is { } from && now.IsLongerSince(from, borne);
    }
}
