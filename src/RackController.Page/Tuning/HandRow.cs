using System.Collections.Immutable;
using Microsoft.AspNetCore.Http;
using RackController.Bench;
using RackController.Model;

namespace RackController.Page;

/// <summary>What was written of one tier that was timed by hand.</summary>
/// <param name="Tier">The tier, 1 at the bottom.</param>
/// <param name="Fill">Its times to fill, as written; empty for none.</param>
/// <param name="Drain">Its times to drain, likewise.</param>
public sealed record HandRow(int Tier, string Fill, string Drain)
{
    /// <summary>Whether its times to fill can be read.</summary>
    public bool IsFillRight => Read(Fill) is not null;

    /// <summary>Whether its times to drain can be read.</summary>
    public bool IsDrainRight => Read(Drain) is not null;

    /// <summary>A row for each tier, as written in a form.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="form">The form; null where nothing was written yet.</param>
    public static ImmutableArray<HandRow> Of(Rack rack, IFormCollection? form)
    {
        string Written(string name) => form?[name].ToString().Trim() ?? "";
        return
        [
            .. rack.Tiers.Where(tier => tier.InUse).Reverse()
                .Select(tier => new HandRow(tier.Number, Written($"fill-{tier.Number}"), Written($"drain-{tier.Number}"))),
        ];
    }

    /// <summary>The times that were written, of those tiers that have any.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="written">Which of the two.</param>
    public static ImmutableArray<HandTimes> Times(IEnumerable<HandRow> rows, Func<HandRow, string> written) =>
    [
        .. rows.Where(row => written(row).Length > 0).Select(row => new HandTimes(row.Tier, Read(written(row)) ?? [])),
    ];

    private static ImmutableArray<double>? Read(string written) => written.Length == 0 ? [] : WatchTimes.Read(written);
}
