using System.Collections.Immutable;

namespace RackController.Bench;

/// <summary>The catalogue of failure modes: every way in which parts of a rack are known to fail that the bench can play. Campaigns
/// draw from it; a proof test would find what it lists.</summary>
public static class FaultModes
{
    /// <summary>The modes, family by family.</summary>
    public static ImmutableArray<FaultMode> All { get; } =
    [
        .. ContactModes.All, .. MeasuringModes.All, .. RelayModes.All, .. LoadModes.All, .. WaterwayModes.All, .. SupplyModes.All,
        .. BoardModes.All,
    ];
}
