using System.Collections.Immutable;
using NodaTime;
using RackController.Growing;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.PlanFiles;

/// <summary>A crop as written: what is null is left to whoever described it before.</summary>
internal sealed record CropPart
{
    public required Place Place { get; init; }

    public required string Name { get; init; }

    public CropKind? Kind { get; init; }

    public Duration? Soak { get; init; }

    public WholeBounds? DarkDays { get; init; }

    public ImmutableArray<LitStage>? Stages { get; init; }

    public double? SeedG { get; init; }

    public double? YieldG { get; init; }

    public int? KeepsDays { get; init; }

    public Bounds? AirC { get; init; }
}

/// <summary>Reads a crop.</summary>
internal sealed class CropMapping : Mapping<CropPart>
{
    private const int MostStages = 6;

    private static readonly Key<string> nameKey = Key.Required("name", PlanKinds.Name, "What you call it.");

    private static readonly Key<CropKind> kindKey = Key.Optional("kind",
        new ChoiceKind<CropKind>([("microgreen", CropKind.Microgreen), ("transplant", CropKind.Transplant)]), "What it is grown for.");

    private static readonly Key<Duration> soakKey = Key.Optional("soak", new DurationKind("0 min", "24 h", "seed drowns in a day"),
        "How long the seed lies in water before it is sown; `0 h` where it is sown dry.");

    private static readonly Key<WholeBounds> darkKey = Key.Optional("dark", PlanKinds.Days(30),
        "Days from sowing until it goes into the light; `0 d` where it germinates in the light.");

    private static readonly Key<ImmutableArray<LitStage>> stagesKey = Key.Optional("stages",
        new ListKind<LitStage>(new StageMapping(), "stage", MostStages), "Its stages in the light, in order.");

    private static readonly Key<double> seedKey = Key.Optional("seed", PlanKinds.SeedWeight,
        "Seed for a 10 x 20 in insert tray; `0 g` where it is counted and not weighed.");

    private static readonly Key<double> yieldKey = Key.Optional("yield", PlanKinds.TrayYield,
        "What an insert tray gives when it is cut; `0 g` where it is sold by the tray only.");

    private static readonly Key<WholeBounds> keepsKey = Key.Optional("keeps", PlanKinds.Days(30),
        "For how many days after it is cut it can still be delivered.");

    private static readonly Key<Bounds> airKey = Key.Optional("air", new RangeKind(
        Dimensions.Temperature with { Example = "18 to 24 °C" }, -5, 45), "The air that it likes.");

    /// <inheritdoc/>
    public override string Name => "crop";

    /// <inheritdoc/>
    public override string Doc => "What a tray of a crop needs, stage by stage, and what it gives.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [nameKey, kindKey, soakKey, darkKey, stagesKey, seedKey, yieldKey, keepsKey, airKey];

    /// <inheritdoc/>
    protected override CropPart? Build(MappingReader keys) => new()
    {
        Place = keys.Place,
        Name = keys.Get(nameKey),
        Kind = keys.FindValue(kindKey),
        Soak = keys.FindValue(soakKey),
        DarkDays = keys.FindValue(darkKey),
        Stages = keys.FindValue(stagesKey),
        SeedG = keys.FindValue(seedKey),
        YieldG = keys.FindValue(yieldKey),
        KeepsDays = keys.FindValue(keepsKey)?.Most,
        AirC = keys.FindValue(airKey),
    };
}

/// <summary>Reads a stage in the light.</summary>
internal sealed class StageMapping : Mapping<LitStage>
{
    private const int MostMedia = 10;

    private static readonly Key<string> nameKey = Key.Defaulted("name", PlanKinds.Name, "light", "What it is called.");

    private static readonly Key<WholeBounds> daysKey = Key.Required("days", PlanKinds.Days(200),
        "How many days it takes; of the last stage, from ready to past it.");

    private static readonly Key<Bounds> dailyKey = Key.Required("dli", new RangeKind(PlanKinds.DailyLight, 0.1, 80),
        "Its daily light integral.");

    private static readonly Key<Bounds> ppfdKey = Key.Required("ppfd",
        new RangeKind(Dimensions.PhotonFlux with { Example = "100 to 250 umol/m2/s" }, 1, 2000), "The light that it bears while lit.");

    private static readonly Key<Bounds> photoperiodKey = Key.Required("photoperiod", new RangeKind(PlanKinds.Hours, 0, 24),
        "How long it may be lit in a day.");

    private static readonly Key<WholeBounds> floodsKey = Key.Required("floods",
        new WholeRangeKind("a number of floods a day", "", 96), "How many floods a day it wants.");

    private static readonly Key<ImmutableArray<MediaFloods>> floodsInKey = Key.Optional("floods-in",
        new ListKind<MediaFloods>(new MediaFloodsMapping(), "media", MostMedia), "Media in which it wants another number of floods.");

    /// <inheritdoc/>
    public override string Name => "stage";

    /// <inheritdoc/>
    public override string Doc => "A part of a crop's life on a lit tier, and what it needs there.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [nameKey, daysKey, dailyKey, ppfdKey, photoperiodKey, floodsKey, floodsInKey];

    /// <inheritdoc/>
    protected override LitStage? Build(MappingReader keys)
    {
        if (keys.Get(daysKey).Least == 0)
        {
            keys.Refuse(daysKey, "`days` may be 0", "write at least `1 d`, or leave the stage out");
            return null;
        }

        return new LitStage
        {
            Name = keys.Get(nameKey),
            Days = keys.Get(daysKey),
            DailyLightMolPerM2D = keys.Get(dailyKey),
            PpfdUmolPerM2S = keys.Get(ppfdKey),
            PhotoperiodH = keys.Get(photoperiodKey),
            Floods = [new MediaFloods(null, keys.Get(floodsKey)), .. keys.Has(floodsInKey) ? keys.Get(floodsInKey) : []],
        };
    }
}

/// <summary>Reads how many floods a stage wants in one media.</summary>
internal sealed class MediaFloodsMapping : Mapping<MediaFloods>
{
    private static readonly Key<string> mediaKey = Key.Required("media", PlanKinds.Name, "The media, as the rack file calls it.");

    private static readonly Key<WholeBounds> floodsKey = Key.Required("floods",
        new WholeRangeKind("a number of floods a day", "", 96), "How many floods a day it wants there.");

    /// <inheritdoc/>
    public override string Name => "floods in a media";

    /// <inheritdoc/>
    public override string Doc => "How many floods a day a stage wants in one media.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [mediaKey, floodsKey];

    /// <inheritdoc/>
    protected override MediaFloods? Build(MappingReader keys) => new(keys.Get(mediaKey), keys.Get(floodsKey));
}
