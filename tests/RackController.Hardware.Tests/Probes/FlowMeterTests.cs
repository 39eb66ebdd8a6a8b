using RackController.Hardware.Probes;

namespace RackController.Hardware.Tests.Probes;

public sealed class FlowMeterTests : IDisposable
{
    private const double PulsesPerL = 450;

    private readonly FakeLine line = new();
    private readonly FlowMeterReader meter;
    private int timesTaken;

    public FlowMeterTests() => meter = new FlowMeterReader(
        new BusPartOnDemand<IPulseLine>(() =>
        {
            timesTaken++;
            return line;
        }), PulsesPerL);

    public void Dispose() => line.Dispose();

    // 75 pulses a second at 450 for a litre: 75 / 450 * 60 = 10 L/min.
    [Fact]
    public void FlowIsPulsesOverTimeAndPulsesForALitre()
    {
        line.Pulses(from: 100, count: 16, firstMs: 5000, eachMs: 1000.0 / 75);
        Assert.Equal(10, meter.Read(), 1e-4);
    }

    [Fact]
    public void PulsesThatTheKernelDidNotKeepCountAllTheSame()
    {
        line.Waiting.AddRange([new Pulse(1_000_000_000, 10), new Pulse(2_000_000_000, 85)]);
        Assert.Equal(10, meter.Read(), 1e-9);
    }

    [Fact]
    public void TheKernelsNumbersMayWrap()
    {
        line.Waiting.AddRange([new Pulse(1_000_000_000, uint.MaxValue - 24), new Pulse(2_000_000_000, 50)]);
        Assert.Equal(10, meter.Read(), 1e-9);
    }

    [Fact]
    public void WithoutPulsesNothingFlows()
    {
        line.Pulses(from: 1, count: 16, firstMs: 0, eachMs: 10);
        Assert.NotEqual(0, meter.Read());
        Assert.Equal(0, meter.Read());
    }

    [Fact]
    public void AFlowThatBeginsIsNotThinnedByTheTimeBefore()
    {
        line.Pulses(from: 1, count: 2, firstMs: 0, eachMs: 10);
        meter.Read();
        line.Pulses(from: 3, count: 16, firstMs: 3_600_000, eachMs: 1000.0 / 75);
        Assert.Equal(10, meter.Read(), 1e-4);
    }

    // One pulse a second at 450 for a litre: 60 / 450 L/min.
    [Fact]
    public void AThinFlowIsMeasuredFromOnePulseToTheNext()
    {
        line.Waiting.Add(new Pulse(1_000_000_000, 1));
        Assert.Equal(0, meter.Read());
        line.Waiting.Add(new Pulse(2_000_000_000, 2));
        Assert.Equal(60 / PulsesPerL, meter.Read(), 1e-9);
        line.Waiting.Add(new Pulse(900_000_000_000, 3));
        Assert.Equal(0, meter.Read());
    }

    [Fact]
    public void ALineThatIsGoneIsTakenAgain()
    {
        line.Trouble = new IOException("No such device");
        Assert.Throws<IOException>(() => meter.Read());
        line.Trouble = null;
        meter.Read();
        Assert.Equal(2, timesTaken);
    }

    private sealed class FakeLine : IPulseLine
    {
        public List<Pulse> Waiting { get; } = [];

        public IOException? Trouble { get; set; }

        public void Pulses(uint from, int count, double firstMs, double eachMs) => Waiting.AddRange(
            Enumerable.Range(0, count).Select(i => new Pulse((ulong)((firstMs + i * eachMs) * 1e6), from + (uint)i)));

        public int Take(Span<Pulse> pulses)
        {
            if (Trouble is not null)
            {
                throw Trouble;
            }

            var count = Waiting.Count;
            Waiting.CopyTo(pulses);
            Waiting.Clear();
            return count;
        }

        public void Dispose()
        {
        }
    }
}
