using System.Collections.Immutable;
using RackController.Model;
using RackController.RackFile.Binding;

namespace RackController.RackFile.Mappings;

/// <summary>A reservoir as written.</summary>
/// <param name="Place">Where.</param>
/// <param name="Tank">The tank.</param>
/// <param name="NormalPlace">Where the normal volume stands.</param>
internal sealed record ReservoirPart(Place Place, Reservoir Tank, Place NormalPlace);

/// <summary>Reads a reservoir.</summary>
internal sealed class ReservoirMapping : Mapping<ReservoirPart>
{
    /// <summary>Common practice, no source: nobody fills a tank on wheels to its brim.</summary>
    private const double NormalShare = 0.9;

    private static readonly Key<double> volumeKey = Key.Required("volume", Values.Volume, "Volume to the brim.");

    private static readonly Key<double> depthKey =
        Key.Required("depth", Values.Length, "Inside depth from floor to brim; straight walls.");

    private static readonly Key<double> floorKey = Key.Defaulted(
        "floor-height", Values.Length, "20 mm", "Height of its inside floor above the floor of the room.");

    private static readonly Key<double> normalKey = Key.Optional(
        "normal-volume", Values.Volume, "What the grower fills it to. Without it: nine tenths of its volume.");

    private static readonly Key<double> intakeKey = Key.Defaulted(
        "pump-intake", Values.Length, "30 mm", "Depth below which the pump draws air.");

    /// <inheritdoc/>
    public override string Name => "reservoir";

    /// <inheritdoc/>
    public override string Doc => "The tank that the pump draws from and the trays drain to.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [volumeKey, depthKey, floorKey, normalKey, intakeKey];

    /// <inheritdoc/>
    protected override ReservoirPart? Build(MappingReader keys)
    {
        var volumeL = keys.Get(volumeKey);
        var tank = new Reservoir(
            volumeL, keys.Get(depthKey), keys.Get(floorKey), keys.FindValue(normalKey) ?? NormalShare * volumeL,
            keys.Get(intakeKey));
        if (tank.DepthMm < 50)
        {
            keys.Refuse(depthKey, "a reservoir less than 50 mm deep", "measure its inside depth from floor to brim");
            return null;
        }

        if (tank.NormalVolumeL > volumeL)
        {
            keys.Refuse(normalKey, "more than the reservoir holds", "write at most its volume");
            return null;
        }

        if (tank.PumpIntakeMm >= tank.DepthMm)
        {
            keys.Refuse(intakeKey, "a pump intake above the brim", "measure from the reservoir's inside floor");
            return null;
        }

        return new ReservoirPart(keys.Place, tank, keys.At(normalKey));
    }
}
