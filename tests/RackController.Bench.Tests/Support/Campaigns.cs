using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile;
using RackController.Testing;

namespace RackController.Bench.Tests.Support;

/// <summary>Campaigns on demo racks.</summary>
internal static class DemoCampaigns
{
    public static Site FourTier { get; } = RackFileReader.Read(ShippedFiles.PathTo("config/demo-four-tier.yaml")).Site!;

    public static Site First { get; } = RackFileReader.Read(ShippedFiles.PathTo("config/demo-first-rack.yaml")).Site!;

    public static Site TwoTier { get; } = RackFileReader.Read(ShippedFiles.PathTo("config/demo-two-tier.yaml")).Site!;

    public static ImmutableArray<CaseOutcome> Run(CampaignPlan plan) => Campaign.Run(plan, _ => { }, CancellationToken.None);

    /// <summary>The rack with little to save it: a drip tray like a saucer, neither a wired float nor a contactor.</summary>
    public static Site Bare { get; } = FourTier with
    {
        Circuits = [.. FourTier.Circuits.Select(circuit => circuit with { HasUpstreamContactor = false })],
        Racks = [.. FourTier.Racks.Select(rack => rack with { DripTray = rack.DripTray! with { CapacityL = 0.02 }, FloatCutout = null })],
    };
}
