using System.Collections.Immutable;
using NodaTime;
using RackController.Growing;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.PlanFiles;

/// <summary>Reads what a forecast is told.</summary>
internal sealed class ForecastMapping : Mapping<ForecastTerms>
{
    private static readonly Key<SolutionPart> solutionKey = Key.Optional("solution", new SolutionMapping(),
        "What the reservoirs hold. Without it: common practice.");

    private static readonly Key<double> trayKey = Key.Defaulted("tray-weight", new QuantityKind(PlanKinds.Weight, "100 g", "30 kg"), "3 kg",
        "What an insert tray weighs with wet media and a grown crop; common practice, no source.");

    private static readonly Key<Prices> pricesKey = Key.Optional("prices", new PricesMapping(),
        "What electricity, water and salts cost. Without it: no costs are shown.");

    /// <inheritdoc/>
    public override string Name => "forecast";

    /// <inheritdoc/>
    public override string Doc => "What a forecast of water, salts, electricity and money is told.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [solutionKey, trayKey, pricesKey];

    /// <inheritdoc/>
    protected override ForecastTerms? Build(MappingReader keys)
    {
        const double gPerKg = 1000;
        var terms = ForecastTerms.Usual with { TrayKg = keys.Get(trayKey) / gPerKg, Prices = keys.Find(pricesKey) };
        return keys.Find(solutionKey) is not { } solution ? terms : terms with
        {
            TargetMsPerCm = solution.TargetMsPerCm,
            TapMsPerCm = solution.TapMsPerCm,
            ChangeEveryDays = solution.ChangeEveryDays,
            FlushEveryDays = solution.FlushEveryDays,
            Changed = solution.Changed,
            Flushed = solution.Flushed,
        };
    }
}

/// <summary>The solution of the reservoirs as written.</summary>
/// <param name="TargetMsPerCm">What it is mixed to.</param>
/// <param name="TapMsPerCm">What it is mixed with.</param>
/// <param name="ChangeEveryDays">How often it is changed.</param>
/// <param name="FlushEveryDays">How often racks are flushed.</param>
/// <param name="Changed">When it was changed last.</param>
/// <param name="Flushed">When racks were flushed last.</param>
internal sealed record SolutionPart(
    double TargetMsPerCm, double TapMsPerCm, int ChangeEveryDays, int FlushEveryDays, LocalDate? Changed, LocalDate? Flushed);

/// <summary>Reads the solution of the reservoirs.</summary>
internal sealed class SolutionMapping : Mapping<SolutionPart>
{
    // Beyond a year nobody keeps a solution, and a slip of the pen is likelier.
    private const int MostDays = 365;

    private static readonly Key<double> targetKey = Key.Defaulted("target", PlanKinds.Conductivity, "1 mS/cm",
        "Conductivity that it is mixed to, at 25 °C; that of the tap for plain water.");

    private static readonly Key<double> tapKey = Key.Defaulted("tap", PlanKinds.Conductivity, "0.3 mS/cm",
        "Conductivity of the water out of the tap, at 25 °C.");

    private static readonly Key<WholeBounds> changeKey = Key.Defaulted("change-every", PlanKinds.Days(MostDays), "14 d",
        "How often all of it is changed.");

    private static readonly Key<WholeBounds> flushKey = Key.Defaulted("flush-every", PlanKinds.Days(MostDays), "28 d",
        "How often trays and pipes are flushed with plain water, which happens at a change.");

    private static readonly Key<LocalDate> changedKey = Key.Optional("changed", PlanKinds.Date,
        "When it was last changed; without it, on the first day of the plan.");

    private static readonly Key<LocalDate> flushedKey = Key.Optional("flushed", PlanKinds.Date,
        "When the racks were last flushed; without it, on the first day of the plan.");

    /// <inheritdoc/>
    public override string Name => "solution";

    /// <inheritdoc/>
    public override string Doc => "What the reservoirs hold, and how often it is changed.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [targetKey, tapKey, changeKey, flushKey, changedKey, flushedKey];

    /// <inheritdoc/>
    protected override SolutionPart? Build(MappingReader keys)
    {
        var (target, tap) = (keys.Get(targetKey), keys.Get(tapKey));
        if (target < tap)
        {
            keys.Complaints.Refuse(keys.At(targetKey), "the solution would be weaker than the water that it is mixed with",
                "write at least the conductivity of the tap, which is plain water");
            return null;
        }

        foreach (var key in (Key<WholeBounds>[])[changeKey, flushKey])
        {
            if (keys.Get(key) is var days && (days.Least != days.Most || days.Least < 1))
            {
                keys.Complaints.Refuse(keys.At(key), $"`{key.Name}` is no number of days from 1", "write one, such as `14 d`");
                return null;
            }
        }

        return new SolutionPart(
            target, tap, keys.Get(changeKey).Most, keys.Get(flushKey).Most, keys.FindValue(changedKey), keys.FindValue(flushedKey));
    }
}

/// <summary>Reads what things cost.</summary>
internal sealed class PricesMapping : Mapping<Prices>
{
    // Above any price that anybody pays in any currency for these, so that only a slip is refused.
    private const double Most = 1e7;

    private static readonly NumberKind price = new("a price", 0, Most);

    private static readonly Key<string> currencyKey = Key.Required("currency", PlanKinds.Name,
        "What the currency is called; nothing converts it.");

    private static readonly Key<double> energyKey = Key.Required("electricity-per-kwh", price, "Of a kilowatt-hour.");

    private static readonly Key<double> waterKey = Key.Defaulted("water-per-m3", price, "0", "Of a cubic metre of water, with its drain.");

    private static readonly Key<double> saltsKey = Key.Defaulted("salts-per-kg", price, "0", "Of a kilogram of dry salts.");

    /// <inheritdoc/>
    public override string Name => "prices";

    /// <inheritdoc/>
    public override string Doc => "What things cost, in the grower's own currency.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [currencyKey, energyKey, waterKey, saltsKey];

    /// <inheritdoc/>
    protected override Prices? Build(MappingReader keys) =>
        new(keys.Get(currencyKey), keys.Get(energyKey), keys.Get(waterKey), keys.Get(saltsKey));
}
