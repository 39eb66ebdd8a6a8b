using System.Collections.Immutable;
using NodaTime;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>Reads one point of the room's day.</summary>
internal sealed class RoomPointMapping : Mapping<RoomPoint>
{
    /// <summary>What the air of a room may be.</summary>
    public static QuantityKind Air { get; } = new(Dimensions.Temperature, "-10 °C", "60 °C");

    /// <summary>What its relative humidity may be.</summary>
    public static QuantityKind Humidity { get; } = new(Dimensions.Percentage, "0 %", "100 %");

    private readonly Key<LocalTime> at = Key.Required("at", new LocalTimeKind(), "The local time of every day.");
    private readonly Key<double> air = Key.Required("air", Air, "The temperature of the room's air at that time.");
    private readonly Key<double> humidity = Key.Required("humidity", Humidity, "Its relative humidity at that time.");

    public override string Name => "point of the room's day";

    public override string Doc => "How the room's air is at a time of every day; in between it runs evenly from point to point.";

    public override ImmutableArray<Key> Keys => [at, air, humidity];

    protected override RoomPoint Build(MappingReader keys) => new(keys.Get(at), keys.Get(air), keys.Get(humidity));
}
