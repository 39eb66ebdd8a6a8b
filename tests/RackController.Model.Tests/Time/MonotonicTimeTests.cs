using CsCheck;
using NodaTime;

namespace RackController.Model.Tests.Time;

public class MonotonicTimeTests
{
    private static readonly Gen<MonotonicTime> AnyTime = Gen.Long[0, 1L << 60].Select(ns => new MonotonicTime(ns));

    private static readonly Gen<Duration> AnyLength = Gen.Long[-(1L << 59), 1L << 59].Select(ns => Duration.FromNanoseconds(ns));

    [Fact]
    public void AMillisecondHasAMillionNanoseconds() =>
        Assert.Equal(new MonotonicTime(1_500_000_000), MonotonicTime.FromMilliseconds(1500));

    [Fact]
    public void NeverStaysNeverHoweverMuchIsAdded()
    {
        Assert.Equal(MonotonicTime.Never, MonotonicTime.Never + Duration.FromDays(1));
        Assert.Equal(MonotonicTime.Never, MonotonicTime.Never + -Duration.FromDays(1));
    }

    [Fact]
    public void NeverIsLaterThanAnyTimeOfARack() =>
        Assert.True(MonotonicTime.Zero + Duration.FromDays(100 * 365) < MonotonicTime.Never);

    [Fact]
    public void ATimeThatWouldRunOverIsADefectAndNotAnEarlyTime() =>
        Assert.Throws<OverflowException>(() => new MonotonicTime(long.MaxValue - 1) + Duration.FromSeconds(1));

    [Fact]
    public void WhatIsAddedIsTheDifference() => Gen.Select(AnyTime, AnyLength)
        .Sample((time, length) => Assert.Equal(length, time + length - time));

    [Fact]
    public void TheOrderIsThatOfTheNanoseconds() => Gen.Select(AnyTime, AnyTime).Sample((a, b) =>
    {
        Assert.Equal(a.Nanoseconds < b.Nanoseconds, a < b);
        Assert.Equal(a.Nanoseconds <= b.Nanoseconds, a <= b);
        Assert.Equal(a > b, b < a);
        Assert.Equal(a >= b, b <= a);
        Assert.Equal(a < b ? a : b, MonotonicTime.Earlier(a, b));
        Assert.Equal(a < b ? b : a, MonotonicTime.Later(a, b));
        Assert.Equal(a.Nanoseconds.CompareTo(b.Nanoseconds), a.CompareTo(b));
    });
}
