using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Interlocks;

/// <summary>How often is too often within 24 hours.</summary>
public class RecentTripsTests
{
    private static readonly MonotonicTime first = MonotonicTime.Zero + Duration.FromDays(3);
    private readonly RecentTrips trips = new("north/x", toLatch: 3);

    [Fact]
    public void TheThirdWithinADayIsOneTooMany()
    {
        Assert.False(trips.AddAndAskWhetherTooMany(first));
        Assert.False(trips.AddAndAskWhetherTooMany(first + Duration.FromHours(1)));
        Assert.True(trips.AddAndAskWhetherTooMany(first + Duration.FromHours(24)));
    }

    [Fact]
    public void WhatIsOlderThanADayNoLongerCounts()
    {
        trips.AddAndAskWhetherTooMany(first);
        trips.AddAndAskWhetherTooMany(first + Duration.FromHours(2));
        Assert.False(trips.AddAndAskWhetherTooMany(first + Duration.FromHours(24) + Duration.Epsilon));
        Assert.True(trips.AddAndAskWhetherTooMany(first + Duration.FromHours(25)));
    }

    [Fact]
    public void ThoseThatDropOutTogetherLeaveTheLatest()
    {
        trips.AddAndAskWhetherTooMany(first);
        trips.AddAndAskWhetherTooMany(first + Duration.FromHours(1));
        Assert.False(trips.AddAndAskWhetherTooMany(first + Duration.FromHours(30)));
        Assert.False(trips.AddAndAskWhetherTooMany(first + Duration.FromHours(31)));
        Assert.True(trips.AddAndAskWhetherTooMany(first + Duration.FromHours(32)));
    }

    [Fact]
    public void OneMoreThanTooManyIsTooManyStillAndTheOldestMakesRoomForIt()
    {
        foreach (var hour in new[] { 0, 10, 20 })
        {
            trips.AddAndAskWhetherTooMany(first + Duration.FromHours(hour));
        }

        Assert.True(trips.AddAndAskWhetherTooMany(first + Duration.FromHours(21)));
        Assert.Equal([11, 1, 0], AgesInHours(first + Duration.FromHours(21)));
    }

    [Fact]
    public void AfterAResetTheyAreCountedAnew()
    {
        trips.AddAndAskWhetherTooMany(first);
        trips.AddAndAskWhetherTooMany(first);
        trips.Clear();
        Assert.False(trips.AddAndAskWhetherTooMany(first));
        Assert.False(trips.AddAndAskWhetherTooMany(first));
        Assert.True(trips.AddAndAskWhetherTooMany(first));
    }

    [Fact]
    public void ARestartForgetsNone()
    {
        trips.AddAndAskWhetherTooMany(first);
        trips.AddAndAskWhetherTooMany(first + Duration.FromHours(1));
        var again = Restored(trips, first + Duration.FromHours(2), toLatch: 3);
        Assert.True(again.AddAndAskWhetherTooMany(MonotonicTime.Zero + Duration.FromHours(21)));
        again = Restored(trips, first + Duration.FromHours(2), toLatch: 3);
        Assert.False(again.AddAndAskWhetherTooMany(MonotonicTime.Zero + Duration.FromHours(22) + Duration.Epsilon));
    }

    [Fact]
    public void ARecordOfMoreThanItTakesIsReadAsFarAsItTakes()
    {
        trips.AddAndAskWhetherTooMany(first);
        trips.AddAndAskWhetherTooMany(first);
        trips.AddAndAskWhetherTooMany(first);
        Assert.True(Restored(trips, first, toLatch: 2).AddAndAskWhetherTooMany(MonotonicTime.Zero));
    }

    private long[] AgesInHours(MonotonicTime now)
    {
        var writer = new MemoryWriter(At(now), expected: 0);
        trips.Save(writer);
        var items = writer.ToMemory().Items;
        Assert.Equal(items.Count - 1, items["north/x/trips"]);
        return [.. items.Where(item => item.Key.EndsWith(" age", StringComparison.Ordinal)).Select(item => item.Value / 3_600_000)];
    }

    private static RecentTrips Restored(RecentTrips from, MonotonicTime saved, int toLatch)
    {
        var writer = new MemoryWriter(At(saved), expected: 0);
        from.Save(writer);
        var again = new RecentTrips("north/x", toLatch);
        again.Restore(new MemoryReader(writer.ToMemory(), At(MonotonicTime.Zero)));
        return again;
    }

    private static Moment At(MonotonicTime time) => new(time, Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);
}
