using System.Collections.Immutable;
using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>A number of a run that a scenario may bound.</summary>
/// <param name="Unit">Its unit; empty for a count.</param>
public abstract record Measure(string Unit)
{
    /// <summary>Its value now; null when it cannot be told at this moment.</summary>
    /// <param name="now">What is true now.</param>
    public abstract double? Value(IObserved now);

    /// <summary>What the simulated rack must watch so that nobody misses this number pass a value; null where only events change
    /// it, or time.</summary>
    /// <param name="site">The site.</param>
    /// <param name="value">The value.</param>
    public virtual WatchedLevel? Level(Site site, double value) => null;

    /// <summary>Asks to be shown the moments at which time alone takes this number to a value and past it; most need none.</summary>
    /// <param name="now">What is true now.</param>
    /// <param name="value">The value.</param>
    public virtual void AwaitValue(IObserved now, double value)
    {
    }

    /// <summary>What is measured, in words.</summary>
    /// <param name="site">The site that gives the names.</param>
    public abstract string Words(Site site);

    /// <summary>Whether an event about this subject could explain it.</summary>
    /// <param name="site">The site that gives the names.</param>
    /// <param name="subject">The subject of an event.</param>
    public abstract bool Concerns(Site site, string subject);
}

/// <summary>A number of the run lies within bounds.</summary>
/// <param name="Measure">The number.</param>
/// <param name="Compared">How it should compare.</param>
public sealed record Measures(Measure Measure, Comparison Compared) : Statement
{
    /// <inheritdoc/>
    public override Truth Judge(IObserved now)
    {
        foreach (var turn in Compared.Turns)
        {
            Measure.AwaitValue(now, turn);
        }

        return Measure.Value(now) is { } value ? Of(Compared.Holds(value)) : Truth.NotNow;
    }

    /// <inheritdoc/>
    public override ImmutableArray<WatchedLevel> Levels(Site site) =>
        [.. Compared.Turns.Select(turn => Measure.Level(site, turn)).OfType<WatchedLevel>()];

    /// <inheritdoc/>
    public override string Words(Site site) => $"{Measure.Words(site)} is {Compared.Words(Measure.Unit)}";

    /// <inheritdoc/>
    public override string Seen(IObserved now) =>
        $"{Measure.Words(now.Site)} is {Comparison.Number(Measure.Value(now) ?? double.NaN, Measure.Unit)}";

    /// <inheritdoc/>
    public override bool Concerns(Site site, string subject) => Measure.Concerns(site, subject);
}

/// <summary>Depth of water in a flood tray.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="TierNumber">The tier, 1 at the bottom.</param>
public sealed record TrayDepth(RackId Rack, int TierNumber) : WaterMeasure("mm", Rack)
{
    /// <inheritdoc/>
    public override double? Value(IObserved now) => now.TrayDepthMm(Rack, TierNumber);

    /// <inheritdoc/>
    public override WatchedLevel? Level(Site site, double value) =>
        new WatchedLevel(Rack, RackQuantity.TrayDepth, TierNumber, value);

    /// <inheritdoc/>
    public override string Words(Site site) => $"the water in the tray of {site[Rack].Name}/tier {TierNumber}";
}

/// <summary>Water lost onto the floor since the run began, beyond the drip tray.</summary>
/// <param name="Rack">The rack.</param>
public sealed record Spilled(RackId Rack) : WaterMeasure("L", Rack)
{
    /// <inheritdoc/>
    public override double? Value(IObserved now) => now.SpilledL(Rack);

    /// <inheritdoc/>
    public override WatchedLevel? Level(Site site, double value) => new WatchedLevel(Rack, RackQuantity.OntoFloor, null, value);

    /// <inheritdoc/>
    public override string Words(Site site) => $"the water that {site[Rack].Name} lost onto the floor";
}

/// <summary>Water in the reservoir.</summary>
/// <param name="Rack">The rack.</param>
public sealed record ReservoirVolume(RackId Rack) : WaterMeasure("L", Rack)
{
    /// <inheritdoc/>
    public override double? Value(IObserved now) => now.ReservoirL(Rack);

    /// <inheritdoc/>
    public override WatchedLevel? Level(Site site, double value) =>
        new WatchedLevel(Rack, RackQuantity.ReservoirDepth, null, value / site[Rack].Reservoir.AreaM2);

    /// <inheritdoc/>
    public override string Words(Site site) => $"the water in the reservoir of {site[Rack].Name}";
}

/// <summary>Air temperature at a tier.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="TierNumber">The tier, 1 at the bottom.</param>
public sealed record AirTemperature(RackId Rack, int TierNumber) : TierMeasure("C", Rack, TierNumber)
{
    /// <inheritdoc/>
    public override double? Value(IObserved now) => now.AirC(Rack, TierNumber);

    /// <inheritdoc/>
    public override WatchedLevel? Level(Site site, double value) =>
        new WatchedLevel(Rack, RackQuantity.AirTemperature, TierNumber, value);

    /// <inheritdoc/>
    public override string Words(Site site) => $"the air at {site[Rack].Name}/tier {TierNumber}";
}

/// <summary>Floods begun on a whole local day.</summary>
/// <param name="Rack">The rack.</param>
public sealed record FloodsOfDay(RackId Rack) : WaterMeasure("", Rack)
{
    /// <inheritdoc/>
    public override double? Value(IObserved now) => now.DayClosed?.FloodsByRack[Rack.Index];

    /// <inheritdoc/>
    public override string Words(Site site) => $"the number of floods of {site[Rack].Name} in a day";
}

/// <summary>Hours a tier was really lit on a whole local day.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="TierNumber">The tier, 1 at the bottom.</param>
public sealed record LitHoursOfDay(RackId Rack, int TierNumber) : TierMeasure("h", Rack, TierNumber)
{
    /// <inheritdoc/>
    public override double? Value(IObserved now) => LitIn(now)?.TotalHours;

    /// <inheritdoc/>
    public override string Words(Site site) => $"the light of {site[Rack].Name}/tier {TierNumber} in a day";

    internal Duration? LitIn(IObserved now) =>
        now.DayClosed is not { } day ? null
        : now.Site[Rack].Tier(TierNumber).Light is { } light ? day.PoweredByLoad[light.Index]
        : Duration.Zero;
}

/// <summary>Daily light integral of a tier on a whole local day.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="TierNumber">The tier, 1 at the bottom.</param>
public sealed record DailyLightIntegral(RackId Rack, int TierNumber) : TierMeasure("mol/m2", Rack, TierNumber)
{
    /// <inheritdoc/>
    public override double? Value(IObserved now) => new LitHoursOfDay(Rack, TierNumber).LitIn(now) is { } lit
        ? DailyLight.MolPerM2(now.Site[Rack].Tier(TierNumber).PpfdUmolPerM2S, lit)
        : null;

    /// <inheritdoc/>
    public override string Words(Site site) => $"the daily light integral of {site[Rack].Name}/tier {TierNumber}";
}

/// <summary>A number that belongs to the water of a rack.</summary>
/// <param name="Unit">Its unit; empty for a count.</param>
/// <param name="Rack">The rack.</param>
public abstract record WaterMeasure(string Unit, RackId Rack) : Measure(Unit)
{
    /// <inheritdoc/>
    public override bool Concerns(Site site, string subject) => Vicinity.OfWater(Rack).Concerns(site, subject);
}

/// <summary>A number that belongs to the light and air of a tier.</summary>
/// <param name="Unit">Its unit.</param>
/// <param name="Rack">The rack.</param>
/// <param name="TierNumber">The tier, 1 at the bottom.</param>
public abstract record TierMeasure(string Unit, RackId Rack, int TierNumber) : Measure(Unit)
{
    /// <inheritdoc/>
    public override bool Concerns(Site site, string subject) => Vicinity.OfTier(Rack, TierNumber).Concerns(site, subject);
}

/// <summary>Current that a circuit carries.</summary>
/// <param name="Circuit">The circuit.</param>
public sealed record CircuitCurrent(CircuitId Circuit) : Measure("A")
{
    /// <inheritdoc/>
    public override double? Value(IObserved now) => now.CircuitA(Circuit);

    /// <inheritdoc/>
    public override string Words(Site site) => $"the current of {site[Circuit].Name}";

    /// <inheritdoc/>
    public override bool Concerns(Site site, string subject) => Vicinity.OfCircuit(Circuit).Concerns(site, subject);
}

/// <summary>How long a load has really been powered without a break.</summary>
/// <param name="Load">The load.</param>
public sealed record UnbrokenRun(LoadId Load) : Measure("min")
{
    /// <inheritdoc/>
    public override double? Value(IObserved now) => now.PoweredFor(Load).TotalMinutes;

    /// <inheritdoc/>
    public override void AwaitValue(IObserved now, double value)
    {
        var run = now.PoweredFor(Load);
        var reached = now.Elapsed - run + Duration.FromMinutes(value);
        if (!now.IsPowered(Load))
        {
            // A run that has ended just now is over at the next scan.
            now.LookAgainBy(run > Duration.Zero ? now.Elapsed + Duration.Epsilon : Duration.MaxValue);
        }
        else if (now.Elapsed <= reached)
        {
            now.LookAgainBy(now.Elapsed < reached ? reached : reached + Duration.Epsilon);
        }
    }

    /// <inheritdoc/>
    public override string Words(Site site) => $"the unbroken run of {site[Load].Name}";

    /// <inheritdoc/>
    public override bool Concerns(Site site, string subject) => Vicinity.OfLoad(site, Load).Concerns(site, subject);
}
