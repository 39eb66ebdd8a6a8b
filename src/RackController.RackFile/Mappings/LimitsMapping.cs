using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>The interlock limits of a rack as written.</summary>
/// <param name="Limits">The limits.</param>
/// <param name="Places">Where each key stands.</param>
internal sealed record LimitsPart(InterlockLimits Limits, Func<string, Place> Places);

/// <summary>Reads how far each interlock lets things go. A value outside its bounds is refused with the reason.</summary>
internal sealed class LimitsMapping : Mapping<LimitsPart>
{
    private static readonly ImmutableArray<Limit> declared =
    [
        Time("pump-maximum-run", "15 min", "10 s", "60 min", "Longest single run of the pump.",
            "a shorter run is a click, and a longer one could empty the reservoir onto the floor",
            (limits, value) => limits with { PumpMaximumRun = value }),
        Time("pump-rest", "15 min", "10 s", "24 h", "How long the pump rests between runs, while trays drain.",
            "without a rest the trays cannot drain, and a rest of days is no schedule",
            (limits, value) => limits with { PumpRest = value }),
        Time("pump-daily-budget", "3 h", "1 min", "24 h", "How long the pump may run in 24 h, all runs together.",
            "a day has 24 h", (limits, value) => limits with { PumpDailyBudget = value }),
        Count("maximum-runs-to-latch", "3", 10, "How many maximum runs within 24 h latch the pump.",
            (limits, value) => limits with { MaximumRunsToLatch = value }),
        Time("low-float-restored", "60 s", "1 s", "1 h", "How long the low float must read wet before the pump may run again.",
            "waves need a second to settle, and an hour's wait hides the cause",
            (limits, value) => limits with { LowFloatRestored = value }),
        Count("low-float-trips-to-latch", "2", 10, "How many low-float trips in one flood latch the pump.",
            (limits, value) => limits with { LowFloatTripsToLatch = value }),
        Time("no-fill-within", "25 s", "5 s", "5 min", "How soon after the pump starts water must be seen to move.",
            "water needs a moment to reach the trays, and a dry pump does not last for minutes",
            (limits, value) => limits with { NoFillWithin = value }),
        Count("no-fill-trips-to-latch", "2", 5, "How many floods in a row without water being seen latch the pump.",
            (limits, value) => limits with { NoFillTripsToLatch = value }),
        Quantity("not-drained-above", Dimensions.Length, "10 mm", "3 mm", "100 mm",
            "A tray that reads deeper when the next flood is due has not drained.",
            (limits, value) => limits with { NotDrainedAboveMm = value }),
        Count("samples-to-trip", "2", 5, "How many bad samples in a row trip a contact.",
            (limits, value) => limits with { SamplesToTrip = value }),
        Time("contact-return", "2 s", "100 ms", "60 s", "How long a contact must read well before it counts as well.",
            "less lets a bouncing float chatter the pump, more hides that it is well",
            (limits, value) => limits with { ContactReturn = value }),
        Time("supply-quiet-period", "60 s", "5 s", "1 h", "How long everything on a circuit stays off once its supply is back.",
            "a supply that returns often fails again within seconds, and crops cannot wait for hours",
            (limits, value) => limits with { SupplyQuietPeriod = value }),
        Time("restart-spacing", "10 s", "1 s", "10 min", "From one load to the next when a circuit comes back.",
            "inrush currents must not add up, and the last load must not wait for hours",
            (limits, value) => limits with { RestartSpacing = value }),
        Count("supply-trips-to-latch", "3", 20, "How many supply losses within 24 h latch a circuit.",
            (limits, value) => limits with { SupplyTripsToLatch = value }),
        Time("switching-stagger", "1 s", "100 ms", "60 s", "Least time between two loads switched on on one circuit.",
            "inrush currents must not add up, and no load should wait for minutes",
            (limits, value) => limits with { SwitchingStagger = value }),
        Time("relay-rest", "5 s", "0 s", "10 min", "Least time between switching one relay off and on again.",
            "a relay that rests longer misses its schedule", (limits, value) => limits with { RelayRest = value }),
        Time("circuit-over-limit-after", "10 s", "2 s", "5 min",
            "How long a circuit must be measured above its continuous limit before loads are shed.",
            "a starting current must not count, and a breaker does not wait for long",
            (limits, value) => limits with { CircuitOverLimitAfter = value }),
        Time("circuit-over-limit-return", "10 min", "1 min", "24 h",
            "How long a circuit that was above its limit is given before what was shed may come back.",
            "loads that come and go every few seconds wear their relays",
            (limits, value) => limits with { CircuitOverLimitReturn = value }),
        Count("circuit-over-limits-to-latch", "3", 20, "How many times above its limit within 24 h latch what a circuit sheds.",
            (limits, value) => limits with { CircuitOverLimitsToLatch = value }),
        Time("load-check-every", "12 h", "1 h", "168 h",
            "How often an aerator or fan that is always on is switched off for a moment, to see its current fall.",
            "more often wears the relay, and less often leaves roots without air unnoticed",
            (limits, value) => limits with { LoadCheckEvery = value }),
        Time("service-hold-maximum", "30 min", "1 min", "8 h", "Longest service hold.",
            "nobody works in a rack for less, and a forgotten hold must end the same day",
            (limits, value) => limits with { ServiceHoldMaximum = value }),
        Time("service-hold-warning", "2 min", "10 s", "30 min", "How long before its end a service hold warns.",
            "hands need time to leave the rack", (limits, value) => limits with { ServiceHoldWarning = value }),
        Time("start-delay", "30 s", "0 s", "10 min",
            "How long the pump still waits when somebody resumed a rack, released a latch or ended a service hold.",
            "hands need a moment to leave the rack, and a crop cannot wait for hours",
            (limits, value) => limits with { StartDelay = value }),
        Time("reset-confirm-within", "60 s", "5 s", "10 min", "How long after a reset request the confirming one may come.",
            "two independent actions need a moment, and must belong together",
            (limits, value) => limits with { ResetConfirmWithin = value }),
        Time("scan-recovery", "10 s", "1 s", "10 min", "How long scans must be good before a rack that was late is driven again.",
            "one good scan proves nothing", (limits, value) => limits with { ScanRecovery = value }),
        Quantity("air-hot", Dimensions.Temperature, "32 °C", "20 °C", "45 °C",
            "Air temperature above which a tier's lights are off.",
            (limits, value) => limits with { AirHotC = value }),
        Quantity("air-hot-return", Dimensions.TemperatureDifference, "2 K", "0.5 K", "10 K",
            "How far below `air-hot` the air must cool before the lights return.",
            (limits, value) => limits with { AirHotReturnK = value }),
        Time("air-unknown-grace", "60 s", "5 s", "1 h", "How long the air's temperature may be unknown before the lights there are out.",
            "a sensor may miss a moment, and what nobody measures may get hot within the hour",
            (limits, value) => limits with { AirUnknownGrace = value }),
        Quantity("water-cold", Dimensions.Temperature, "12 °C", "0 °C", "25 °C", "Water below this raises an alarm.",
            (limits, value) => limits with { WaterColdC = value }),
        Quantity("water-warm", Dimensions.Temperature, "26 °C", "15 °C", "40 °C", "Water above this raises an alarm.",
            (limits, value) => limits with { WaterWarmC = value }),
        Quantity("light-missing-below", Dimensions.Percentage, "10 %", "1 %", "90 %",
            "A light that is on is missing where its tier shows less than this share of what it gives.",
            (limits, value) => limits with { LightMissingBelowPercent = value }),
        Quantity("light-unasked-above", Dimensions.Percentage, "30 %", "1 %", "90 %",
            "A light that is off is on unasked where its tier shows more than this share of what it gives.",
            (limits, value) => limits with { LightUnaskedAbovePercent = value }),
        Time("light-seen-within", "5 min", "10 s", "2 h",
            "How long a tier must show other light than its lamp was told before a person is told.",
            "a hand over the sensor must not count, and a dark day is lost by the evening",
            (limits, value) => limits with { LightSeenWithin = value }),
        .. LimitsOfTests,
    ];

    /// <inheritdoc/>
    public override string Name => "limits";

    /// <inheritdoc/>
    public override string Doc => "How far each interlock of the rack lets things go.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [.. declared.Select(limit => limit.Key)];

    /// <inheritdoc/>
    protected override LimitsPart? Build(MappingReader keys)
    {
        var limits = declared.Aggregate(InterlockLimits.Default, (sofar, limit) => limit.Set(sofar, keys));
        return new LimitsPart(limits, name => keys.At(declared.Single(limit => limit.Key.Name == name).Key));
    }

    private static ImmutableArray<Limit> LimitsOfTests =>
    [
        Interval("float-test-interval", "90 d", "a float", (limits, value) => limits with { FloatTestInterval = value }),
        Interval("leak-rope-test-interval", "90 d", "a leak rope", (limits, value) => limits with { LeakRopeTestInterval = value }),
        Interval("supply-sense-test-interval", "180 d", "a supply sense",
            (limits, value) => limits with { SupplySenseTestInterval = value }),
        Interval("current-test-interval", "180 d", "a current sensor", (limits, value) => limits with { CurrentTestInterval = value }),
        Interval("relay-test-interval", "180 d", "a relay", (limits, value) => limits with { RelayTestInterval = value }),
        Time("first-test-within", "14 d", "1 d", "90 d", "How long after going into service the first proof tests are due.",
            "nobody tests a rack before it stands, and what was never tested is only hoped to work",
            (limits, value) => limits with { FirstTestWithin = value }),
        Time("test-step-within", "60 s", "10 s", "10 min", "How long each step of a proof test may take.",
            "hands need a moment, and a forgotten test must end", (limits, value) => limits with { TestStepWithin = value }),
        Time("floats-contradict-after", "10 s", "1 s", "10 min", "How long floats must contradict each other before it counts.",
            "waves settle within seconds, and a float that lies must not do so for a whole flood",
            (limits, value) => limits with { FloatsContradictAfter = value }),
        Count("still-floods-to-tell", "3", 20, "After how many floods without a move of a tray's full float a person is told.",
            (limits, value) => limits with { StillFloodsToTell = value }),
        Count("still-floods-to-forbid", "12", 100, "After how many floods without a move of a tray's full float the pump may not start.",
            (limits, value) => limits with { StillFloodsToForbid = value }),
    ];

    private static Limit Interval(
        string name, string standard, string what, Func<InterlockLimits, Duration, InterlockLimits> set) =>
        Time(name, standard, "1 d", "400 d", $"How often {what} is due for its proof test.",
            "a test every day wears out the tester, and one in more than a year is none", set);

    private static Limit Time(
        string name, string standard, string least, string most, string doc, string why,
        Func<InterlockLimits, Duration, InterlockLimits> set)
    {
        var key = Key.Defaulted(name, Values.Duration(least, most, why), standard, $"{doc} From {least} to {most}.");
        return new Limit(key, (limits, keys) => set(limits, keys.Get(key)));
    }

    private static Limit Count(
        string name, string standard, int most, string doc, Func<InterlockLimits, int, InterlockLimits> set)
    {
        var key = Key.Defaulted(name, new WholeNumberKind("a count", 1, most), standard, $"{doc} From 1 to {most}.");
        return new Limit(key, (limits, keys) => set(limits, keys.Get(key)));
    }

    private static Limit Quantity(
        string name, Dimension dimension, string standard, string least, string most, string doc,
        Func<InterlockLimits, double, InterlockLimits> set)
    {
        var key = Key.Defaulted(name, new QuantityKind(dimension, least, most), standard, $"{doc} From {least} to {most}.");
        return new Limit(key, (limits, keys) => set(limits, keys.Get(key)));
    }

    private sealed record Limit(Key Key, Func<InterlockLimits, MappingReader, InterlockLimits> Set);
}
