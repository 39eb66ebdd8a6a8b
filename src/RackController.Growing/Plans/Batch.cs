using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing;

/// <summary>One sowing: the trays of a crop that are sown, moved and harvested together.</summary>
public sealed record Batch
{
    /// <summary>What is sown.</summary>
    public required Crop Crop { get; init; }

    /// <summary>How many insert trays, from 1.</summary>
    public required int Trays { get; init; }

    /// <summary>The day for which it is grown.</summary>
    public required LocalDate Due { get; init; }

    /// <summary>Whether it leaves in its trays; otherwise it is cut, and may wait as long as it keeps.</summary>
    public required bool IsLive { get; init; }

    /// <summary>The orders that it is for; empty for what grows already and nobody has ordered.</summary>
    public required ImmutableArray<Order> Orders { get; init; }

    /// <summary>What is known of it when it grows already; null when it is still to be sown.</summary>
    public UnderWay? UnderWay { get; init; }

    /// <summary>The first day on which it can leave its tier and still be fit for whom it is for.</summary>
    public LocalDate EarliestHarvest => Due.PlusDays(-(IsLive ? LiveWaitsDays : Crop.KeepsDays));

    // A tray that has had its flood in the morning stands a day beside the rack (common practice, no source).
    private const int LiveWaitsDays = 1;
}

/// <summary>A batch that grows already.</summary>
/// <param name="Sown">When it was sown.</param>
/// <param name="Lit">When it came into the light; null while it stands in the dark.</param>
/// <param name="Tier">The name of the tier that it stands on; null in the dark, or where the grower did not say.</param>
/// <param name="Line">The line of the orders file that tells of it.</param>
public sealed record UnderWay(LocalDate Sown, LocalDate? Lit, string? Tier, int Line)
{
    /// <summary>The lot code that it has in the growing book, and keeps; null where it has none.</summary>
    public string? Lot { get; init; }
}

/// <summary>The days of a batch. All of them are days on which somebody works.</summary>
/// <param name="Sow">When it is sown; the seed is soaked on the evening before.</param>
/// <param name="StageStarts">When each stage in the light begins; the first is when it leaves the dark.</param>
/// <param name="Harvest">When it is cut or handed over, in the morning: it needs no light on that day.</param>
public sealed record BatchTiming(LocalDate Sow, ImmutableArray<LocalDate> StageStarts, LocalDate Harvest)
{
    /// <summary>When it leaves the dark.</summary>
    public LocalDate Lit => StageStarts[0];

    /// <summary>The day on which a stage is over.</summary>
    /// <param name="stage">Its number, from 0.</param>
    public LocalDate EndOf(int stage) => stage + 1 < StageStarts.Length ? StageStarts[stage + 1] : Harvest;

    /// <summary>The stage that it is in on a day; null in the dark, before sowing and from the harvest on.</summary>
    /// <param name="day">A day.</param>
    public int? StageOn(LocalDate day)
    {
        for (var stage = 0; stage < StageStarts.Length; stage++)
        {
            if (day >= StageStarts[stage] && day < EndOf(stage))
            {
                return stage;
            }
        }

        return null;
    }
}
