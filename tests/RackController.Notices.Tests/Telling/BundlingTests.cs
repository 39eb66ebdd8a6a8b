using CsCheck;
using NodaTime;
using RackController.Model;

namespace RackController.Notices.Tests;

public sealed class BundlingTests
{
    private static readonly DateTimeZone london = DateTimeZoneProviders.Tzdb["Europe/London"];

    [Theory]
    [InlineData(21, 59, false)]
    [InlineData(22, 0, true)]
    [InlineData(3, 0, true)]
    [InlineData(5, 59, true)]
    [InlineData(6, 0, false)]
    public void QuietHoursMayHoldMidnight(int hour, int minute, bool isQuiet)
    {
        var quiet = new QuietHours(new LocalTime(22, 0), new LocalTime(6, 0), AlarmPriority.Critical);
        Assert.Equal(isQuiet, quiet.Holds(new LocalTime(hour, minute)));
    }

    [Fact]
    public void AClockThatIsSetBackHoldsNothingForLongerThanAWait()
    {
        var tiding = At(AlarmPriority.High, Cellar.Noon + Duration.FromDays(400));

        Assert.Single(new Bundling(null, london).Due([tiding], Cellar.Noon));
    }

    [Fact]
    public void WhateverHappensIsToldOnceQuietHoursAreOverAndNothingTwice() =>
        Gen.Select(
            Gen.Int[0, 23], Gen.Int[1, 23], Gen.Enum<AlarmPriority>(),
            Gen.Select(Gen.Int[0, 2879], Gen.Enum<AlarmPriority>()).Array[1, 20]).Sample((from, length, atLeast, drawn) =>
        {
            var begin = new LocalTime(from, 0);
            var quiet = new QuietHours(begin, begin.PlusHours(length), atLeast);
            var bundling = new Bundling(quiet, london);
            var coming = drawn.Select(one => At(one.Item2, Cellar.Noon + Duration.FromMinutes(one.Item1))).ToList();
            List<Tiding> pending = [], told = [];
            for (var now = Cellar.Noon; now < Cellar.Noon + Duration.FromDays(4); now += Duration.FromSeconds(60))
            {
                pending.AddRange(coming.Where(tiding => tiding.TakenAt <= now));
                coming.RemoveAll(tiding => tiding.TakenAt <= now);
                var due = bundling.Due(pending, now);
                pending.RemoveAll(due.Contains);
                told.AddRange(due);
                if (quiet.Holds(now.InZone(london).TimeOfDay) && due.Any(tiding => tiding.Priority < atLeast))
                {
                    return false;
                }
            }

            return pending.Count == 0 && told.Count == drawn.Length;
        }, iter: 100);

    private static Tiding At(AlarmPriority priority, Instant at) =>
        new(TidingKind.Raised, "north/low-float", priority, at, "of a test", at);
}
