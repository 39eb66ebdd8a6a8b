using NodaTime;

namespace RackController.Notices;

/// <summary>When a message that did not get through is tried again: soon at first, ever more rarely, and not for ever.</summary>
internal static class RetryPlan
{
    /// <summary>The longest pause between two tries, whatever the other side asks for.</summary>
    public static readonly Duration LongestPause = Duration.FromHours(1);

    /// <summary>After this long a message is given up: who has not been reached for days has other news to read.</summary>
    public static readonly Duration GiveUpAfter = Duration.FromDays(3);

    private static readonly Duration FirstPause = Duration.FromMinutes(1);

    /// <summary>How long to wait after a try.</summary>
    /// <param name="tries">How many were in vain, from 1.</param>
    /// <param name="asked">How long the other side wants to be left alone; null where it does not say.</param>
    public static Duration PauseAfter(int tries, Duration? asked)
    {
        var pause = Duration.Min(FirstPause * Math.Pow(2, Math.Min(tries - 1, 10)), LongestPause);
        return asked is { } wish ? Duration.Min(Duration.Max(wish, pause), LongestPause) : pause;
    }

    /// <summary>Whether a message is due.</summary>
    /// <param name="letter">The message.</param>
    /// <param name="now">The time; where it was set back by more than a pause, nobody waits for it.</param>
    public static bool IsDue(Letter letter, Instant now) => now >= letter.NextTry || letter.NextTry - now > LongestPause;
}
