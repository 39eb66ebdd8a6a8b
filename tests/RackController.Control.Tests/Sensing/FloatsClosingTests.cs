using NodaTime;
using RackController.Control.Tests.ProofTests;
using RackController.Model;

namespace RackController.Control.Tests.Sensing;

/// <summary>A fill is seen where a full float closes that was dry when it began; any other proves nothing.</summary>
public class FloatsClosingTests
{
    private static readonly Site site = ProofSite.Whole;
    private static readonly Sensor first = site.Sensors.Single(sensor => sensor.Name == "north/tier 1 full float");
    private static readonly Sensor second = site.Sensors.Single(sensor => sensor.Name == "north/tier 2 full float");
    private readonly FloatsClosing floats = new([first, second]);
    private readonly Facts facts;

    public FloatsClosingTests()
    {
        var start = new Moment(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);
        var (areas, memory) = (new Areas(site), new MemoryReader(null, start));
        var calendar = new RackDemand(site, new RackId(0), memory, start, []).Clock;
        facts = new Facts(site, areas, [], new ProofTestLog(site, areas, calendar, memory, start, []), start);
        facts.AskedBy(areas.Racks[0]);
        Say(first, 0);
        Say(second, 0);
    }

    [Fact]
    public void AnyThatClosesIsEnough()
    {
        floats.Begin(facts);
        Assert.False(floats.AnyHasClosed(facts));
        Say(second, 1);
        Assert.True(floats.AnyHasClosed(facts));
    }

    [Fact]
    public void OneThatWasWetFromTheStartProvesNothing()
    {
        Say(first, 1);
        floats.Begin(facts);
        Assert.False(floats.AnyHasClosed(facts));
        Assert.True(floats.CouldTell(facts));
        facts.Forget(second.Id);
        Assert.False(floats.CouldTell(facts));
    }

    [Fact]
    public void OneThatWasUnknownAtTheStartCouldNotTell()
    {
        facts.Forget(first.Id);
        facts.Forget(second.Id);
        floats.Begin(facts);
        Say(first, 1);
        Assert.False(floats.CouldTell(facts));
        Assert.False(floats.AnyHasClosed(facts));
    }

    [Fact]
    public void OneOfATierOutOfUseCouldNotTell()
    {
        facts.About(new RackId(0)) = new RackFacts(0, 0, false, false, TiersOutOfUse: 1UL << 1);
        facts.Forget(second.Id);
        floats.Begin(facts);
        Say(first, 1);
        Assert.False(floats.CouldTell(facts));
        Assert.False(floats.AnyHasClosed(facts));
    }

    private void Say(Sensor sensor, double value) => facts.Know(sensor.Id, value);
}
