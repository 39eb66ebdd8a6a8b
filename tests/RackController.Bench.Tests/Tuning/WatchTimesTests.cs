namespace RackController.Bench.Tests.Tuning;

public sealed class WatchTimesTests
{
    [Theory]
    [InlineData("3:10", new[] { 190.0 })]
    [InlineData("0:09.5", new[] { 9.5 })]
    [InlineData(" 3:10 , 3:14,240:00", new[] { 190.0, 194.0, 14_400.0 })]
    public void MinutesAndSecondsAreRead(string text, double[] seconds) => Assert.Equal(seconds, WatchTimes.Read(text)!.Value);

    [Theory]
    [InlineData("")]
    [InlineData("3:10,")]
    [InlineData("190")]
    [InlineData("3:60")]
    [InlineData("0:00")]
    [InlineData("-1:10")]
    [InlineData("241:00")]
    [InlineData("3:10:00")]
    [InlineData("3:1e1")]
    public void WhatNoStopwatchShowsIsNoTime(string text) => Assert.Null(WatchTimes.Read(text));

    [Theory]
    [InlineData(9.4, "0:09 min")]
    [InlineData(59.6, "1:00 min")]
    [InlineData(3601.0, "60:01 min")]
    [InlineData(null, "never")]
    public void TimesAreSaidToTheSecond(double? seconds, string words) => Assert.Equal(words, WatchTimes.Words(seconds));
}
