using System.Collections.Immutable;
using NodaTime;
using RackController.Growing;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.PlanFiles;

/// <summary>An orders file as written.</summary>
internal sealed record OrdersPart
{
    public required Place RacksPlace { get; init; }

    public required string Racks { get; init; }

    public required Place CropsPlace { get; init; }

    public required string Crops { get; init; }

    public required ImmutableArray<CropPart> OwnCrops { get; init; }

    public required WorkDays Work { get; init; }

    public required int DarkTrays { get; init; }

    public required double MarginPercent { get; init; }

    public LocalDate? From { get; init; }

    public LocalDate? Until { get; init; }

    public required Place UntilPlace { get; init; }

    public required ImmutableArray<OrderPart> Orders { get; init; }

    public required ImmutableArray<GrowingPart> Growing { get; init; }

    public required Place ForecastPlace { get; init; }

    public required ForecastTerms Forecast { get; init; }
}

/// <summary>Blackout space as written.</summary>
/// <param name="Trays">How many insert trays fit.</param>
internal sealed record BlackoutPart(int Trays);

/// <summary>Reads an orders file.</summary>
internal sealed class OrdersMapping : Mapping<OrdersPart>
{
    private const int MostLines = 1000;

    private static readonly Key<string> racksKey = Key.Required("racks", new FilePathKind(), "The rack file, as seen from this one.");

    private static readonly Key<string> cropsKey = Key.Defaulted("crops", new FilePathKind(), "crops.yaml",
        "The file of crops, as seen from this one.");

    private static readonly Key<ImmutableArray<CropPart>> ownKey = Key.Optional("own-crops", CropsMapping.List,
        "Crops that are your own, and what you know better of others; what is not said stays as in the file of crops.");

    private static readonly Key<ImmutableArray<IsoDayOfWeek>> workKey = Key.Required("work-days", PlanKinds.Weekdays,
        "On which weekdays somebody works.");

    private static readonly Key<BlackoutPart> blackoutKey = Key.Required("blackout", new BlackoutMapping(),
        "The space where trays germinate in the dark.");

    private static readonly Key<double> marginKey = Key.Defaulted("margin", new QuantityKind(Dimensions.Percentage, "0 %", "200 %"), "10 %",
        "How much more is grown than was ordered, for what fails.");

    private static readonly Key<LocalDate> fromKey = Key.Optional("from", PlanKinds.Date, "The first day of the plan; without it, today.");

    private static readonly Key<LocalDate> untilKey = Key.Optional("until", PlanKinds.Date,
        "The last day of the plan; without it, 12 weeks on.");

    private static readonly Key<ImmutableArray<OrderPart>> standingKey = Key.Optional("standing",
        new ListKind<OrderPart>(new StandingOrderMapping(), "standing order", MostLines), "What is delivered week after week.");

    private static readonly Key<ImmutableArray<OrderPart>> datedKey = Key.Optional("dated",
        new ListKind<OrderPart>(new DatedOrderMapping(), "dated order", MostLines), "What is delivered once.");

    private static readonly Key<ImmutableArray<GrowingPart>> growingKey = Key.Optional("growing",
        new ListKind<GrowingPart>(new GrowingMapping(), "batch", MostLines), "What grows already.");

    private static readonly Key<ForecastTerms> forecastKey = Key.Optional("forecast", new ForecastMapping(),
        "What the forecast of water, salts, electricity and money is told. Without it: common practice, and no costs.");

    /// <inheritdoc/>
    public override string Name => "orders file";

    /// <inheritdoc/>
    public override string Doc => "What is ordered, what grows already, and the room and days that there are.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys =>
    [
        racksKey, cropsKey, ownKey, workKey, blackoutKey, marginKey, fromKey, untilKey, standingKey, datedKey, growingKey,
        forecastKey,
    ];

    /// <inheritdoc/>
    protected override OrdersPart? Build(MappingReader keys)
    {
        if (!keys.Has(standingKey) && !keys.Has(datedKey))
        {
            keys.Complaints.Refuse(keys.Place, "nothing is ordered", "write orders under `standing:` or `dated:`");
            return null;
        }

        return new OrdersPart
        {
            RacksPlace = keys.At(racksKey),
            Racks = keys.Get(racksKey),
            CropsPlace = keys.At(cropsKey),
            Crops = keys.Get(cropsKey),
            OwnCrops = keys.Has(ownKey) ? keys.Get(ownKey) : [],
            Work = PlanKinds.Each(keys.Get(workKey)),
            DarkTrays = keys.Get(blackoutKey).Trays,
            MarginPercent = keys.Get(marginKey),
            From = keys.FindValue(fromKey),
            Until = keys.FindValue(untilKey),
            UntilPlace = keys.At(untilKey),
            Orders =
            [
                .. keys.Has(standingKey) ? keys.Get(standingKey) : [],
                .. keys.Has(datedKey) ? keys.Get(datedKey) : [],
            ],
            Growing = keys.Has(growingKey) ? keys.Get(growingKey) : [],
            ForecastPlace = keys.At(forecastKey),
            Forecast = keys.Find(forecastKey) ?? ForecastTerms.Usual,
        };
    }
}

/// <summary>Reads how much blackout space there is.</summary>
internal sealed class BlackoutMapping : Mapping<BlackoutPart>
{
    private static readonly Key<int> traysKey = Key.Required("trays", new WholeNumberKind("a number of trays", 0, 100_000),
        "How many insert trays fit.");

    /// <inheritdoc/>
    public override string Name => "blackout";

    /// <inheritdoc/>
    public override string Doc => "The space where trays germinate in the dark.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [traysKey];

    /// <inheritdoc/>
    protected override BlackoutPart? Build(MappingReader keys) => new(keys.Get(traysKey));
}
