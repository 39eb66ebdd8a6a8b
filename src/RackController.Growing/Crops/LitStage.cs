using System.Collections.Immutable;

namespace RackController.Growing;

/// <summary>A part of a crop's life on a lit tier, and what it needs there.</summary>
public sealed record LitStage
{
    /// <summary>What it is called: <c>light</c>, <c>seedling</c>.</summary>
    public required string Name { get; init; }

    /// <summary>How many days it takes; of the last stage, from ready to past it: the harvest window.</summary>
    public required WholeBounds Days { get; init; }

    /// <summary>Its daily light integral, mol/m2/d.</summary>
    public required Bounds DailyLightMolPerM2D { get; init; }

    /// <summary>The photon flux density that it bears while lit, umol/m2/s.</summary>
    public required Bounds PpfdUmolPerM2S { get; init; }

    /// <summary>How long it may be lit in a day, h.</summary>
    public required Bounds PhotoperiodH { get; init; }

    /// <summary>How many floods a day it wants, by what it roots in; the one without media holds for all that are not named.</summary>
    public required ImmutableArray<MediaFloods> Floods { get; init; }

    /// <summary>How many floods a day it wants in this media.</summary>
    /// <param name="media">The media in the grower's words, as the rack file names it.</param>
    public WholeBounds FloodsIn(string media) =>
        (Floods.FirstOrDefault(one => one.Media == media) ?? Floods.First(one => one.Media is null)).PerDay;
}

/// <summary>How many floods a day a stage wants in one media.</summary>
/// <param name="Media">The media in the grower's words; null for every other.</param>
/// <param name="PerDay">Floods a day.</param>
public sealed record MediaFloods(string? Media, WholeBounds PerDay);
