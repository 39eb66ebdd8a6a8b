namespace RackController.Plant.Tests;

public class TrayCycleTests
{
    private const double DepthToleranceM = 0.0005;

    public static TheoryData<string> Cases() => [.. TrayCase.All.Keys];

    [Theory]
    [MemberData(nameof(Cases))]
    public void DepthsAndVolumesFollowTheReference(string key)
    {
        var tray = TrayCase.All[key];
        var expected = tray.Expected;
        var run = new CaseRun(tray);
        for (var sample = 0; sample < expected.SampleS.Length; sample++)
        {
            run.To(expected.SampleS[sample]);
            for (var index = 0; index < tray.Trays.Length; index++)
            {
                Assert.Equal(expected.DepthM[sample][index], run.Water.TrayDepthM(index), DepthToleranceM);
            }

            Within(expected.PumpedL[sample], run.PumpedL, 0.005, 0.05);
            if (expected.SpilledL is { } spilledL)
            {
                Within(spilledL[sample], run.SpilledL, 0.005, 0.05);
            }

            if (expected.ReservoirFallM is { } fallM)
            {
                Assert.Equal(fallM[sample], run.ReservoirFallM, 1e-3);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void MarksArePassedWhenTheReferencePassesThem(string key)
    {
        var tray = TrayCase.All[key];
        var times = new CaseRun(tray).TimesOf(tray.Expected.Marks);
        for (var mark = 0; mark < times.Length; mark++)
        {
            Assert.Equal(tray.Expected.Marks[mark].AtS.Length, times[mark].Count);
            Assert.All(tray.Expected.Marks[mark].AtS.Zip(times[mark]), pair => Within(pair.First, pair.Second, 0.005, 1));
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void TheReferenceUsesTheCoefficientsOfTheModel(string key)
    {
        // A head at which a standpipe is a weir and one at which it is an orifice, for bores of some millimetres and more.
        double[] headsM = [0.001, 0.1];
        var rootOf2G = Math.Sqrt(2 * Physics.GravityMPerS2);
        var tray = TrayCase.All[key];
        var tiers = CaseRacks.Of(tray).Tiers;
        for (var index = 0; index < tray.Trays.Length; index++)
        {
            var data = tray.Trays[index];
            var edge = new TrayBasin(tiers[index].Tray);
            foreach (var headM in headsM)
            {
                var power = headM * Math.Sqrt(headM);
                Assert.Equal(data.EdgeWeirC * 2 * (data.LengthM + data.WidthM) * power, edge.OverEdge(data.EdgeM + headM), 1e-9);
                if (data.Weep is { } weep)
                {
                    var orifice = weep.Cd * Section(weep.DiameterM) * rootOf2G * Math.Sqrt(headM);
                    Assert.Equal(orifice, new Weep(weep.DiameterM).Flow(headM), 1e-12);
                }

                if (data.Standpipe is { } pipe)
                {
                    var least = Math.Min(
                        pipe.WeirC * Math.PI * pipe.DiameterM * power,
                        pipe.OrificeCd * Section(pipe.DiameterM) * rootOf2G * Math.Sqrt(headM));
                    Assert.Equal(least, new Standpipe(pipe.RimM, pipe.DiameterM).Flow(pipe.RimM + headM), 1e-9);
                }
            }
        }
    }

    [Fact]
    public void ASteadyInflowSettlesWhereWeepAndStandpipeCarryIt()
    {
        Assert.All(TrayCase.All.Values.Where(tray => tray.Expected.ClosedFormFinalDepthM is not null), tray =>
        {
            var run = new CaseRun(tray);
            run.To(tray.LengthS);
            Assert.Equal(tray.Expected.ClosedFormFinalDepthM!.Value, run.Water.TrayDepthM(0), 2e-5);
        });
    }

    [Fact]
    public void HalfAnHourFillsSoaksAndDrainsAllFiveTrays()
    {
        // 30 minutes is time enough for every tray of a five-tier rack to fill, soak and drain: common practice, no source. The
        // geometry is that of the reference case; the pump stops once the last tray is full and has stood for five minutes.
        var tray = TrayCase.Named("five-trays-fill-soak-drain");
        var run = new CaseRun(tray with { PumpOnS = [[0, 650]] });
        run.To(650);
        Assert.All(Enumerable.Range(0, 5), index => Assert.True(run.Water.TrayDepthM(index) >= 0.0445));
        run.To(1800);
        Assert.All(Enumerable.Range(0, 5), index => Assert.InRange(run.Water.TrayDepthM(index), 0, 0.0045));
    }

    [Fact]
    public void AStackAtItsLimitDrainsTheBottomTrayLastAndEachTheLaterTheLowerItIs()
    {
        // Upper trays first, so the lower ones wait: the trade knows it, no source; nothing in the model says it outright.
        var tray = TrayCase.Named("five-trays-fill-soak-drain");
        var full = tray with
        {
            PumpOnS = [],
            DrainStackLpm = 3,
            LengthS = 4 * tray.LengthS,
            Trays = [.. tray.Trays.Select(data => data with { StartDepthM = 0.044 })],
        };
        var marks = Enumerable.Range(0, 5).Select(index => new TrayCase.MarkData(index, 0.002, Rising: false, [])).ToArray();
        var times = new CaseRun(full).TimesOf(marks).Select(crossings => Assert.Single(crossings)).ToArray();

        Assert.Equal(times.OrderDescending(), times);
        Assert.All(Enumerable.Range(0, 4), index => Assert.True(times[index] > times[index + 1] + 60));
    }

    private static double Section(double boreM) => Math.PI * boreM * boreM / 4;

    private static void Within(double expected, double actual, double share, double absolute)
    {
        var tolerance = Math.Max(share * Math.Abs(expected), absolute);
        Assert.InRange(actual, expected - tolerance, expected + tolerance);
    }
}
