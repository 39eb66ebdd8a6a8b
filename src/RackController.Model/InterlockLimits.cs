using NodaTime;

namespace RackController.Model;

/// <summary>
/// How far each interlock lets things go. The rack file may set them within bounds that its reader enforces; a value
/// outside is refused with the reason, never clamped. All durations are monotonic.
/// </summary>
public sealed record InterlockLimits
{
    /// <summary>The limits of a rack file that sets none.</summary>
    public static InterlockLimits Default { get; } = new();

    /// <summary>Longest single run of the pump. Default 15 min; 10 s to 60 min.</summary>
    public Duration PumpMaximumRun { get; init; } = Duration.FromMinutes(15);

    /// <summary>How long the pump rests between runs, while trays drain. Default 15 min; 10 s to 24 h.</summary>
    public Duration PumpRest { get; init; } = Duration.FromMinutes(15);

    /// <summary>How long the pump may run in a day, all runs together; a day is 24 h of monotonic time from its first run.
    /// Default 3 h; 1 min to 24 h.</summary>
    public Duration PumpDailyBudget { get; init; } = Duration.FromHours(3);

    /// <summary>How many maximum runs within 24 h latch the pump. Default 3; 1 to 10.</summary>
    public int MaximumRunsToLatch { get; init; } = 3;

    /// <summary>How long the reservoir's low float must read wet before the pump may run again. Default 60 s; 1 s to 1 h.</summary>
    public Duration LowFloatRestored { get; init; } = Duration.FromSeconds(60);

    /// <summary>How many low-float trips in one flood latch the pump. Default 2; 1 to 10.</summary>
    public int LowFloatTripsToLatch { get; init; } = 2;

    /// <summary>How soon after the pump starts water must be seen to move. Default 25 s, before a dry pump is harmed; 5 s to
    /// 5 min.</summary>
    public Duration NoFillWithin { get; init; } = Duration.FromSeconds(25);

    /// <summary>How many floods in a row without water being seen latch the pump. Default 2, one to try again; 1 to 5.</summary>
    public int NoFillTripsToLatch { get; init; } = 2;

    /// <summary>A tray that reads deeper than this when the next flood is due has not drained, mm. Default 10; 3 to 100.</summary>
    public double NotDrainedAboveMm { get; init; } = 10;

    /// <summary>How many bad samples in a row trip a contact. Default 2, one to reject a glitch; 1 to 5.</summary>
    public int SamplesToTrip { get; init; } = 2;

    /// <summary>How long a contact must read well before it counts as well. Default 2 s; 100 ms to 60 s.</summary>
    public Duration ContactReturn { get; init; } = Duration.FromSeconds(2);

    /// <summary>How long everything on a circuit stays off once its supply is back. Default 60 s; 5 s to 1 h.</summary>
    public Duration SupplyQuietPeriod { get; init; } = Duration.FromSeconds(60);

    /// <summary>From one load to the next when a circuit comes back. Default 10 s; 1 s to 10 min.</summary>
    public Duration RestartSpacing { get; init; } = Duration.FromSeconds(10);

    /// <summary>How many supply losses within 24 h latch a circuit. Default 3; 1 to 20.</summary>
    public int SupplyTripsToLatch { get; init; } = 3;

    /// <summary>Least time between two loads switched on on one circuit, so that inrush currents do not add up.
    /// Default 1 s; 100 ms to 60 s.</summary>
    public Duration SwitchingStagger { get; init; } = Duration.FromSeconds(1);

    /// <summary>Least time between switching one relay off and on again. Default 5 s; 0 to 10 min.</summary>
    public Duration RelayRest { get; init; } = Duration.FromSeconds(5);

    /// <summary>How long a circuit must be measured above its continuous limit before loads are shed; starting currents are
    /// shorter. Default 10 s; 2 s to 5 min.</summary>
    public Duration CircuitOverLimitAfter { get; init; } = Duration.FromSeconds(10);

    /// <summary>How long a circuit that was above its limit is given before it is looked at whether what was shed fits again.
    /// Default 10 min; 1 min to 24 h.</summary>
    public Duration CircuitOverLimitReturn { get; init; } = Duration.FromMinutes(10);

    /// <summary>How many times above its limit within 24 h latch what a circuit sheds. Default 3; 1 to 20.</summary>
    public int CircuitOverLimitsToLatch { get; init; } = 3;

    /// <summary>How often an aerator or fan that is always on is switched off for a moment, to see its current fall. Default 12 h;
    /// 1 h to 7 days.</summary>
    public Duration LoadCheckEvery { get; init; } = Duration.FromHours(12);

    /// <summary>Longest service hold. Default 30 min; 1 min to 8 h.</summary>
    public Duration ServiceHoldMaximum { get; init; } = Duration.FromMinutes(30);

    /// <summary>How long before its end a service hold warns. Default 2 min; 10 s to 30 min.</summary>
    public Duration ServiceHoldWarning { get; init; } = Duration.FromMinutes(2);

    /// <summary>How long the pump still waits when somebody resumed a rack, released a latch or ended a service hold, so that hands are
    /// out before it starts. Default 30 s; 0 to 10 min.</summary>
    public Duration StartDelay { get; init; } = Duration.FromSeconds(30);

    /// <summary>How long after one request to reset a latch the second, confirming one may come. Default 60 s; 5 s to 10 min.</summary>
    public Duration ResetConfirmWithin { get; init; } = Duration.FromSeconds(60);

    /// <summary>How long every scan must be good before a rack whose scans were late or failing is driven again. Default 10 s;
    /// 1 s to 10 min.</summary>
    public Duration ScanRecovery { get; init; } = Duration.FromSeconds(10);

    /// <summary>Air temperature above which a tier's lights are off, degrees Celsius. Default 32; 20 to 45.</summary>
    public double AirHotC { get; init; } = 32;

    /// <summary>How far below <see cref="AirHotC"/> the air must cool before the lights return, kelvin. Default 2; 0.5 to 10.</summary>
    public double AirHotReturnK { get; init; } = 2;

    /// <summary>How long the air's temperature may be unknown before the lights there are out. Default 60 s; 5 s to 1 h.</summary>
    public Duration AirUnknownGrace { get; init; } = Duration.FromSeconds(60);

    /// <summary>Water below this raises an alarm, degrees Celsius. Default 12; 0 to 25.</summary>
    public double WaterColdC { get; init; } = 12;

    /// <summary>Water above this raises an alarm, degrees Celsius. Default 26; 15 to 40.</summary>
    public double WaterWarmC { get; init; } = 26;

    /// <summary>A light that is on and shows less than this share of its own illuminance is missing, %. Default 10; 1 to 90. Common
    /// practice, no source: leaves shade a sensor, and even a lamp that has aged gives more.</summary>
    public double LightMissingBelowPercent { get; init; } = 10;

    /// <summary>A light that is off while its tier shows more than this share of its own illuminance is on unasked, %. Default 30; 1 to
    /// 90. Common practice, no source: what comes from a neighbouring tier or a window is less.</summary>
    public double LightUnaskedAbovePercent { get; init; } = 30;

    /// <summary>How long a tier must show other light than its lamp was told before a person is told. Default 5 min; 10 s to 2 h.</summary>
    public Duration LightSeenWithin { get; init; } = Duration.FromMinutes(5);

    /// <summary>How often a float is due for its proof test. Default 90 d; 1 d to 400 d. Common practice, no source.</summary>
    public Duration FloatTestInterval { get; init; } = Duration.FromDays(90);

    /// <summary>How often a leak rope is due for its proof test. Default 90 d; 1 d to 400 d. Common practice, no source.</summary>
    public Duration LeakRopeTestInterval { get; init; } = Duration.FromDays(90);

    /// <summary>How often a supply sense is due for its proof test. Default 180 d; 1 d to 400 d. Common practice, no source.</summary>
    public Duration SupplySenseTestInterval { get; init; } = Duration.FromDays(180);

    /// <summary>How often a current sensor is due for its proof test. Default 180 d; 1 d to 400 d. Common practice, no source.</summary>
    public Duration CurrentTestInterval { get; init; } = Duration.FromDays(180);

    /// <summary>How often a relay is due for its proof test. Default 180 d; 1 d to 400 d. Common practice, no source.</summary>
    public Duration RelayTestInterval { get; init; } = Duration.FromDays(180);

    /// <summary>How long after a site is put into service the first proof tests are due, where their interval is not shorter.
    /// Default 14 d; 1 d to 90 d. Common practice, no source.</summary>
    public Duration FirstTestWithin { get; init; } = Duration.FromDays(14);

    /// <summary>How long each step of a proof test may take. Default 60 s; 10 s to 10 min.</summary>
    public Duration TestStepWithin { get; init; } = Duration.FromSeconds(60);

    /// <summary>How long floats must contradict each other before it counts. Default 10 s; 1 s to 10 min.</summary>
    public Duration FloatsContradictAfter { get; init; } = Duration.FromSeconds(10);

    /// <summary>After how many floods in which a tray's full float did not move a person is told. Default 3; 1 to 20.</summary>
    public int StillFloodsToTell { get; init; } = 3;

    /// <summary>After how many floods in which a tray's full float did not move the pump may not start. Default 12; 1 to 100.</summary>
    public int StillFloodsToForbid { get; init; } = 12;
}
