using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>What was measured, as written.</summary>
/// <param name="Measured">It.</param>
/// <param name="OnPlace">Where its date stands.</param>
/// <param name="TierPlaces">Where each of its tiers stands.</param>
internal sealed record MeasuredPart(MeasuredRack Measured, Place OnPlace, ImmutableArray<Place> TierPlaces);

/// <summary>Reads what `tune` wrote: how a rack's water really runs beside what its other figures say.</summary>
internal sealed class MeasuredMapping : Mapping<MeasuredPart>
{
    private static readonly Key<LocalDate> onKey = Key.Required("on", new DateKind(), "The date of the last flood that was timed.");

    private static readonly Key<int> floodsKey = Key.Required(
        "floods", new WholeNumberKind("a number of floods", MeasuredRack.LeastFloods, MeasuredRack.MostFloods),
        "How many floods were timed.");

    private static readonly Key<MeasuredFigure> pumpKey = Key.Required(
        "pump-speed", new MeasuredKind("a share", 0.3, 1.3), "Share of its full speed at which the pump works as if it turned.");

    private static readonly Key<MeasuredFigure> screenKey = Key.Optional(
        "screen", new MeasuredKind("a minor loss coefficient", 0, 500),
        "What the screen at the pump's intake loses. Without it: the pump's speed stands for both.");

    private static readonly Key<MeasuredFigure> standpipeKey = Key.Optional(
        "standpipe", new MeasuredKind("a share", 0.1, 3),
        "What the standpipes drain, as a share of what their bores should. Without it: 1.");

    private static readonly Key<ImmutableArray<MeasuredTierPart>> tiersKey = Key.Optional(
        "tiers", Values.List(new MeasuredTierMapping(), "tier", RackMapping.MostTiers), "What was measured of single tiers.");

    /// <inheritdoc/>
    public override string Name => "measured rack";

    /// <inheritdoc/>
    public override string Doc => "What timed floods told of this rack, written by `tune`. The bench follows it, no interlock does. Delete "
        + "it to go back to the figures above it.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [onKey, floodsKey, pumpKey, screenKey, standpipeKey, tiersKey];

    /// <summary>It as lines of a rack file, without indentation.</summary>
    /// <param name="measured">What was measured.</param>
    internal static IEnumerable<string> Lines(MeasuredRack measured)
    {
        yield return $"{onKey.Name}: {NodaTime.Text.LocalDatePattern.Iso.Format(measured.On)}";
        yield return $"{floodsKey.Name}: {measured.Floods}";
        yield return $"{pumpKey.Name}: {MeasuredKind.Text(measured.PumpSpeed)}";
        if (measured.ScreenLossK is { } screen)
        {
            yield return $"{screenKey.Name}: {MeasuredKind.Text(screen)}";
        }

        if (measured.Standpipe is { } standpipe)
        {
            yield return $"{standpipeKey.Name}: {MeasuredKind.Text(standpipe)}";
        }

        if (measured.Tiers.Any(MeasuredTierMapping.IsTold))
        {
            yield return $"{tiersKey.Name}:";
        }

        foreach (var tier in measured.Tiers.Where(MeasuredTierMapping.IsTold))
        {
            yield return $"  - {MeasuredTierMapping.Line(tier)}";
        }
    }

    /// <inheritdoc/>
    protected override MeasuredPart? Build(MappingReader keys)
    {
        var tiers = keys.Has(tiersKey) ? keys.Get(tiersKey) : [];
        return new MeasuredPart(
            new MeasuredRack(
                keys.Get(onKey), keys.Get(floodsKey), keys.Get(pumpKey), keys.Find(screenKey), keys.Find(standpipeKey),
                [.. tiers.Select(tier => tier.Tier)]),
            keys.At(onKey), [.. tiers.Select(tier => tier.Place)]);
    }
}

/// <summary>What was measured of a tier, as written.</summary>
internal sealed record MeasuredTierPart(Place Place, MeasuredTier Tier);

/// <summary>Reads what `tune` wrote of one tier.</summary>
internal sealed class MeasuredTierMapping : Mapping<MeasuredTierPart>
{
    private static readonly Key<int> tierKey = Key.Required(
        "tier", new WholeNumberKind("a tier", 1, RackMapping.MostTiers), "Which tier, 1 at the bottom.");

    private static readonly Key<MeasuredFigure> weepKey = Key.Optional(
        "weep", new MeasuredKind("a share", 0.1, 3), "What its weep drains, as a share of what its bore should. Without it: 1.");

    private static readonly Key<MeasuredFigure> branchKey = Key.Optional(
        "branch", new MeasuredKind("a share", 0.2, 3),
        "How far its branch is open, as a share of what its minor loss says: it carries so much of the flow at the same head. "
        + "Without it: 1.");

    /// <inheritdoc/>
    public override string Name => "measured tier";

    /// <inheritdoc/>
    public override string Doc => "What timed floods told of one tier.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [tierKey, weepKey, branchKey];

    /// <summary>Whether there is anything to write of a tier.</summary>
    internal static bool IsTold(MeasuredTier tier) => tier.Weep is not null || tier.Branch is not null;

    /// <summary>A tier on one line.</summary>
    internal static string Line(MeasuredTier tier) =>
        $"{{ {tierKey.Name}: {tier.Number}{Part(weepKey, tier.Weep)}{Part(branchKey, tier.Branch)} }}";

    /// <inheritdoc/>
    protected override MeasuredTierPart? Build(MappingReader keys) => new(
        keys.Place, new MeasuredTier(keys.Get(tierKey), keys.Find(weepKey), keys.Find(branchKey)));

    private static string Part(Key key, MeasuredFigure? figure) => figure is null ? "" : $", {key.Name}: {MeasuredKind.Text(figure)}";
}
