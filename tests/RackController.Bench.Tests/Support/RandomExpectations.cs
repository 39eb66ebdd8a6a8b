using CsCheck;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Testing;

namespace RackController.Bench.Tests.Support;

/// <summary>Random expectations about levels, currents, runs and states, in random windows.</summary>
internal static class RandomExpectations
{
    /// <summary>Any expectation of a site over a length of time.</summary>
    /// <param name="site">The site.</param>
    /// <param name="length">The length of the run.</param>
    public static Gen<Expectation> Of(Site site, Duration length) =>
        from kind in Gen.Int[0, 2]
        from what in Statement(site)
        from other in Statement(site)
        from isBound in Gen.Bool
        from limitS in RandomParts.Anywhere(0, 300)
        from window in Gen.OneOf(Gen.Const(new Window(Duration.Zero, length)), Part(length))
        let condition = isBound ? other : null
        select (Expectation)(kind switch
        {
            0 => new Always("always", 1, window, what, condition),
            1 => new Never("never", 1, window, what, condition),
            _ => new Within("within", 1, window, Duration.FromSeconds(limitS), other, what),
        });

    private static Gen<Window> Part(Duration length) =>
        Gen.Select(RandomParts.Anywhere(0, length.TotalSeconds), RandomParts.Anywhere(0.5, length.TotalSeconds + 1)).Select((fromS, forS) =>
            new Window(Duration.FromSeconds(fromS), Duration.FromSeconds(fromS + forS)));

    private static Gen<Statement> Statement(Site site) =>
        from kind in Gen.Int[0, 10]
        from rack in Gen.Int[0, site.Racks.Length - 1].Select(index => site.Racks[index])
        from tier in Gen.OneOf(rack.Tiers.ToArray())
        from load in Gen.OneOf(site.Loads.ToArray())
        from circuit in Gen.OneOf(site.Circuits.ToArray())
        from share in RandomParts.Share
        from turn in Gen.Int[0, 2]
        let flag = turn == 0
        select (Statement)(kind switch
        {
            0 => new LoadIsTold(load.Id, flag ? SwitchState.On : SwitchState.Off),
            1 => new LoadIsPowered(load.Id, flag),
            2 => new FloodIs(rack.Id, (FloodPhase)(int)(4.99 * share)),
            3 => new ControllerRuns(flag),
            4 => new AlarmIs($"{rack.Name}/low-float", null),
            5 => new Measures(new TrayDepth(rack.Id, tier.Number), Compare(turn, share * tier.Tray.RimDepthMm)),
            6 => new Measures(new Spilled(rack.Id), Compare(turn, share * share * 20)),
            7 => new Measures(new ReservoirVolume(rack.Id), Compare(turn, share * rack.Reservoir.CapacityL)),
            8 => new Measures(new AirTemperature(rack.Id, tier.Number), Compare(turn, Math.Round(15 + 25 * share))),
            9 => new Measures(new UnbrokenRun(load.Id), Compare(turn, 5 * share * share)),
            _ => new Measures(new CircuitCurrent(circuit.Id), Compare(turn, share * circuit.BreakerA)),
        });

    private static Comparison Compare(int turn, double limit) => turn switch
    {
        0 => new Above(limit),
        1 => new Below(limit),
        _ => new Between(limit / 2, limit),
    };
}
