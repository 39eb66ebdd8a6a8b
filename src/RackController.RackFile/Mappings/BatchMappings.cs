using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>Reads how batches act on the racks.</summary>
internal sealed class BatchPolicyMapping : Mapping<BatchPolicy>
{
    private static readonly Key<bool> scheduleKey = Key.Defaulted(
        "schedule", new ChoiceKind<bool>([("propose", false), ("follow", true)]), "propose",
        "Whether lights and floods follow by themselves what stands on the tiers (`follow`), or the page proposes it (`propose`).");

    private static readonly Key<bool> movesKey = Key.Defaulted(
        "moves", new ChoiceKind<bool>([("by-tap", false), ("by-date", true)]), "by-tap",
        "Whether a batch counts as moved on the day that was planned (`by-date`), or when somebody says so (`by-tap`). Sowing and harvest "
        + "are always said.");

    /// <inheritdoc/>
    public override string Name => "batches";

    /// <inheritdoc/>
    public override string Doc => "How batches of the growing book act on the racks.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [scheduleKey, movesKey];

    /// <inheritdoc/>
    protected override BatchPolicy? Build(MappingReader keys) => new(keys.Get(scheduleKey), keys.Get(movesKey));
}

/// <summary>What batches ask of a rack's schedule, as written.</summary>
/// <param name="Place">Where.</param>
/// <param name="Asked">It.</param>
/// <param name="TierPlaces">Where each of its tiers stands.</param>
internal sealed record ForBatchesPart(Place Place, BatchSchedule Asked, ImmutableArray<Place> TierPlaces)
{
    /// <summary>A schedule with what is asked in it.</summary>
    /// <param name="schedule">As the grower wrote it.</param>
    /// <param name="tiers">How many tiers the rack has.</param>
    public SchedulePart In(SchedulePart schedule, int tiers) => schedule with
    {
        Lights = schedule.Lights is { } lights && !Asked.Tiers.IsEmpty
            ? lights with { OfTiers = [.. Enumerable.Range(1, tiers).Select(tier => Lit(lights, tier))] }
            : schedule.Lights,
        Floods = schedule.Floods is { } floods && Asked.FloodsPerDay is { } count
            ? count > 0 ? floods with { Times = new FloodsOverPhotoperiod(count) } : null
            : schedule.Floods,
    };

    private TierPhotoperiod Lit(LightsPart lights, int tier)
    {
        var written = lights.OfTiers.FirstOrDefault(one => one.Tier == tier) ?? new TierPhotoperiod(lights.Place, tier, lights.ForAll);
        return Asked.LengthOn(tier) is { } length
            ? written with { Photoperiod = written.Photoperiod with { Length = length } }
            : written;
    }
}

/// <summary>Reads what the program wrote of what batches ask.</summary>
internal sealed class ForBatchesMapping : Mapping<ForBatchesPart>
{
    private static readonly Key<int> floodsKey = Key.Optional(
        "floods", new WholeNumberKind("a number of floods", 0, FloodsMapping.MostFloodsADay),
        "So many floods a day, spread over the light; 0 for none. Without it: as the schedule says.");

    private static readonly Key<ImmutableArray<TierHoursPart>> tiersKey = Key.Optional(
        "tiers", Values.List(new TierHoursMapping(), "tier", RackMapping.MostTiers),
        "How long lights are on. A tier that is missing keeps what the schedule says.");

    /// <inheritdoc/>
    public override string Name => "rack for its batches";

    /// <inheritdoc/>
    public override string Doc => "What the batches on this rack ask beside its schedule, written by the program. Delete it to go back to "
        + "the schedule.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [floodsKey, tiersKey];

    /// <summary>It as lines of a rack file, without indentation.</summary>
    /// <param name="asked">What is asked.</param>
    internal static IEnumerable<string> Lines(BatchSchedule asked)
    {
        if (asked.FloodsPerDay is { } floods)
        {
            yield return $"{floodsKey.Name}: {floods}";
        }

        if (!asked.Tiers.IsEmpty)
        {
            yield return $"{tiersKey.Name}:";
        }

        foreach (var tier in asked.Tiers.OrderBy(one => one.Tier))
        {
            yield return $"  - {TierHoursMapping.Line(tier)}";
        }
    }

    /// <inheritdoc/>
    protected override ForBatchesPart? Build(MappingReader keys)
    {
        var tiers = keys.Has(tiersKey) ? keys.Get(tiersKey) : [];
        return new ForBatchesPart(
            keys.Place, new BatchSchedule(keys.Has(floodsKey) ? keys.Get(floodsKey) : null, [.. tiers.Select(one => one.Hours)]),
            [.. tiers.Select(one => one.Place)]);
    }
}

/// <summary>How long a light is on for its batches, as written.</summary>
internal sealed record TierHoursPart(Place Place, TierHours Hours);

/// <summary>Reads how long a light is on for its batches.</summary>
internal sealed class TierHoursMapping : Mapping<TierHoursPart>
{
    private static readonly Key<int> tierKey = Key.Required(
        "tier", new WholeNumberKind("a tier's number", 1, RackMapping.MostTiers), "Number of the tier, 1 at the bottom.");

    private static readonly Key<Duration> lengthKey = Key.Required(
        "for", Values.Duration("0 min", "24 h"), "How long the light stays on each day; 0 for dark.");

    /// <inheritdoc/>
    public override string Name => "light of a tier for its batches";

    /// <inheritdoc/>
    public override string Doc => "How long one light is on for what stands under it.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [tierKey, lengthKey];

    /// <summary>A tier on one line.</summary>
    internal static string Line(TierHours tier) =>
        $"{{ {tierKey.Name}: {tier.Tier}, {lengthKey.Name}: {Minutes(tier.Length)} }}";

    /// <inheritdoc/>
    protected override TierHoursPart? Build(MappingReader keys) =>
        new(keys.Place, new TierHours(keys.Get(tierKey), keys.Get(lengthKey)));

    private static string Minutes(Duration length) => length.TotalMinutes % NodaConstants.MinutesPerHour == 0
        ? $"{(int)length.TotalHours} h"
        : $"{(int)Math.Round(length.TotalMinutes)} min";
}
