using System.CommandLine.Parsing;
using System.Globalization;
using RackController.Bench;

namespace RackController.Verbs;

/// <summary>Reads times as a stopwatch shows them: <c>2=3:10,3:14,3:09</c>.</summary>
internal static class StopwatchTimes
{
    private const int MostTier = 99;

    /// <summary>Reads what an option was given, or says what to write instead.</summary>
    /// <param name="result">What was written.</param>
    /// <param name="name">The option.</param>
    public static HandTimes[] Read(ArgumentResult result, string name)
    {
        var all = result.Tokens.Select(token => Of(token.Value)).ToList();
        if (all.Contains(null))
        {
            result.AddError($"{name} takes a tier and its times in minutes and seconds, flood by flood, such as 2=3:10,3:14,3:09");
        }
        else if (all.GroupBy(one => one!.Tier).FirstOrDefault(tier => tier.Count() > 1) is { } twice)
        {
            result.AddError($"{name} names tier {twice.Key} twice: write all its times together, such as {twice.Key}=3:10,3:14,3:09");
        }

        return [.. all.OfType<HandTimes>()];
    }

    private static HandTimes? Of(string text)
    {
        var parts = text.Split('=');
        if (parts.Length != 2 || !int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var tier)
            || tier is < 1 or > MostTier)
        {
            return null;
        }

        return WatchTimes.Read(parts[1]) is { } times ? new HandTimes(tier, times) : null;
    }
}
