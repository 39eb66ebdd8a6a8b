namespace RackController.Bench;

/// <summary>What a campaign tries.</summary>
public sealed record CampaignOptions
{
    /// <summary>From which everything is drawn that is left to chance. Default 1.</summary>
    public ulong Seed { get; init; } = 1;
}
