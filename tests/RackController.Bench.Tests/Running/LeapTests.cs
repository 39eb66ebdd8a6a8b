using CsCheck;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;
using RackController.Testing;

namespace RackController.Bench.Tests.Running;

public sealed class LeapTests
{
    private static readonly Site Demo = ScenarioReader.Read(ShippedFiles.PathTo("config/scenarios/first-week.yaml")).Scenario!.Site;

    // Metamorphic: whatever goes wrong, and whenever, leaping over quiet times and making every scan of the grid come to the
    // same events at the same tenth of a second.
    [Fact]
    public void WhateverGoesWrongLeapingAndScanningComeToTheSameEvents() => Scenes.Sample(
        scene => LogText.Of(ScenarioRun.Run(scene)) == LogText.Of(ScenarioRun.Run(scene, everyScan: true)),
        iter: 60, threads: 1, print: scene => $"{scene.Start} {string.Join(", ", scene.Events)}");

    private static Gen<Scenario> Scenes =>
        from startMinute in Gen.Int[6 * 60 + 40, 7 * 60 + 25]
        from fault in Gen.Int[0, FaultCatalogue.Entries.Length - 1].Select(index => FaultCatalogue.Entries[index])
        from fromS in Gen.Int[0, 600]
        from forS in Gen.Int[1, 600]
        from place in Gen.Int[0, 1000]
        from size in Gen.Double[0, 1]
        from other in Gen.Int[0, 5]
        from otherS in Gen.Int[0, 700]
        let made = Fault(fault, fromS, forS, place, size)
        select new Scenario
        {
            Name = "leap",
            About = "",
            File = "",
            RackFile = "",
            Site = Demo,
            Start = new LocalDateTime(2026, 3, 2, startMinute / 60, startMinute % 60).InZoneStrictly(Demo.Zone).ToInstant(),
            Length = Duration.FromMinutes(12),
            Events = [.. Faulty(made).Concat(Other(other, Duration.FromSeconds(otherS))).OrderBy(happening => happening.At)],
            Expectations = [],
            Accepts = [],
        };

    private static IEnumerable<ScenarioEvent> Faulty(Fault made) =>
    [
        new RackFails(made.From - MonotonicTime.Zero, "fails", made), new RackMends(made.Until - MonotonicTime.Zero, "mends"),
    ];

    private static IEnumerable<ScenarioEvent> Other(int kind, Duration at) => kind switch
    {
        0 => [new PersonAsks(at, "flood", new FloodNow("the grower", new RackId(0)))],
        1 => [new PersonAsks(at, "hold", new HoldForService("the grower", new RackId(0), Duration.FromMinutes(3)))],
        2 => [new ClockSteps(at, "back", -Duration.FromMinutes(20))],
        3 => [new ClockSteps(at, "ahead", Duration.FromMinutes(20)), new ClockLosesTrust(at, "untrusted")],
        4 => [new ControllerGoes(at, "off"), new ControllerComes(at + Duration.FromSeconds(40), "on", null)],
        _ => [new ControllerGoes(at, "off"), new ControllerComes(at + Duration.FromSeconds(40), "on", Instant.FromUtc(2026, 1, 1, 0, 0))],
    };

    private static Fault Fault(FaultEntry entry, int fromS, int forS, int place, double size)
    {
        var from = MonotonicTime.FromMilliseconds(fromS * 1000);
        return new Fault(entry.Kind, from, from + Duration.FromSeconds(forS))
        {
            Size = entry.SizeMin + size * (Math.Min(entry.SizeMax, 100) - entry.SizeMin),
            Rack = new RackId(0),
            TierNumber = 1 + place % Demo.Racks[0].Tiers.Length,
            Circuit = new CircuitId(0),
            Load = new LoadId(place % Demo.Loads.Length),
            Sensor = Sensors(entry.Place)[place % Sensors(entry.Place).Length].Id,
        };
    }

    private static Sensor[] Sensors(FaultPlace place) => place switch
    {
        FaultPlace.Contact => [.. Demo.Sensors.Where(sensor => sensor.IsContact)],
        FaultPlace.MeasuringSensor => [.. Demo.Sensors.Where(sensor => !sensor.IsContact)],
        _ => [.. Demo.Sensors],
    };
}
