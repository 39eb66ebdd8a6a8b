using NodaTime;
using RackController.Hardware.Probes;
using RackController.Model;
using RackController.Testing;

namespace RackController.Hardware.Tests.Probes;

public sealed class ProbeBusTests
{
    private static readonly Site site = Sites.OneRack();
    private readonly SensorId sensor = site.Sensors[0].Id;
    private readonly Readings readings = new(site);

    [Fact]
    public void AReadingIsAsOldAsTheQuestion()
    {
        var now = MonotonicTime.FromMilliseconds(5000);
        var probe = Probe(() =>
        {
            now += Duration.FromSeconds(1);
            return 21.5;
        });
        probe.ReadInto(() => now);
        probe.Slot.CopyTo(readings);
        Assert.Equal(new Reading(21.5, ReadingQuality.Good, MonotonicTime.FromMilliseconds(5000)), readings[sensor]);
    }

    [Fact]
    public void OneThatDoesNotAnswerHasNoReading()
    {
        var probe = Probe(() => throw new IOException("Error 121"));
        probe.ReadInto(() => MonotonicTime.Zero);
        probe.Slot.CopyTo(readings);
        Assert.Equal(ReadingQuality.Corrupt, readings[sensor].Quality);
    }

    [Fact]
    public void BeforeTheFirstAnswerAReadingIsMissing()
    {
        new ProbeSlot(sensor).CopyTo(readings);
        Assert.Equal(ReadingQuality.Missing, readings[sensor].Quality);
    }

    /// <summary>Nobody waits for a bus that hangs: neither who takes over readings nor who ends.</summary>
    [Fact]
    public void ABusThatHangsKeepsNobodyElse()
    {
        using var asked = new ManualResetEventSlim();
        using var answers = new ManualResetEventSlim();
        var hangs = Probe(() =>
        {
            asked.Set();
            answers.Wait();
            return 0;
        });
        var bus = new ProbeBus("a bus that hangs", [hangs], () => MonotonicTime.Zero);
        asked.Wait();
        new ProbeBoard([bus]).CopyTo(readings);
        Assert.Equal(ReadingQuality.Missing, readings[sensor].Quality);
        bus.Dispose();
        answers.Set();
    }

    private ProbeOnBus Probe(Func<double> read) => new("north/water temperature", "a part", new Reader(read), new ProbeSlot(sensor));

    private sealed class Reader(Func<double> read) : IProbeReader
    {
        public double Read() => read();
    }
}
