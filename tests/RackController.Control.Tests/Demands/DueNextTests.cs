using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

/// <summary>What the schedule says it will do next, around the flood of 07:00 in New York; lights are on from 06:00 to 22:00.</summary>
public class DueNextTests
{
    private static readonly Instant seven = Instant.FromUtc(2026, 6, 1, 11, 0);
    private static readonly RackId north = new(0);

    [Theory]
    [InlineData(1)]
    [InlineData(6)]
    public void FromItsStartToTheEndOfTheSoakThePumpGoesOffNext(int minutes)
    {
        var rig = At(minutes, Sites.OneRack());
        var off = Assert.Single(rig.Control.DueNext(), due => due.Subject == "north/pump");
        Assert.Equal("off", off.What);
        Assert.InRange((off.At - seven).TotalSeconds, 600, 605);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(12)]
    [InlineData(40)]
    public void WhileItStandsThePumpIsNotNamed(int minutes) =>
        Assert.DoesNotContain(At(minutes, Sites.OneRack()).Control.DueNext(), due => due.Subject == "north/pump");

    [Fact]
    public void NobodyKnowsWhenAFillThatEndsByItselfIsOver()
    {
        var untilFull = Sites.OneRack().WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with { Fill = new FillUntilFull(Duration.FromMinutes(5), FullDepthMm: 40) },
        });
        Assert.DoesNotContain(At(1, untilFull).Control.DueNext(), due => due.Subject == "north/pump");
        Assert.Contains(At(6, untilFull).Control.DueNext(), due => due.Subject == "north/pump");
    }

    [Fact]
    public void SoonestComesFirstAndWhatIsAtTheSameTimeByName()
    {
        var fan = Sites.OneRack().LoadNamed("north/fan");
        var inCycles = new RunInCycles(fan, Duration.FromMinutes(15), Duration.FromMinutes(45));
        var rig = At(30, Sites.OneRack().WithSchedule(schedule => schedule with
        {
            Runs = [.. schedule.Runs.Where(run => run.Load != fan), inCycles],
        }));
        Assert.Equal(
            [("north/fan", "off"), ("north", "flood"), ("north/tier 1 light", "off"), ("north/tier 2 light", "off")],
            rig.Control.DueNext().Select(due => (due.Subject, due.What)));
        Assert.Equal(seven + Duration.FromHours(6), rig.Control.DueNext()[1].At);
        Assert.Equal(seven + Duration.FromHours(15), rig.Control.DueNext()[2].At);
    }

    [Fact]
    public void WithoutATierInUseThereIsNoNextFlood()
    {
        var rig = At(30, Sites.OneRack());
        rig.Scan(new SetTierInUse("Ada", north, 1, InUse: false));
        Assert.Contains(rig.Control.DueNext(), due => due.What == "flood");
        rig.Scan(new SetTierInUse("Ada", north, 2, InUse: false));
        Assert.DoesNotContain(rig.Control.DueNext(), due => due.What == "flood");
        Assert.DoesNotContain(rig.Control.DueNext(), due => due.Subject == "north/tier 1 light");
    }

    /// <summary>Floods are eight hours apart in the mean.</summary>
    [Fact]
    public void WithoutATrustedClockTheNextFloodIsDueAtTheMeanSpacingAndOneLaterWhereItIsLeftOut()
    {
        var rig = At(30, Sites.OneRack());
        rig.TrustWall(false);
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.InRange((Flood().At - seven).TotalHours, 8, 8.01);
        rig.Scan(new SkipNextFlood("Ada", north));
        Assert.InRange((Flood().At - seven).TotalHours, 16, 16.01);

        DueNext Flood() => rig.Control.DueNext().Single(due => due.What == "flood");
    }

    [Fact]
    public void OfTwoRacksEachNamesItsOwn()
    {
        var rig = new Rig(Sites.ManyRacks(2, racksToACircuit: 2), seven - Duration.FromMinutes(30));
        rig.ScanFor(Duration.FromSeconds(5));
        Assert.Equal(
            ["rack 1", "rack 2", "rack 1/tier 1 light", "rack 1/tier 2 light", "rack 2/tier 1 light", "rack 2/tier 2 light"],
            rig.Control.DueNext().Select(due => due.Subject));
    }

    private static Rig At(int minutes, Site site)
    {
        var rig = new Rig(site, seven - Duration.FromMinutes(30));
        rig.LeapFor(Duration.FromMinutes(30 + minutes));
        return rig;
    }
}
