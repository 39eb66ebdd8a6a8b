using RackController.Model;
using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>The names that a scenario may use, which are those of its site.</summary>
internal sealed class SiteNames(Site site)
{
    public Site Site { get; } = site;

    public ChoiceKind<RackId> Rack { get; } = new([.. site.Racks.Select(rack => (rack.Name, rack.Id))]);

    public ChoiceKind<CircuitId> Circuit { get; } = new([.. site.Circuits.Select(circuit => (circuit.Name, circuit.Id))]);

    public ChoiceKind<LoadId> Load { get; } = new([.. site.Loads.Select(load => (load.Name, load.Id))]);

    public ChoiceKind<SensorId> Sensor { get; } = new([.. site.Sensors.Select(sensor => (sensor.Name, sensor.Id))]);

    public ChoiceKind<TierPlace> Tier { get; } = new([.. site.Racks.SelectMany(
        rack => rack.Tiers.Select(tier => ($"{rack.Name}/tier {tier.Number}", new TierPlace(rack.Id, tier.Number))))]);
}

/// <summary>A tier of a rack.</summary>
/// <param name="Rack">The rack.</param>
/// <param name="Number">1 at the bottom.</param>
internal sealed record TierPlace(RackId Rack, int Number);
