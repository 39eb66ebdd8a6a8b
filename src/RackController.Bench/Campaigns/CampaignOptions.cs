using System.Collections.Immutable;

namespace RackController.Bench;

/// <summary>What a campaign tries.</summary>
public sealed record CampaignOptions
{
    /// <summary>From which everything is drawn that is left to chance. Default 1.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Which part of the cases to run, so that several machines can share a campaign. Default all.</summary>
    public Shard Shard { get; init; } = new(1, 1);

    /// <summary>Whether pairs of faults are tried after the single ones. Default yes.</summary>
    public bool Pairs { get; init; } = true;

    /// <summary>Modes to keep to, by <see cref="FaultMode.Id"/>: one for what it does alone, two for what they do together; empty
    /// for all.</summary>
    public ImmutableArray<string> Only { get; init; } = [];

    /// <summary>Rack-days after which no further case is begun; null for no end before the last case.</summary>
    public double? RackDays { get; init; }

    /// <summary>Rack-years without a fault to look for false trips in. Default 1; 0 for none.</summary>
    public int QuietYears { get; init; } = 1;
}

/// <summary>A part of a campaign.</summary>
/// <param name="Number">Which, from 1.</param>
/// <param name="Of">Of how many.</param>
public sealed record Shard(int Number, int Of);
