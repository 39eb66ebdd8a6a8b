using RackController.Control;
using RackController.Live;
using RackController.Model;
using RackController.Service;

namespace RackController.Cli.Tests.Live;

public sealed class OperatorTests
{
    private const string Latch = "north/high-water";

    private readonly AskedRack rack = new();
    private readonly Operator person;

    public OperatorTests() => person = new Operator(rack);

    [Theory]
    [InlineData('s', typeof(Stop))]
    [InlineData('r', typeof(Resume))]
    [InlineData('f', typeof(FloodNow))]
    [InlineData('n', typeof(SkipNextFlood))]
    [InlineData('h', typeof(HoldForService))]
    [InlineData('e', typeof(EndServiceHold))]
    public void OneKeyAsksOneThing(char key, Type request)
    {
        Press(key);

        Assert.IsType(request, Assert.Single(rack.Asked));
    }

    [Fact]
    public void ATierGoesOutOfUseByTwoKeysAndComesBackTheSameWay()
    {
        Press('t');
        Press('2');
        Assert.Equal((2, false), Tier(Assert.Single(rack.Asked)));

        var status = Pictures.Calm(rack.Site);
        status = status with { TiersInUse = [status.TiersInUse[0].SetItem(1, false)] };
        Press('t', status);
        Press('2', status);
        Assert.Equal((2, true), Tier(rack.Asked[1]));
    }

    [Fact]
    public void ADigitByItselfOrOfNoTierAsksNothing()
    {
        Press('2');
        Press('t');
        Press('9');

        Assert.Empty(rack.Asked);
    }

    [Fact]
    public void StopStopsEveryRack()
    {
        Press('S');

        Assert.Null(Assert.IsType<Stop>(Assert.Single(rack.Asked)).Rack);
    }

    [Fact]
    public void ALatchIsReleasedByTwoKeysAndNotByOne()
    {
        Press('x', Latched());
        Assert.Equal(Latch, Assert.IsType<ResetLatch>(Assert.Single(rack.Asked)).Latch);

        Press('y', Latched());
        Assert.Equal(Latch, Assert.IsType<ConfirmReset>(rack.Asked[1]).Latch);
    }

    [Fact]
    public void ARequestThatFindsNoRoomIsSaidSo()
    {
        rack.HasRoom = false;
        Press('x', Latched());
        Assert.Contains($"Not asked, too much waits already: reset {Latch}.", Legend(), StringComparison.Ordinal);

        Press('y', Latched());
        Assert.IsType<ResetLatch>(Assert.Single(rack.Asked));
    }

    [Fact]
    public void AnyOtherKeyLeavesTheLatch()
    {
        Press('x', Latched());
        Press('q', Latched());
        Press('y', Latched());

        Assert.IsType<ResetLatch>(Assert.Single(rack.Asked));
    }

    [Fact]
    public void TheMostUrgentAlarmThatNobodyHasSeenIsAcknowledged()
    {
        var status = Pictures.Calm(rack.Site) with
        {
            Alarms =
            [
                Pictures.Alarm(Latch, AlarmPriority.Critical, AlarmState.Acknowledged),
                Pictures.Alarm("north/low-float", AlarmPriority.High, AlarmState.Unacknowledged),
            ],
        };

        Press('a', status);

        Assert.Equal("north/low-float", Assert.IsType<Acknowledge>(Assert.Single(rack.Asked)).Alarm);
    }

    [Fact]
    public void TabChoosesTheNextRackAndComesRound()
    {
        for (var press = 1; press <= rack.Site.Racks.Length; press++)
        {
            Press('\t');
            Assert.Equal(press % rack.Site.Racks.Length, person.Chosen.Index);
        }
    }

    [Theory]
    [InlineData(80)]
    [InlineData(90)]
    [InlineData(100)]
    [InlineData(114)]
    [InlineData(115)]
    [InlineData(120)]
    public void EveryKeyIsShownOnOneLine(int width)
    {
        var legend = person.Legend(Pictures.Calm(rack.Site), width);

        Assert.True(legend.Width <= width + 1, $"{legend.Width} columns");
        var text = Legend(width);
        string[] keys =
        [
            "S stop", width < 115 ? "R run" : "R resume", "F flood", "N skip", "H hold", "E end", "T tier",
            width < 115 ? "A seen" : "A acknowledge", "X reset", "P tests", "Tab next",
        ];
        Assert.All(
            keys,
            key => Assert.Contains(key, text, StringComparison.Ordinal));
    }

    private static (int Number, bool InUse) Tier(OperatorRequest request) =>
        request is SetTierInUse { TierNumber: var number, InUse: var use } ? (number, use) : default;

    private string Legend(int width = 120) =>
        string.Concat(person.Legend(Pictures.Calm(rack.Site), width).Render(width).Select(segment => segment.Text));

    private void Press(char key, SiteStatus? status = null) => person.Take(key, status ?? Pictures.Calm(rack.Site));

    private SiteStatus Latched() => Pictures.Calm(rack.Site) with
    {
        Alarms = [Pictures.Alarm(Latch, AlarmPriority.Critical, AlarmState.Latched)],
    };

    private sealed class AskedRack : IRunningRack
    {
        public List<OperatorRequest> Asked { get; } = [];

        public bool HasRoom { get; set; } = true;

        public Site Site { get; } = Pictures.DemoSite("demo-three-racks.yaml");

        public Task<SiteStatus> LookAsync(CancellationToken cancellation) => Task.FromResult(Pictures.Calm(Site));

        public bool TryAsk(OperatorRequest request)
        {
            Asked.Add(request);
            return HasRoom;
        }
    }
}
