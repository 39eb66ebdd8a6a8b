using System.Collections.Immutable;
using NodaTime;
using RackController.Growing;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.PlanFiles;

/// <summary>An order as written; its crop is only a name yet.</summary>
/// <param name="Place">Where.</param>
/// <param name="CropPlace">Where the crop's name stands.</param>
/// <param name="Customer">Who wants it.</param>
/// <param name="Crop">What.</param>
/// <param name="Amount">How much.</param>
internal sealed record OrderPart(Place Place, Place CropPlace, string Customer, string Crop, Amount Amount)
{
    /// <summary>On which weekdays; null for a single date.</summary>
    public WorkDays? Weekdays { get; init; }

    /// <summary>On which date, or not before.</summary>
    public LocalDate? From { get; init; }

    /// <summary>Not after.</summary>
    public LocalDate? Until { get; init; }
}

/// <summary>The keys that every order has.</summary>
internal sealed class OrderKeys
{
    private readonly Key<string> customerKey = Key.Required("customer", PlanKinds.Name, "Who wants it.");

    private readonly Key<string> cropKey = Key.Required("crop", PlanKinds.Name, "What, by the name of the crop.");

    private readonly Key<int> traysKey = Key.Optional("trays", new WholeNumberKind("a number of trays", 1, 10_000),
        "Whole insert trays, alive.");

    private readonly Key<double> weightKey = Key.Optional("weight", PlanKinds.OrderWeight, "A weight that is cut.");

    public ImmutableArray<Key> All => [customerKey, cropKey, traysKey, weightKey];

    public OrderPart? Read(MappingReader keys)
    {
        if (keys.Has(traysKey) == keys.Has(weightKey))
        {
            keys.Complaints.Refuse(
                keys.Place, keys.Has(traysKey) ? "an order of both trays and a weight" : "an order without an amount",
                "write `trays:` for whole trays or `weight:` for what is cut");
            return null;
        }

        return new OrderPart(
            keys.Place, keys.At(cropKey), keys.Get(customerKey), keys.Get(cropKey),
            keys.Has(traysKey) ? new LiveTrays(keys.Get(traysKey)) : new CutWeight(keys.Get(weightKey)));
    }
}

/// <summary>Reads a standing order.</summary>
internal sealed class StandingOrderMapping : Mapping<OrderPart>
{
    private static readonly OrderKeys orderKeys = new();

    private static readonly Key<ImmutableArray<IsoDayOfWeek>> onKey = Key.Required("on", PlanKinds.Weekdays, "On which weekdays.");

    private static readonly Key<LocalDate> fromKey = Key.Optional("from", PlanKinds.Date, "Not before; without it, from the first day.");

    private static readonly Key<LocalDate> untilKey = Key.Optional("until", PlanKinds.Date, "Not after; without it, to the end.");

    /// <inheritdoc/>
    public override string Name => "standing order";

    /// <inheritdoc/>
    public override string Doc => "The same delivery, week after week.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [.. orderKeys.All, onKey, fromKey, untilKey];

    /// <inheritdoc/>
    protected override OrderPart? Build(MappingReader keys)
    {
        if (keys.Has(fromKey) && keys.Has(untilKey) && keys.Get(fromKey) > keys.Get(untilKey))
        {
            keys.Refuse(untilKey, "`until` is before `from`", "write a later date");
            return null;
        }

        return orderKeys.Read(keys) is not { } part ? null : part with
        {
            Weekdays = PlanKinds.Each(keys.Get(onKey)),
            From = keys.FindValue(fromKey),
            Until = keys.FindValue(untilKey),
        };
    }
}

/// <summary>Reads a dated order.</summary>
internal sealed class DatedOrderMapping : Mapping<OrderPart>
{
    private static readonly OrderKeys orderKeys = new();

    private static readonly Key<LocalDate> onKey = Key.Required("on", PlanKinds.Date, "On which day it is handed over.");

    /// <inheritdoc/>
    public override string Name => "dated order";

    /// <inheritdoc/>
    public override string Doc => "One delivery.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [.. orderKeys.All, onKey];

    /// <inheritdoc/>
    protected override OrderPart? Build(MappingReader keys) =>
        orderKeys.Read(keys) is { } part ? part with { From = keys.Get(onKey) } : null;
}
