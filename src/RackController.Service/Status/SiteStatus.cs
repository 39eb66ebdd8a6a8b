using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Growing;
using RackController.Model;

namespace RackController.Service;

/// <summary>A picture of the whole site as of one scan. Immutable; it may be kept and read by any thread.</summary>
/// <param name="At">When the scan was.</param>
/// <param name="Loads">Every load, on or off, and why.</param>
/// <param name="Sensors">Every sensor and what it says.</param>
/// <param name="Floods">Where each rack's flood cycle is, by <see cref="RackId"/>.</param>
/// <param name="TiersInUse">Which tiers take part, by <see cref="RackId"/> and then bottom first.</param>
/// <param name="Asked">What people asked of each rack that outlasts the asking, by <see cref="RackId"/>.</param>
/// <param name="Outlooks">What would come of a flood now, by <see cref="RackId"/>.</param>
/// <param name="Due">What the schedule will do next, soonest first.</param>
/// <param name="Alarms">Every alarm that is not normal, most urgent first, the controller's own included.</param>
/// <param name="ProofTests">The proof test of every contact, current sensor and relay, and when it is due.</param>
/// <param name="ProofTest">The one that is under way; null while none is.</param>
/// <param name="Recent">What happened last, newest first.</param>
/// <param name="Health">How well the scan keeps up.</param>
public sealed record SiteStatus(
    Moment At,
    ImmutableArray<LoadWhy> Loads,
    ImmutableArray<SensorStatus> Sensors,
    ImmutableArray<FloodPhase> Floods,
    ImmutableArray<ImmutableArray<bool>> TiersInUse,
    ImmutableArray<RackAsked> Asked,
    ImmutableArray<FloodOutlook> Outlooks,
    ImmutableArray<DueNext> Due,
    ImmutableArray<Alarm> Alarms,
    ImmutableArray<ProofTestStatus> ProofTests,
    ProofTestProgress? ProofTest,
    ImmutableArray<ControlEvent> Recent,
    ScanHealth Health)
{
    /// <summary>The works of upkeep that are due, what is most so first; looked at every hour.</summary>
    public ImmutableArray<UpkeepStatus> DueUpkeep { get; init; } = [];
}

/// <summary>What one sensor says and whether it may be believed.</summary>
/// <param name="Sensor">The sensor.</param>
/// <param name="Reading">What it says.</param>
/// <param name="Age">How old that is.</param>
/// <param name="Doubt">Why it may not be believed, in a word or two; null when it may.</param>
public sealed record SensorStatus(Sensor Sensor, Reading Reading, Duration Age, string? Doubt);
