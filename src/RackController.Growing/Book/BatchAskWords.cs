using System.Collections.Immutable;
using System.Globalization;
using NodaTime;
using RackController.Model;

namespace RackController.Growing;

/// <summary>Says what batches ask of a rack.</summary>
internal static class BatchAskWords
{
    /// <summary>What would be other than it is: <c>tier 2: 14 h of light instead of 16 h</c>.</summary>
    /// <param name="asks">What is asked.</param>
    public static ImmutableArray<string> Changes(RackAsks asks)
    {
        var rack = asks.Rack;
        var words = ImmutableArray.CreateBuilder<string>();
        foreach (var tier in rack.Tiers.Where(tier => rack.Schedule.Lights[tier.Number - 1] is not null))
        {
            var now = rack.Schedule.Lights[tier.Number - 1]!.Length;
            var then = asks.Asked.LengthOn(tier.Number) ?? rack.OwnSchedule.Lights[tier.Number - 1]!.Length;
            if (then != now)
            {
                words.Add($"{rack.Name}/tier {tier.Number}: {Light(then)} instead of {Light(now)}");
            }
        }

        var (floodsNow, floodsThen) = (rack.Schedule.Starts().Length, asks.Asked.FloodsPerDay ?? rack.OwnSchedule.Starts().Length);
        if (floodsThen != floodsNow)
        {
            words.Add($"{rack.Name}: {FloodsADay(floodsThen)} instead of {floodsNow}");
        }

        return words.DrainToImmutable();
    }

    /// <summary>Hours of light that batches bear: <c>BAS-1 (basil, 12 to 14 h) and PEA-2 (pea, 15 to 18 h)</c>.</summary>
    /// <param name="allowed">The batches with their hours.</param>
    public static string Hours(IEnumerable<(Standing One, Bounds Hours)> allowed) => Joined(allowed.Select(one => string.Create(
        CultureInfo.InvariantCulture, $"{Named(one.One)}, {one.Hours.Least:0.#} to {one.Hours.Most:0.#} h)")));

    /// <summary>Floods a day that batches want.</summary>
    /// <param name="wanted">The batches with their floods.</param>
    public static string Floods(IEnumerable<(Standing One, WholeBounds Floods)> wanted) =>
        Joined(wanted.Select(one => $"{Named(one.One)}, {one.Floods.Least} to {one.Floods.Most})"));

    private static string Named(Standing one) => $"{one.Batch.Lot} ({one.Batch.Start.Crop}";

    private static string Joined(IEnumerable<string> parts)
    {
        var all = parts.Distinct(StringComparer.Ordinal).ToList();
        return all.Count == 1 ? all[0] : $"{string.Join(", ", all.Take(all.Count - 1))} and {all[^1]}";
    }

    private static string Light(Duration length) => length == Duration.Zero ? "dark"
        : length.TotalMinutes % NodaConstants.MinutesPerHour == 0 ? $"{(int)length.TotalHours} h of light"
        : string.Create(CultureInfo.InvariantCulture, $"{(int)length.TotalHours} h {length.Minutes} min of light");

    private static string FloodsADay(int count) => count switch
    {
        0 => "no floods",
        1 => "1 flood a day",
        _ => $"{count} floods a day",
    };
}
