using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>A number that tells how the water in a reservoir is.</summary>
/// <param name="Unit">Its unit.</param>
/// <param name="Rack">The rack.</param>
/// <param name="Quantity">The quantity of the simulated rack.</param>
public abstract record ReservoirMeasure(string Unit, RackId Rack, RackQuantity Quantity) : Measure(Unit)
{
    /// <inheritdoc/>
    public override double? Value(IObserved now) => now.Value(Rack, Quantity, null);

    /// <inheritdoc/>
    public override WatchedLevel? Level(Site site, double value) => new WatchedLevel(Rack, Quantity, null, value);

    /// <inheritdoc/>
    public override bool Concerns(Site site, string subject) => Vicinity.OfReservoir(Rack).Concerns(site, subject);
}

/// <summary>Oxygen dissolved in the reservoir.</summary>
/// <param name="Rack">The rack.</param>
public sealed record DissolvedOxygen(RackId Rack) : ReservoirMeasure("mg/L", Rack, RackQuantity.DissolvedOxygen)
{
    /// <inheritdoc/>
    public override string Words(Site site) => $"the oxygen in the reservoir of {site[Rack].Name}";
}

/// <summary>Electrical conductivity of the reservoir.</summary>
/// <param name="Rack">The rack.</param>
public sealed record Conductivity(RackId Rack) : ReservoirMeasure("mS/cm", Rack, RackQuantity.Conductivity)
{
    /// <inheritdoc/>
    public override string Words(Site site) => $"the conductivity of the reservoir of {site[Rack].Name}";
}

/// <summary>Temperature of the water in the reservoir.</summary>
/// <param name="Rack">The rack.</param>
public sealed record WaterTemperature(RackId Rack) : ReservoirMeasure("C", Rack, RackQuantity.WaterTemperature)
{
    /// <inheritdoc/>
    public override string Words(Site site) => $"the temperature of the water of {site[Rack].Name}";
}

/// <summary>Relative humidity of the air at a tier.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="TierNumber">The tier, 1 at the bottom.</param>
public sealed record AirHumidity(RackId Rack, int TierNumber) : TierMeasure("%", Rack, TierNumber)
{
    /// <inheritdoc/>
    public override double? Value(IObserved now) => now.Value(Rack, RackQuantity.AirHumidity, TierNumber);

    /// <inheritdoc/>
    public override WatchedLevel? Level(Site site, double value) => new WatchedLevel(Rack, RackQuantity.AirHumidity, TierNumber, value);

    /// <inheritdoc/>
    public override string Words(Site site) => $"the humidity of the air at {site[Rack].Name}/tier {TierNumber}";
}

/// <summary>Vapour pressure deficit of the air at a tier.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="TierNumber">The tier, 1 at the bottom.</param>
public sealed record VapourDeficit(RackId Rack, int TierNumber) : TierMeasure("kPa", Rack, TierNumber)
{
    /// <inheritdoc/>
    public override double? Value(IObserved now) => now.Value(Rack, RackQuantity.VapourDeficit, TierNumber);

    /// <inheritdoc/>
    public override WatchedLevel? Level(Site site, double value) =>
        new WatchedLevel(Rack, RackQuantity.VapourDeficit, TierNumber, value);

    /// <inheritdoc/>
    public override string Words(Site site) => $"the vapour pressure deficit at {site[Rack].Name}/tier {TierNumber}";
}
