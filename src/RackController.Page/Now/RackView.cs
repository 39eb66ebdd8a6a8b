using System.Collections.Immutable;
using RackController.Control;
using RackController.Model;

namespace RackController.Page;

/// <summary>One rack, from the top tier down.</summary>
/// <param name="Index">Its place on the site, from 0: the part of addresses that names it.</param>
/// <param name="Name">What the grower calls it.</param>
/// <param name="Phase">Where its flood cycle is.</param>
/// <param name="Asked">What people asked for that outlasts the asking.</param>
/// <param name="Tiers">The tiers, top first.</param>
/// <param name="Reservoir">The reservoir.</param>
/// <param name="Loads">Every load of it.</param>
/// <param name="Readings">Every sensor of it.</param>
public sealed record RackView(
    int Index, string Name, FloodPhase Phase, RackAsked Asked, ImmutableArray<TierView> Tiers, ReservoirView Reservoir,
    ImmutableArray<LoadView> Loads, ImmutableArray<ReadingView> Readings)
{
    /// <summary>Whether its pump is told to run.</summary>
    public bool PumpRuns => Loads.Any(load => load is { Kind: LoadKind.Pump, IsOn: true });

    /// <summary>Whether an aerator is told to run.</summary>
    public bool IsAerated => Loads.Any(load => load is { Kind: LoadKind.Aerator, IsOn: true });

    /// <summary>All of it in one sentence, for whoever cannot see the drawing.</summary>
    public string Described =>
        $"{Name}, {Phase.InWords()}. {string.Join(". ", Tiers.Select(tier => tier.Described))}. Reservoir {Reservoir.Words}. "
        + $"Pump {(PumpRuns ? "on" : "off")}.";
}

/// <summary>One tier.</summary>
/// <param name="Number">Its number, 1 at the bottom.</param>
/// <param name="IsInUse">Whether it takes part.</param>
/// <param name="Light">Whether its light is on; null where it has none.</param>
/// <param name="Valve">Whether its valve is open; null where it has none.</param>
/// <param name="Water">How much water stands in its tray.</param>
/// <param name="StandpipeShare">How high its standpipe is, as a share of the rim.</param>
/// <param name="Contents">What stands in it.</param>
/// <param name="Grows">What grows there, by the growing book; empty where it tells of nothing.</param>
public sealed record TierView(
    int Number, bool IsInUse, bool? Light, bool? Valve, WaterView Water, double StandpipeShare, string Contents, string Grows)
{
    /// <summary>It in one phrase.</summary>
    public string Described => IsInUse
        ? $"Tier {Number}{LightWords}{(Grows.Length > 0 ? ", " + Grows : "")}{(Water.Words.Length > 0 ? ", " + Water.Words : "")}"
        : $"Tier {Number} is out of use";

    private string LightWords => Light switch { true => " lit", false => " dark", null => " without a light" };
}

/// <summary>Water in a tray.</summary>
/// <param name="Share">How high it stands, as a share of the rim: 0 to 1.</param>
/// <param name="IsMeasured">Whether a sensor says so; else it follows from where the flood is.</param>
/// <param name="Words">It in words; empty where there is nothing to say.</param>
/// <param name="IsOdd">Whether water is where it should not be, or a sensor cannot be believed.</param>
public sealed record WaterView(double Share, bool IsMeasured, string Words, bool IsOdd);

/// <summary>The reservoir.</summary>
/// <param name="Share">How full it is: 0 to 1; null where no sensor says.</param>
/// <param name="Words">It in words.</param>
/// <param name="IsOdd">Whether it is too low, or a sensor cannot be believed.</param>
public sealed record ReservoirView(double? Share, string Words, bool IsOdd);

/// <summary>One load and why it is as it is.</summary>
/// <param name="Name">Its name, without its rack.</param>
/// <param name="Kind">What it does.</param>
/// <param name="IsOn">What it is told.</param>
/// <param name="Why">Why, step by step.</param>
public sealed record LoadView(string Name, LoadKind Kind, bool IsOn, LoadWhy Why)
{
    /// <summary>Whether something keeps it from what the schedule would like.</summary>
    public bool IsHeld => !Why.Interlocks.IsEmpty && Why.Summary != Why.Demand;
}
