using System.Collections.Immutable;
using RackController.RackFile.Binding;

namespace RackController.RackFile.Mappings;

/// <summary>The supply riser as written; null where the rack's shape decides.</summary>
internal sealed record SupplyPart(
    Place Place, double BoreMm, double? RunLengthMm, double RunMinorLossK, double TeeMinorLossK, bool HasCheckValve);

/// <summary>Reads the vertical supply pipe.</summary>
internal sealed class SupplyMapping : Mapping<SupplyPart>
{
    private static readonly Key<double> boreKey = Key.Defaulted(
        "bore", Values.Bore, "26.6 mm", "Inside diameter; 26.6 mm is a 1 in schedule 40 pipe.");

    private static readonly Key<double> runLengthKey = Key.Optional(
        "run-length", Values.Length,
        "Length of pipe and hose from the pump to the lowest tee. Without it: the height of the lowest tray and 600 mm.");

    private static readonly Key<double> runLossKey = Key.Defaulted(
        "run-minor-loss", Values.MinorLoss, "7.5",
        "Sum of the minor loss coefficients from the pump to the lowest tee (entrance, elbows, screen).");

    private static readonly Key<double> teeLossKey = Key.Defaulted(
        "tee-minor-loss", Values.MinorLoss, "0.3", "Minor loss coefficient of flow past one tee.");

    private static readonly Key<bool> checkValveKey = Key.Defaulted(
        "check-valve", Values.Flag, "yes", "Whether water is kept from running back through the stopped pump.");

    /// <inheritdoc/>
    public override string Name => "supply";

    /// <inheritdoc/>
    public override string Doc => "The vertical supply pipe with a tee per tier.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [boreKey, runLengthKey, runLossKey, teeLossKey, checkValveKey];

    /// <inheritdoc/>
    protected override SupplyPart? Build(MappingReader keys) => new(
        keys.Place, keys.Get(boreKey), keys.FindValue(runLengthKey), keys.Get(runLossKey), keys.Get(teeLossKey),
        keys.Get(checkValveKey));
}

/// <summary>The common return pipe as written.</summary>
internal sealed record DrainPart(double BoreMm, double? CapacityLpm);

/// <summary>Reads the common return pipe.</summary>
internal sealed class DrainMapping : Mapping<DrainPart>
{
    private static readonly Key<double> boreKey =
        Key.Defaulted("bore", Values.Bore, "52.5 mm", "Inside diameter; 52.5 mm is a 2 in schedule 40 pipe.");

    private static readonly Key<double> capacityKey = Key.Optional(
        "capacity", Values.Flow, "What it carries at most. Without it: by the stack formula of Wyly and Eaton, 7/24 full.");

    /// <inheritdoc/>
    public override string Name => "drain";

    /// <inheritdoc/>
    public override string Doc => "The drain stack: the common return pipe of all trays.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [boreKey, capacityKey];

    /// <inheritdoc/>
    protected override DrainPart? Build(MappingReader keys) => new(keys.Get(boreKey), keys.FindValue(capacityKey));
}

/// <summary>The pipe from the riser to one tray as written; null where another place decides.</summary>
internal sealed record BranchPart(double? BoreMm, double? LengthMm, double? MinorLossK, double? OutletMm)
{
    /// <summary>These values, and those of another where these say nothing.</summary>
    public BranchPart Over(BranchPart other) => new(
        BoreMm ?? other.BoreMm, LengthMm ?? other.LengthMm, MinorLossK ?? other.MinorLossK, OutletMm ?? other.OutletMm);
}

/// <summary>Reads a branch, of one tier or of all.</summary>
/// <param name="ofAllTiers">Whether it holds for all tiers, and so has defaults.</param>
internal sealed class BranchMapping(bool ofAllTiers) : Mapping<BranchPart>
{
    private readonly Key<double> boreKey = Key.DefaultedIf("bore", Values.Bore, "12.7 mm", ofAllTiers, "Inside diameter.");

    private readonly Key<double> lengthKey = Key.DefaultedIf("length", Values.Length, "250 mm", ofAllTiers, "Length.");

    private readonly Key<double> lossKey = Key.Optional(
        "minor-loss", Values.MinorLoss,
        "Sum of its minor loss coefficients, with tee, throttle and exit. Without it: throttled so that all trays fill evenly.");

    private readonly Key<double> outletKey =
        Key.DefaultedIf("outlet", Values.Length, "70 mm", ofAllTiers, "Height of its outlet above the tray's floor.");

    /// <inheritdoc/>
    public override string Name => ofAllTiers ? "branch of all tiers" : "branch";

    /// <inheritdoc/>
    public override string Doc => ofAllTiers
        ? "The pipe from the riser to each tray, where a tier does not say otherwise."
        : "The pipe from the riser to this tray, where it differs from the rack's.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [boreKey, lengthKey, lossKey, outletKey];

    /// <inheritdoc/>
    protected override BranchPart? Build(MappingReader keys) => new(
        keys.FindValue(boreKey), keys.FindValue(lengthKey), keys.FindValue(lossKey), keys.FindValue(outletKey));
}
