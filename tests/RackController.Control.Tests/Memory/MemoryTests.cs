using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests;

/// <summary>What is kept across a restart comes back as it was, and what makes no sense does not come back.</summary>
public class MemoryTests
{
    private const long CenturyMs = 100L * 366 * 24 * 60 * 60 * 1000;
    private static readonly Instant wall = Instant.FromUtc(2026, 6, 1, 0, 0);
    private readonly MemoryWriter writer = new(new Moment(MonotonicTime.FromMilliseconds(90_000), wall, WallTrusted: true), expected: 0);

    [Fact]
    public void WhatWasPutComesBackAsItWasPut()
    {
        writer.Put("number", -7);
        writer.Put("length", Duration.FromMilliseconds(1_500));
        writer.Put("wall", wall + Duration.FromMilliseconds(5));
        var memory = Read();

        Assert.False(memory.IsEmpty);
        Assert.Equal(MonotonicTime.FromMilliseconds(90_000), writer.Now);
        Assert.Equal(-7, memory.Number("number"));
        Assert.Equal(Duration.FromMilliseconds(1_500), memory.Length("length"));
        Assert.Equal(wall + Duration.FromMilliseconds(5), memory.WallTime("wall"));
        Assert.True(memory.Knows("number"));
        Assert.False(memory.Knows("another"));
        Assert.Null(memory.Number("another"));
    }

    [Fact]
    public void WithoutAnEarlierRunNothingIsKnown()
    {
        var memory = new MemoryReader(null, new Moment(MonotonicTime.Zero, wall, WallTrusted: true));
        Assert.True(memory.IsEmpty);
        Assert.False(memory.Knows("number"));
        Assert.Null(memory.Number("number"));
        Assert.Equal(Duration.Zero, memory.Away);
    }

    [Theory]
    [InlineData(1L << 53, true)]
    [InlineData((1L << 53) + 1, false)]
    [InlineData(-(1L << 53), true)]
    [InlineData(-(1L << 53) - 1, false)]
    public void ANumberIsBelievedAsFarAsADoubleIsExact(long number, bool isBelieved)
    {
        writer.Put("number", number);
        Assert.Equal(isBelieved ? number : null, Read().Number("number"));
    }

    [Theory]
    [InlineData(CenturyMs, true)]
    [InlineData(CenturyMs + 1, false)]
    [InlineData(-CenturyMs, true)]
    [InlineData(-CenturyMs - 1, false)]
    public void ALengthIsBelievedUpToACentury(long ms, bool isBelieved)
    {
        writer.Put("length", ms);
        Assert.Equal(isBelieved ? Duration.FromMilliseconds(ms) : null, Read().Length("length"));
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(-1, false)]
    [InlineData(3 * CenturyMs, true)]
    [InlineData(3 * CenturyMs + 1, false)]
    public void AWallTimeIsBelievedFrom1970ForThreeCenturies(long ms, bool isBelieved)
    {
        writer.Put("wall", ms);
        Assert.Equal(isBelieved ? Instant.FromUnixTimeMilliseconds(ms) : null, Read().WallTime("wall"));
    }

    [Theory]
    [InlineData(60, true, 60)]
    [InlineData(60, false, 0)]
    [InlineData(0, true, 0)]
    [InlineData(-60, true, 0)]
    [InlineData(CenturyMs / 1000, true, CenturyMs / 1000)]
    [InlineData(CenturyMs / 1000 + 1, true, 0)]
    public void TheTimeAwayCountsWhereBothClocksAreTrustedAndItMakesSense(long seconds, bool isTrusted, long awaySeconds)
    {
        writer.PutAge("age", MonotonicTime.FromMilliseconds(60_000));
        var memory = Read(Duration.FromSeconds(seconds), isTrusted);
        Assert.Equal(Duration.FromSeconds(awaySeconds), memory.Away);
        Assert.Equal(MonotonicTime.Zero + -Duration.FromSeconds(30 + awaySeconds), memory.TimeOf("age"));
    }

    [Fact]
    public void WhatAnUntrustedClockSavedSaysNothingOfTheTimeAway()
    {
        var saved = new ControlMemory(wall, WallTrusted: false, writer.ToMemory().Items);
        Assert.Equal(
            Duration.Zero,
            new MemoryReader(saved, new Moment(MonotonicTime.Zero, wall + Duration.FromHours(1), WallTrusted: true)).Away);
    }

    [Fact]
    public void ANameIsTheSameHoweverManyPartsItHas()
    {
        var (key, number) = ("north/low-float", 12);
        writer.Put($"{key}/trip {number} age", 1);
        writer.Put($"{key}{"/latched"}", 2);
        writer.Put(key, 3);
        Assert.Equal(
            [KeyValuePair.Create(key, 3L), KeyValuePair.Create($"{key}/latched", 2L), KeyValuePair.Create($"{key}/trip 12 age", 1L)],
            writer.ToMemory().Items);
    }

    [Fact]
    public void TakingMemoryCostsItsNumbersAndNoText()
    {
        var rig = new Rig(Sites.OneRack());
        var count = rig.Control.Save().Items.Count;
        long Allocated()
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            rig.Control.Save();
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        Allocated();

        // Two references and a number each, and less than three of the texts that they would be.
        Assert.InRange(Allocated(), count * 24, (count * 24) + 250);
    }

    private MemoryReader Read(Duration? away = null, bool isTrusted = true) => new(
        writer.ToMemory(), new Moment(MonotonicTime.Zero, wall + (away ?? Duration.Zero), isTrusted));
}
