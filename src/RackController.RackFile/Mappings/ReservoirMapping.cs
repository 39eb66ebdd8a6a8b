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

    private static readonly Key<double> _volume = Key.Required("volume", Kinds.Volume, "Volume to the brim.");

    private static readonly Key<double> _depth = Key.Required("depth", Kinds.Length, "Inside depth from floor to brim; straight walls.");

    private static readonly Key<double> _floor = Key.Defaulted(
        "floor-height", Kinds.Length, "20 mm", "Height of its inside floor above the floor of the room.");

    private static readonly Key<double> _normal = Key.Optional(
        "normal-volume", Kinds.Volume, "What the grower fills it to. Without it: nine tenths of its volume.");

    private static readonly Key<double> _intake = Key.Defaulted(
        "pump-intake", Kinds.Length, "30 mm", "Depth below which the pump draws air.");

    /// <inheritdoc/>
    public override string Name => "reservoir";

    /// <inheritdoc/>
    public override string Doc => "The tank that the pump draws from and the trays drain to.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [_volume, _depth, _floor, _normal, _intake];

    /// <inheritdoc/>
    protected override ReservoirPart? Build(MappingReader keys)
    {
        var volumeL = keys.Get(_volume);
        var tank = new Reservoir(
            volumeL, keys.Get(_depth), keys.Get(_floor), keys.FindValue(_normal) ?? NormalShare * volumeL, keys.Get(_intake));
        if (tank.DepthMm < 50)
        {
            keys.Refuse(_depth, "a reservoir less than 50 mm deep", "measure its inside depth from floor to brim");
            return null;
        }

        if (tank.NormalVolumeL > volumeL)
        {
            keys.Refuse(_normal, "more than the reservoir holds", "write at most its volume");
            return null;
        }

        if (tank.PumpIntakeMm >= tank.DepthMm)
        {
            keys.Refuse(_intake, "a pump intake above the brim", "measure from the reservoir's inside floor");
            return null;
        }

        return new ReservoirPart(keys.Place, tank, keys.At(_normal));
    }
}
