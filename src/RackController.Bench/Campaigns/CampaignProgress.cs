namespace RackController.Bench;

/// <summary>How far a campaign has come.</summary>
/// <param name="Done">Cases that have run.</param>
/// <param name="Count">Cases that there are.</param>
/// <param name="RackDays">Rack-days that were simulated.</param>
/// <param name="Failed">Cases that failed.</param>
public sealed record CampaignProgress(int Done, int Count, double RackDays, int Failed);
