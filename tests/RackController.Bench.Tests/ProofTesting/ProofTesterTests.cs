using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;
using RackController.RackFile;
using RackController.Testing;

namespace RackController.Bench.Tests.ProofTesting;

/// <summary>What a proof test would find is what a campaign injects: with the fault the test fails, and without it the test
/// passes, on a simulated rack with a person by script.</summary>
public sealed class ProofTesterTests
{
    // A morning between two floods, with every light on.
    private static readonly Instant start = Instant.FromUtc(2026, 3, 2, 15, 0);
    private static readonly Site site = RackFileReader.Read(ShippedFiles.PathTo("config/demo-three-racks.yaml")).Site!;

    private static readonly Dictionary<ProofTestKind, string> items = new()
    {
        [ProofTestKind.FloatSwitch] = "greens/reservoir low float",
        [ProofTestKind.WiredFloat] = "greens/wired float",
        [ProofTestKind.WiredTimeRelay] = "greens/wired time relay",
        [ProofTestKind.LeakRope] = "greens/leak rope",
        [ProofTestKind.SupplySense] = "east wall/supply sense",
        [ProofTestKind.CurrentSensor] = "west wall/current",
        [ProofTestKind.Relay] = "greens/tier 1 light",
    };

    public static TheoryData<ProofTestKind, FaultKind> Found
    {
        get
        {
            var found = new TheoryData<ProofTestKind, FaultKind>();
            foreach (var kind in items.Keys)
            {
                foreach (var fault in ProofTestFaults.FoundBy(kind))
                {
                    found.Add(kind, fault);
                }
            }

            return found;
        }
    }

    public static TheoryData<string> Whole =>
        [.. items.Values, "greens/tier 1 high float", "greens/pump", "shoots/tier 2 valve", "greens/aerator"];

    [Theory]
    [MemberData(nameof(Found))]
    public void WithTheFaultTheTestFails(ProofTestKind kind, FaultKind fault)
    {
        var status = Test(items[kind], [Strikes(fault, items[kind])]);
        Assert.True(status.HasFailed);
        Assert.Null(status.PassedAt);
    }

    [Theory]
    [MemberData(nameof(Whole))]
    public void WithoutAFaultItPasses(string item)
    {
        var status = Test(item, []);
        Assert.False(status.HasFailed);
        Assert.NotNull(status.PassedAt);
    }

    [Theory]
    [InlineData(FaultKind.RelayOpen)]
    [InlineData(FaultKind.LoadDead)]
    public void APumpIsTestedWithinAFlood(FaultKind fault) =>
        Assert.True(Test("greens/pump", [Strikes(fault, "greens/pump")]).HasFailed);

    private static RackFails Strikes(FaultKind kind, string item)
    {
        var fault = new Fault(kind, MonotonicTime.Zero + Duration.FromMinutes(1), MonotonicTime.Never)
        {
            Sensor = site.Sensors.FirstOrDefault(sensor => sensor.Name == item)?.Id,
            Load = site.Loads.FirstOrDefault(load => load.Name == item)?.Id,
            Rack = kind is FaultKind.FloatCutoutStuck or FaultKind.FloatCutoutUnlatched or FaultKind.TimeCutoutStuck
                ? site.Racks.Single(rack => rack.Name == "greens").Id : null,
            Size = kind switch
            {
                FaultKind.FloatSlow => 120,
                FaultKind.FloatChattering or FaultKind.SensorOffset => 2,
                _ => 0,
            },
        };
        return new RackFails(fault.From - MonotonicTime.Zero, "fails", fault);
    }

    private static ProofTestStatus Test(string item, ScenarioEvent[] events)
    {
        var person = new Person(item);
        var run = new VirtualRun(site, start, [.. events], PlantStart.Default, profile: null) { Visitor = person };
        run.Begin();
        while (!person.IsDone && run.Step(MonotonicTime.Zero + Duration.FromHours(2)))
        {
        }

        return run.Control!.ProofTests().Single(test => test.Item == item);
    }

    /// <summary>Comes when the rack has been on for a while, and stays until the test is over.</summary>
    private sealed class Person : IVisitor
    {
        private readonly ProofTester tester = new(site, "Ada");

        public Person(string item) => tester.Take([item]);

        public MonotonicTime ComesAt { get; private set; } = MonotonicTime.Zero + Duration.FromMinutes(20);

        public bool IsDone => !tester.IsBusy;

        public IReadOnlyList<ScenarioEvent> Visit(VirtualRun run)
        {
            ComesAt = MonotonicTime.Zero + run.Now.Elapsed + Duration.FromSeconds(1);
            return [.. tester.Act(run)];
        }
    }
}
