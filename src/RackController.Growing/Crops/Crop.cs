using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing;

/// <summary>What a crop is grown for.</summary>
public enum CropKind
{
    /// <summary>Cut, or sold in its tray, a week or two after sowing.</summary>
    Microgreen,

    /// <summary>Sold in its tray to be planted out elsewhere.</summary>
    Transplant,
}

/// <summary>
/// A crop as a plan sees it: what a tray of it needs, stage by stage, and what it gives. The numbers are the grower's; those that
/// ship are a beginning. It is not a batch, which is one sowing of it.
/// </summary>
public sealed record Crop
{
    /// <summary>What the grower calls it; unique.</summary>
    public required string Name { get; init; }

    /// <summary>What it is grown for.</summary>
    public required CropKind Kind { get; init; }

    /// <summary>How long the seed lies in water, from the evening before it is sown; zero where it is sown dry. Up to 24 h.</summary>
    public required Duration Soak { get; init; }

    /// <summary>Days from sowing until it goes into the light, in blackout space: 0 where it germinates in the light.</summary>
    public required WholeBounds DarkDays { get; init; }

    /// <summary>Its stages in the light, in order: at least one.</summary>
    public required ImmutableArray<LitStage> LitStages { get; init; }

    /// <summary>Seed for one 10 x 20 in insert tray, g; 0 where it is counted and not weighed.</summary>
    public required double SeedGPerTray { get; init; }

    /// <summary>What one insert tray gives when it is cut, g; 0 where it is sold by the tray only.</summary>
    public required double YieldGPerTray { get; init; }

    /// <summary>For how many days after it is cut it can still be delivered, from 0.</summary>
    public required int KeepsDays { get; init; }

    /// <summary>The air that it likes, °C; the plan shows it and does not judge by it.</summary>
    public required Bounds AirC { get; init; }

    /// <summary>Whether it is soaked first.</summary>
    public bool IsSoaked => Soak > Duration.Zero;

    /// <summary>Whether it spends a time in blackout space.</summary>
    public bool IsBlackedOut => DarkDays.Most > 0;

    /// <summary>The fewest days from sowing to harvest.</summary>
    public int FewestDays => DarkDays.Least + LitStages.Sum(stage => stage.Days.Least);

    /// <summary>The most days from sowing to harvest.</summary>
    public int MostDays => DarkDays.Most + LitStages.Sum(stage => stage.Days.Most);
}
