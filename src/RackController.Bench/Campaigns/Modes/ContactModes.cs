using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>How floats, leak ropes and supply senses fail.</summary>
internal static class ContactModes
{
    private static readonly (Duration, Duration) untilRepaired = (Duration.FromMinutes(5), Duration.FromHours(8));
    private static readonly (Duration, Duration) restless = (Duration.FromSeconds(20), Duration.FromMinutes(20));
    private static readonly FaultSizes slow = new(5, 600, 60, "s");
    private static readonly FaultSizes chatter = new(0.5, 10, 2, "s");

    private static readonly (SensorKind Kind, string Words)[] floats =
    [
        (SensorKind.ReservoirLowFloat, "reservoir low float"),
        (SensorKind.ReservoirFullFloat, "reservoir full float"),
        (SensorKind.TrayFullFloat, "tray full float"),
        (SensorKind.TrayHighFloat, "tray high float"),
        (SensorKind.DripTrayFloat, "drip tray float"),
    ];

    /// <summary>The modes.</summary>
    public static IEnumerable<FaultMode> All =>
    [
        .. floats.SelectMany(one => Float(one.Kind, one.Words)),
        Of(FaultKind.FloatStuckWet, SensorKind.LeakRope, "leak rope stuck wet", ModeSources.RopeWet),
        Of(FaultKind.FloatStuckDry, SensorKind.LeakRope, "leak rope dead", ModeSources.RopeDead),
        Of(FaultKind.FloatSlow, SensorKind.LeakRope, "leak rope slow", ModeSources.RopeDead) with { Sizes = slow },
        Of(FaultKind.FloatStuckWet, SensorKind.SupplySense, "supply sense stuck present", ModeSources.SenseWelded),
        Of(FaultKind.FloatStuckDry, SensorKind.SupplySense, "supply sense stuck absent", ModeSources.SenseOpen),
        Chatters(SensorKind.SupplySense, "supply sense chatters"),
        FaultMode.Of(
            FaultKind.SensorDropout, "contact stops reporting", FaultFamily.Contacts, Contacts, untilRepaired, ModeSources.LineLost),
    ];

    private static IEnumerable<FaultMode> Float(SensorKind kind, string words) =>
    [
        Of(FaultKind.FloatStuckWet, kind, $"{words} stuck wet", ModeSources.Jammed),
        Of(FaultKind.FloatStuckDry, kind, $"{words} stuck dry", ModeSources.Open),
        Of(FaultKind.FloatSlow, kind, $"{words} slow", ModeSources.Slimed) with { Sizes = slow },
        Chatters(kind, $"{words} chatters"),
    ];

    private static FaultMode Of(FaultKind fault, SensorKind kind, string words, string source) =>
        FaultMode.Of(fault, words, FaultFamily.Contacts, FaultTarget.OfSensors(kind), untilRepaired, source);

    private static FaultMode Chatters(SensorKind kind, string words) => FaultMode.Of(
        FaultKind.FloatChattering, words, FaultFamily.Contacts, FaultTarget.OfSensors(kind), restless, ModeSources.Bounces) with
    {
        Sizes = chatter,
    };

    private static IEnumerable<FaultTarget> Contacts(Site site) => site.Sensors
        .Where(sensor => sensor.IsContact).Select(sensor => new FaultTarget(sensor.Name) { Sensor = sensor.Id });
}
