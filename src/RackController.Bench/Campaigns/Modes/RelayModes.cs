using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>How relays fail, each by what it switches: a weld means something else on a pump than on a fan.</summary>
internal static class RelayModes
{
    private static readonly (Duration, Duration) untilRepaired = (Duration.FromMinutes(5), Duration.FromHours(8));

    private static readonly (Duration, Duration) restless = (Duration.FromSeconds(20), Duration.FromMinutes(20));

    private static readonly (LoadKind Kind, string Words)[] kinds =
    [
        (LoadKind.Pump, "pump"),
        (LoadKind.Valve, "valve"),
        (LoadKind.Light, "light"),
        (LoadKind.Fan, "fan"),
        (LoadKind.Aerator, "aerator"),
    ];

    /// <summary>The modes.</summary>
    public static IEnumerable<FaultMode> All =>
    [
        .. kinds.SelectMany(one => Of(one.Kind, one.Words)),
        FaultMode.Of(
            FaultKind.ContactorWelded, "contactor welded", FaultFamily.Relays,
            site => FaultTarget.OfCircuits(site).Where(target => site[target.Circuit!.Value].HasUpstreamContactor), untilRepaired,
            ModeSources.Welds),
    ];

    private static IEnumerable<FaultMode> Of(LoadKind kind, string words)
    {
        FaultMode Mode(FaultKind fault, string how, string source) => FaultMode.Of(
            fault, $"{words} relay {how}", FaultFamily.Relays, FaultTarget.OfLoads(kind), untilRepaired, source);
        yield return Mode(FaultKind.RelayWelded, "welded", ModeSources.Welds);
        yield return Mode(FaultKind.RelayOpen, "open", ModeSources.FailsToClose);
        yield return Mode(FaultKind.RelaySluggish, "sluggish", ModeSources.Sluggish) with { Sizes = new FaultSizes(0.2, 120, 5, "s") };
        yield return FaultMode.Of(
            FaultKind.RelayChattering, $"{words} relay chatters", FaultFamily.Relays, FaultTarget.OfLoads(kind), restless,
            ModeSources.Chatters) with
        {
            Sizes = new FaultSizes(0.5, 10, 2, "s"),
        };
    }
}
