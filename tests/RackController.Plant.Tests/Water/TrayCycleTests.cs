namespace RackController.Plant.Tests;

public class TrayCycleTests
{
    private const double DepthToleranceM = 0.0005;

    [Theory]
    [InlineData("one-tray-drains-through-its-weep")]
    [InlineData("steady-inflow-settles-above-the-standpipe")]
    [InlineData("five-trays-fill-soak-drain")]
    public void DepthsFollowTheReference(string name)
    {
        var tray = TrayCase.Named(name);
        var run = new Run(tray);
        for (var sample = 0; sample < tray.Expected.SampleS.Length; sample++)
        {
            run.To(tray.Expected.SampleS[sample]);
            for (var index = 0; index < tray.Trays.Length; index++)
            {
                var expected = tray.Expected.DepthM[sample][index];
                Assert.InRange(run.Water.TrayDepthM(index), expected - DepthToleranceM, expected + DepthToleranceM);
            }

            Within(tray.Expected.PumpedL[sample], run.PumpedL, 0.005, 0.05);
        }
    }

    [Theory]
    [InlineData("one-tray-drains-through-its-weep")]
    [InlineData("steady-inflow-settles-above-the-standpipe")]
    [InlineData("five-trays-fill-soak-drain")]
    public void MarksArePassedWhenTheReferencePassesThem(string name)
    {
        var tray = TrayCase.Named(name);
        foreach (var mark in tray.Expected.Marks)
        {
            Within(mark.AtS[0], new Run(tray).SecondsTo(mark), 0.005, 1);
        }
    }

    [Fact]
    public void TheReservoirFallsAsTheReferenceSays()
    {
        var tray = TrayCase.Named("five-trays-fill-soak-drain");
        var run = new Run(tray);
        var full = run.Water.ReservoirDepthM;
        for (var sample = 0; sample < tray.Expected.SampleS.Length; sample++)
        {
            run.To(tray.Expected.SampleS[sample]);
            Assert.Equal(tray.Expected.ReservoirFallM![sample], full - run.Water.ReservoirDepthM, 1e-3);
        }
    }

    [Fact]
    public void ASteadyInflowSettlesWhereWeepAndStandpipeCarryIt()
    {
        var tray = TrayCase.Named("steady-inflow-settles-above-the-standpipe");
        var run = new Run(tray);
        run.To(7200);
        Assert.Equal(tray.Expected.ClosedFormFinalDepthM!.Value, run.Water.TrayDepthM(0), 2e-5);
    }

    [Fact]
    public void HalfAnHourFillsSoaksAndDrainsAllFiveTrays()
    {
        // 30 minutes is time enough for every tray of a five-tier rack to fill, soak and drain: common practice, no source. The
        // geometry is that of the reference case; the pump stops once the last tray is full and has stood for five minutes.
        var tray = TrayCase.Named("five-trays-fill-soak-drain");
        var run = new Run(tray with { PumpOnS = [[0, 650]] });
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
            Trays = [.. tray.Trays.Select(data => data with { StartDepthM = 0.044 })],
        };
        var times = Enumerable.Range(0, 5)
            .Select(index => new Run(full).SecondsTo(new TrayCase.MarkData(index, 0.002, Rising: false, [])))
            .ToArray();

        Assert.Equal(times.OrderDescending(), times);
        Assert.All(Enumerable.Range(0, 4), index => Assert.True(times[index] > times[index + 1] + 60));
    }

    private static void Within(double expected, double actual, double share, double absolute)
    {
        var tolerance = Math.Max(share * Math.Abs(expected), absolute);
        Assert.InRange(actual, expected - tolerance, expected + tolerance);
    }

    private sealed class Run
    {
        private readonly TrayCase tray;
        private double now;

        public Run(TrayCase tray)
        {
            this.tray = tray;
            Water = new RackWater(Racks.Of(tray), 0.3);
            Water.Inputs.Viscosity = 1.0035e-6;
            Array.Fill(Water.Inputs.ValveOpen, true);
            for (var index = 0; index < tray.Trays.Length; index++)
            {
                Water.Pour(WaterLayout.Tray(index), tray.Trays[index].StartDepthM * tray.Trays[index].LengthM * tray.Trays[index].WidthM);
            }

            TakePump();
        }

        public RackWater Water { get; }

        public double PumpedL => Water.State[Water.Layout.Pumped] * 1000;

        public void To(double seconds)
        {
            foreach (var edge in tray.PumpOnS.SelectMany(span => span).Where(edge => edge > now && edge < seconds))
            {
                Water.Integrator.Advance(edge - now);
                now = edge;
                TakePump();
            }

            Water.Integrator.Advance(seconds - now);
            now = seconds;
            TakePump();
        }

        public double SecondsTo(TrayCase.MarkData mark)
        {
            const double Step = 0.1;
            if (!mark.Rising && tray.PumpOnS.Length > 0)
            {
                To(tray.PumpOnS[0][1]);
            }

            while (mark.Rising ? Water.TrayDepthM(mark.Tray) < mark.DepthM : Water.TrayDepthM(mark.Tray) > mark.DepthM)
            {
                To(now + Step);
            }

            return now;
        }

        private void TakePump()
        {
            var on = tray.PumpOnS.Any(span => span[0] <= now && now < span[1]);
            if (on != Water.Inputs.PumpTurns)
            {
                Water.Inputs.PumpTurns = on;
                Water.Integrator.Restart();
            }
        }
    }
}
