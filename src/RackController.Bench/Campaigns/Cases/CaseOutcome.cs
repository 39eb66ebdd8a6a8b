using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>In which way a case failed.</summary>
public enum FailureClass
{
    /// <summary>It did not fail.</summary>
    None,

    /// <summary>A hazard showed.</summary>
    Hazard,

    /// <summary>The rack did not flood again within its schedule once everything was repaired and acknowledged.</summary>
    Stuck,

    /// <summary>Something that should be impossible happened in the controller or the bench.</summary>
    Crash,

    /// <summary>A crop went short and no alarm told anybody.</summary>
    Silent,
}

/// <summary>What became of a case.</summary>
/// <param name="Case">The case.</param>
/// <param name="Class">In which way it failed.</param>
/// <param name="Seen">What was seen of that; empty when it did not fail.</param>
public sealed record CaseOutcome(CampaignCase Case, FailureClass Class, string Seen)
{
    /// <summary>Every hazard that showed.</summary>
    public required ImmutableArray<Hazard> Hazards { get; init; }

    /// <summary>From the first fault to the first alarm; null where none was raised.</summary>
    public Duration? ToAlarm { get; init; }

    /// <summary>From the first fault to the first interlock that acted and told of it; null where none did.</summary>
    public Duration? ToTrip { get; init; }

    /// <summary>Which tray or load went short without a word; empty for any other class.</summary>
    public string WentShort { get; init; } = "";

    /// <summary>How long the run was.</summary>
    public required Duration Length { get; init; }

    /// <summary>By when, since it began, every tray had to be flooded again and nothing to be left to do.</summary>
    public required Duration DueAgain { get; init; }

    /// <summary>Which wired parts acted by themselves.</summary>
    public ImmutableArray<WiredBackstop> Acted { get; init; } = [];

    /// <summary>The wired parts that alone kept off a hazard; none where nothing worse would have happened without them.</summary>
    public ImmutableArray<Prevention> Prevented { get; init; } = [];

    /// <summary>Simulated time, all racks of the site added up, days.</summary>
    /// <param name="site">The site.</param>
    public double RackDays(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        return Length.TotalDays * site.Racks.Length;
    }

    /// <summary>What a person did after the repair.</summary>
    internal ImmutableArray<ScenarioEvent> Deeds { get; init; } = [];

    /// <summary>Whether it failed.</summary>
    public bool Failed => Class != FailureClass.None;
}
