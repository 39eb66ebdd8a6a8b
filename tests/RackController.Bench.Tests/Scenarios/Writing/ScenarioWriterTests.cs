using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.RackFile;
using RackController.Testing;

namespace RackController.Bench.Tests.Scenarios.Writing;

public sealed class ScenarioWriterTests
{
    private static readonly Site site = RackFileReader.Read(ShippedFiles.PathTo("config/demo-four-tier.yaml")).Site!;
    private static readonly RackId rack = new(0);

    public static TheoryData<string> Shipped =>
    [
        .. Directory.GetFiles(ShippedFiles.PathTo("config/scenarios"), "*.yaml").Select(file => Path.GetFileName(file))
            .Order(StringComparer.Ordinal),
    ];

    [Theory]
    [MemberData(nameof(Shipped))]
    public void WhatIsWrittenReadsBackAsTheSameScenario(string name)
    {
        var scenario = ScenarioReader.Read(ShippedFiles.PathTo($"config/scenarios/{name}")).Scenario!;
        var again = ReadBack(scenario);

        Assert.Equal(scenario.Start, again.Start);
        Assert.Equal(scenario.Length, again.Length);
        Assert.Equal(scenario.Found, again.Found);
        Assert.Equal(scenario.Room?.Points.AsEnumerable(), again.Room?.Points.AsEnumerable());
        Assert.Equal(scenario.Events.AsEnumerable(), again.Events.AsEnumerable());
        Assert.Equal(scenario.Accepts.AsEnumerable(), again.Accepts.AsEnumerable());
        Assert.Equal(
            scenario.Expectations.Select(expectation => expectation with { Line = 0 }),
            again.Expectations.Select(expectation => expectation with { Line = 0 }));
    }

    [Theory]
    [InlineData("breaker-trip-at-noon.yaml")]
    [InlineData("boot-without-clock.yaml")]
    public void TheRunOfWhatWasReadBackHasTheSameLog(string name)
    {
        var scenario = ScenarioReader.Read(ShippedFiles.PathTo($"config/scenarios/{name}")).Scenario!;
        Assert.Equal(LogText.Fingerprint(ScenarioRun.Run(scenario)), LogText.Fingerprint(ScenarioRun.Run(ReadBack(scenario))));
    }

    [Fact]
    public void EveryRequestAndEveryStatementCanBeWritten()
    {
        OperatorRequest[] requests =
        [
            new FloodNow("ann", rack), new Stop("ann", null), new Stop("ann", rack), new Resume("ann", rack),
            new SkipNextFlood("ann", rack), new HoldForService("ann", rack, Duration.FromMinutes(7)),
            new EndServiceHold("ann", rack), new Acknowledge("ann", "north/low-float"),
            new Shelve("ann", "north/low-float", Duration.FromHours(1)), new Unshelve("ann", "north/low-float"),
            new SetAlarmOutOfService("ann", "north/low-float", true),
            new SetAlarmOutOfService("ann", "north/low-float", false), new ResetLatch("ann", "north/low-float"),
            new ConfirmReset("ann", "north/low-float"), new SetTierInUse("ann", rack, 2, true), new SetTierInUse("ann", rack, 2, false),
        ];
        Statement[] statements =
        [
            new LoadIsTold(new LoadId(0), SwitchState.Off), new LoadIsPowered(new LoadId(0), true), new FloodIs(rack, FloodPhase.Soaking),
            new AlarmIs(AlarmIs.Any, null), new AlarmIs("north/low-float", AlarmState.Latched), new Reports("north", "filling"),
            new Happens(Happens.Start), new ControllerRuns(false),
            new Measures(new UnbrokenRun(new LoadId(0)), new Above(7.5)),
            new Measures(new CircuitCurrent(new CircuitId(0)), new Below(3.25)),
            new Measures(new Spilled(rack), new Above(0.01)), new Measures(new ReservoirVolume(rack), new Between(10, 20)),
            new Measures(new FloodsOfDay(rack), new Between(3, 3)),
            new Measures(new DissolvedOxygen(rack), new Between(6.1, double.PositiveInfinity)),
            new Measures(new Conductivity(rack), new Between(double.NegativeInfinity, 1.7)),
            new Measures(new WaterTemperature(rack), new Below(24.5)), new Measures(new TrayDepth(rack, 3), new Above(40)),
            new Measures(new AirTemperature(rack, 3), new Above(30)), new Measures(new AirHumidity(rack, 3), new Above(80)),
            new Measures(new VapourDeficit(rack, 3), new Between(0.4, 1.2)), new Measures(new LitHoursOfDay(rack, 3), new Between(15, 16)),
            new Measures(new DailyLightIntegral(rack, 3), new Above(9)),
        ];
        var window = new Window(Duration.Zero, Duration.MaxValue);
        var scenario = new Scenario
        {
            Name = "all",
            About = "Everything that can be said.",
            File = "all.yaml",
            RackFile = ShippedFiles.PathTo("config/demo-four-tier.yaml"),
            Site = site,
            Start = Instant.FromUtc(2026, 2, 2, 6, 0),
            Length = Duration.FromMilliseconds(93_784_567),
            Events =
            [
                .. requests.Select((request, index) => new PersonAsks(Duration.FromMinutes(index), $"ask {index}", request)),
                new RoomChanges(Duration.FromHours(1), "warm", 25.5, 61),
            ],
            Expectations =
            [
                .. statements.Select((what, index) => new Always($"{index}", 0, window, what, null)),
                new Recovers("all is well", 0, window, Duration.FromMilliseconds(50_123), new Happens(Happens.Start)),
            ],
            Accepts = [],
        };
        var again = ReadBack(scenario);
        Assert.Equal(scenario.Events.AsEnumerable(), again.Events.AsEnumerable());
        Assert.Equal(statements, again.Expectations.OfType<Always>().Select(expectation => expectation.What));
        Assert.Equal(scenario.Expectations[^1], again.Expectations[^1] with { Line = 0 });
        Assert.Equal(scenario.Length, again.Length);
    }

    internal static Scenario ReadBack(Scenario scenario)
    {
        var folder = Directory.CreateTempSubdirectory("written-scenario-");
        try
        {
            var rackFile = Path.IsPathRooted(scenario.RackFile)
                ? scenario.RackFile
                : Path.Combine(Path.GetDirectoryName(scenario.File) ?? "", scenario.RackFile);
            var file = Path.Combine(folder.FullName, "again.yaml");
            File.WriteAllText(file, ScenarioWriter.Write(scenario with { RackFile = rackFile }));
            var reading = ScenarioReader.Read(file);
            Assert.True(reading.Scenario is not null, $"{string.Join('\n', reading.Complaints)}\n{File.ReadAllText(file)}");
            return reading.Scenario;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
