using NodaTime;
using RackController.Bench.Tests.Support;
using RackController.Model;

namespace RackController.Bench.Tests.Campaigns.Findings;

public sealed class QuietYearsTests
{
    [Fact]
    public void EverySensorThatMeasuresHasItsScatterAndSaysWhereThatIsFrom() => Assert.All(Enum.GetValues<SensorKind>(), kind =>
    {
        Assert.Equal(kind.IsContact(), SensorScatter.Of(kind) is null);
        Assert.True(SensorScatter.Of(kind) is not { } scatter || scatter is { StandardDeviation: > 0, Source.Length: > 0 });
    });

    [Fact]
    public void TheRefillerKeepsTheReservoirUp()
    {
        var site = DemoCampaigns.FourTier;
        var run = new VirtualRun(site, Instant.FromUtc(2026, 2, 2, 0, 0), [], Plant.PlantStart.Default, profile: null)
        {
            Visitor = new Refiller(site),
        };
        run.Begin();
        while (run.Step(MonotonicTime.Zero + Duration.FromHours(100.05)))
        {
            Assert.True(run.Now.Elapsed <= Duration.FromHours(101));
        }

        var normalL = site.Racks[0].Reservoir.NormalVolumeL;
        Assert.InRange(run.Plant.Racks[0].ReservoirVolumeL, normalL - 0.5, normalL);
    }
}
