using System.Collections.Immutable;
using NodaTime;
using RackController.Growing;
using RackController.Model;

namespace RackController.Bench;

/// <summary>How a site stands on one day of a plan: what is on each tier and how long its lamp is on. Days that stand
/// alike take alike.</summary>
internal sealed class PlannedDay : IEquatable<PlannedDay>
{
    private static readonly LocalTime usualStart = new(6, 0);

    private readonly ImmutableArray<(int Trays, double LitH)> tiers;

    private PlannedDay(ImmutableArray<(int Trays, double LitH)> tiers) => this.tiers = tiers;

    /// <summary>How the tiers of a plan stand on a day, by their place in its space.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="date">The day.</param>
    public static PlannedDay Of(Plan plan, LocalDate date)
    {
        var stays = plan.Batches.SelectMany(batch => batch.Stays).Where(stay => stay.From <= date && date < stay.Until)
            .ToLookup(stay => stay.Tier, stay => stay.Trays);
        var lamps = plan.Lamps.Where(lamp => lamp.From <= date && date < lamp.Until)
            .ToLookup(lamp => lamp.Tier, lamp => lamp.PhotoperiodH);
        return new PlannedDay([.. plan.Request.Space.Tiers.Select((_, tier) => (stays[tier].Sum(), lamps[tier].FirstOrDefault()))]);
    }

    /// <summary>The site with those trays on its tiers and its lamps set so. Tiers that the plan knows nothing of stay as the rack file has
    /// them; a lamp comes on when the rack file says.</summary>
    /// <param name="site">The site as its rack file has it.</param>
    /// <param name="space">The tiers of the plan.</param>
    public Site Set(Site site, GrowSpace space) => site with { Racks = [.. site.Racks.Select(rack => Set(rack, space))] };

    /// <inheritdoc/>
    public bool Equals(PlannedDay? other) => other is not null && tiers.AsSpan().SequenceEqual(other.tiers.AsSpan());

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as PlannedDay);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var tier in tiers)
        {
            hash.Add(tier);
        }

        return hash.ToHashCode();
    }

    private Rack Set(Rack rack, GrowSpace space)
    {
        var planned = space.Tiers.Index().Where(tier => tier.Item.Rack == rack.Name)
            .ToDictionary(tier => tier.Item.Number, tier => tiers[tier.Index]);
        return rack with
        {
            Tiers = [.. rack.Tiers.Select(tier => planned.TryGetValue(tier.Number, out var set)
                ? tier with { Tray = Holding(tier.Tray, set.Trays) } : tier)],
            Schedule = rack.Schedule with
            {
                Lights = [.. rack.Schedule.Lights.Select((light, index) => planned.TryGetValue(index + 1, out var set)
                    ? new Photoperiod(light?.Start ?? usualStart, Duration.FromHours(set.LitH)) : light)],
            },
        };
    }

    // Fewer trays leave more room for water.
    private static FloodTray Holding(FloodTray tray, int trays) => tray with
    {
        Contents = tray.Contents with
        {
            InsertTrays = trays,
            DisplacedShare = tray.Contents.DisplacedShare * trays / tray.Contents.InsertTrays,
        },
    };
}
