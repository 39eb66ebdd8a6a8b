using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>When and how the trays are flooded, as written.</summary>
/// <param name="Place">Where.</param>
/// <param name="TimesPlace">Where the times stand.</param>
/// <param name="FillPlace">Where the fill stands.</param>
/// <param name="Times">When.</param>
/// <param name="Fill">How long, or until full.</param>
/// <param name="Soak">How long at depth.</param>
/// <param name="Drain">How long to empty.</param>
/// <param name="Missed">What happens to missed ones.</param>
internal sealed record FloodsPart(
    Place Place, Place TimesPlace, Place FillPlace, FloodTimes Times, FillPart Fill, Duration Soak, Duration Drain,
    MissedFloods Missed)
{
    /// <summary>How long the pump runs in one flood at most.</summary>
    public Duration PumpRun => Fill.Limit + Soak;

    /// <summary>The longest that one flood can take.</summary>
    public Duration LongestCycle => PumpRun + Drain;
}

/// <summary>Reads when and how the trays are flooded.</summary>
internal sealed class FloodsMapping : Mapping<FloodsPart>
{
    /// <summary>One every quarter of an hour: no tray fills, soaks and drains faster.</summary>
    internal const int MostFloodsADay = 96;

    private static readonly Key<ImmutableArray<LocalTime>> atKey = Key.Optional(
        "at", Values.List(Values.TimeOfDay, "time", MostFloodsADay), "Local times at which floods begin.");

    private static readonly Key<Duration> everyKey = Key.Optional(
        "every", Values.Duration("1 min", "24 h"),
        "From the start of one flood to the start of the next, within a window of the day.");

    private static readonly Key<LocalTime> fromKey = Key.Optional(
        "from", Values.TimeOfDay, "With `every`: local time of the window's start and of its first flood.");

    private static readonly Key<Duration> lengthKey = Key.Optional(
        "for", Values.Duration("1 min", "24 h"), "With `every`: length of the window; no flood begins at or after its end.");

    private static readonly Key<int> overPhotoperiodKey = Key.Optional(
        "over-photoperiod", new WholeNumberKind("a number of floods", 1, MostFloodsADay),
        "So many floods spread evenly from the first light on to the last light off, the first at lights on.");

    private static readonly Key<FillPart> fillKey = Key.Required("fill", new FillMapping(), "When a fill is over.");

    private static readonly Key<Duration> soakKey = Key.Required(
        "soak", Values.Duration("0 min", "4 h"), "How long the water is held at depth after the fill, with the pump running.");

    private static readonly Key<Duration> drainKey = Key.Defaulted(
        "drain", Values.Duration("0 min", "24 h"), "20 min", "How long the trays take to empty; the next flood waits for it.");

    private static readonly Key<MissedFloods> missedKey = Key.Defaulted(
        "missed", new ChoiceKind<MissedFloods>([("run-one", MissedFloods.RunOne), ("skip", MissedFloods.Skip)]), "run-one",
        "What happens to floods that could not begin while the power or the controller was away.");

    /// <inheritdoc/>
    public override string Name => "floods";

    /// <inheritdoc/>
    public override string Doc =>
        "When the trays are flooded (`at`, or `every` with `from` and `for`, or `over-photoperiod`) and how.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys =>
        [atKey, everyKey, fromKey, lengthKey, overPhotoperiodKey, fillKey, soakKey, drainKey, missedKey];

    /// <inheritdoc/>
    protected override FloodsPart? Build(MappingReader keys) => ReadTimes(keys) is { } times
        ? new FloodsPart(
            keys.Place, keys.Has(atKey) ? keys.At(atKey) : keys.Has(everyKey) ? keys.At(everyKey) : keys.At(overPhotoperiodKey),
            keys.At(fillKey), times, keys.Get(fillKey), keys.Get(soakKey), keys.Get(drainKey), keys.Get(missedKey))
        : null;

    private static FloodTimes? ReadTimes(MappingReader keys)
    {
        var ways = new[] { keys.Has(atKey), keys.Has(everyKey), keys.Has(overPhotoperiodKey) };
        if (ways.Count(way => way) != 1)
        {
            keys.Complaints.Refuse(
                keys.Place, "floods need exactly one of `at`, `every` and `over-photoperiod`",
                "write one of them, such as `at: [07:00, 13:00, 19:00]`");
            return null;
        }

        if (keys.Has(fromKey) != keys.Has(everyKey) || keys.Has(lengthKey) != keys.Has(everyKey))
        {
            keys.Complaints.Refuse(
                keys.Place, "`every`, `from` and `for` belong together",
                "write all three, such as `every: 4 h`, `from: 06:00`, `for: 16 h`");
            return null;
        }

        return keys.Has(everyKey) ? new FloodsEvery(keys.Get(everyKey), keys.Get(fromKey), keys.Get(lengthKey))
            : keys.Has(overPhotoperiodKey) ? new FloodsOverPhotoperiod(keys.Get(overPhotoperiodKey))
            : InOrder(keys, keys.Get(atKey));
    }

    private static FloodsAt? InOrder(MappingReader keys, ImmutableArray<LocalTime> times)
    {
        var repeated = times.GroupBy(time => time).FirstOrDefault(group => group.Count() > 1);
        if (repeated is not null)
        {
            keys.Refuse(atKey, $"`{repeated.Key:HH':'mm}` stands twice", "keep one of them");
            return null;
        }

        return new FloodsAt([.. times.Order()]);
    }
}
