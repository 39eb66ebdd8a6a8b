using CsCheck;
using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Demands;

public class LightCalendarTests
{
    private static readonly DateTimeZone London = DateTimeZoneProviders.Tzdb["Europe/London"];

    [Fact]
    public void ALightIsOnFromItsStartForItsLength()
    {
        var window = Of(6, 0, Duration.FromHours(16)).At(Instant.FromUtc(2026, 1, 10, 12, 0));
        Assert.Equal(new LightWindow(true, Instant.FromUtc(2026, 1, 10, 6, 0), Instant.FromUtc(2026, 1, 10, 22, 0)), window);
    }

    [Fact]
    public void BetweenTwoPhotoperiodsItIsDark()
    {
        var window = Of(6, 0, Duration.FromHours(16)).At(Instant.FromUtc(2026, 1, 10, 22, 0));
        Assert.Equal(new LightWindow(false, Instant.FromUtc(2026, 1, 10, 22, 0), Instant.FromUtc(2026, 1, 11, 6, 0)), window);
    }

    [Fact]
    public void APhotoperiodCrossesMidnight()
    {
        var window = Of(20, 0, Duration.FromHours(10)).At(Instant.FromUtc(2026, 1, 11, 2, 0));
        Assert.Equal(new LightWindow(true, Instant.FromUtc(2026, 1, 10, 20, 0), Instant.FromUtc(2026, 1, 11, 6, 0)), window);
    }

    [Fact]
    public void TwentyFourHoursAreAlwaysLitAlsoOnADayOfTwentyFive()
    {
        var calendar = Of(6, 0, Duration.FromHours(24));
        var end = Instant.FromUtc(2026, 10, 27, 0, 0);
        for (var time = end - Duration.FromDays(3); time < end; time += Duration.FromMinutes(10))
        {
            Assert.Equal(new LightWindow(true, Instant.MinValue, Instant.MaxValue), calendar.At(time));
        }
    }

    [Fact]
    public void NoHoursAreNeverLit() =>
        Assert.Equal(
            new LightWindow(false, Instant.MinValue, Instant.MaxValue),
            Of(6, 0, Duration.Zero).At(Instant.FromUtc(2026, 1, 10, 6, 0)));

    [Fact]
    public void PhotoperiodsThatOverlapWhenTheClockGoesForwardAreOne()
    {
        // London loses an hour on 29 March 2026, so 23.5 h lit from 06:00 GMT reach past 06:00 BST.
        var window = Of(6, 0, Duration.FromMinutes(23 * 60 + 30)).At(Instant.FromUtc(2026, 3, 29, 4, 59));
        Assert.Equal(new LightWindow(true, Instant.FromUtc(2026, 3, 28, 6, 0), Instant.FromUtc(2026, 3, 30, 4, 30)), window);
    }

    [Fact]
    public void PhotoperiodsThatJustTouchWhenTheClockGoesForwardAreOne()
    {
        // The day that loses an hour has 23, and so many are lit.
        var window = Of(6, 0, Duration.FromHours(23)).At(Instant.FromUtc(2026, 3, 28, 12, 0));
        Assert.Equal(new LightWindow(true, Instant.FromUtc(2026, 3, 28, 6, 0), Instant.FromUtc(2026, 3, 30, 4, 0)), window);
    }

    [Fact]
    public void AStaggeredTierIsLaterByItsStaggerAtBothEnds()
    {
        var calendar = new LightCalendar(
            London, new Photoperiod(new LocalTime(6, 0), Duration.FromHours(16)), Duration.FromMinutes(20));
        Assert.Equal(
            new LightWindow(true, Instant.FromUtc(2026, 1, 10, 6, 20), Instant.FromUtc(2026, 1, 10, 22, 20)),
            calendar.At(Instant.FromUtc(2026, 1, 10, 12, 0)));
    }

    [Fact]
    public void EveryInstantLiesInTheWindowThatIsSaidOfIt() => Gens.Schedules.Sample(made =>
    {
        var calendar = new LightCalendar(made.Zone, made.Photoperiod, made.Stagger);
        var window = calendar.At(made.Around);
        return window.Holds(made.Around)
            && (window.From == Instant.MinValue || calendar.At(window.From) == window)
            && (window.Until == Instant.MaxValue || calendar.At(window.Until - Duration.Epsilon) == window);
    });

    [Fact]
    public void LightAndDarkTakeTurnsWithoutAGap() => Gens.Schedules.Sample(made =>
    {
        var calendar = new LightCalendar(made.Zone, made.Photoperiod, made.Stagger);
        var window = calendar.At(made.Around);
        for (var turn = 0; turn < 6 && window.Until != Instant.MaxValue; turn++)
        {
            var next = calendar.At(window.Until);
            if (next.IsLit == window.IsLit || next.From != window.Until)
            {
                return false;
            }

            window = next;
        }

        return true;
    });

    [Fact]
    public void ALitStretchIsNeverShorterThanItsLength() => Gens.Schedules.Sample(made =>
    {
        var calendar = new LightCalendar(made.Zone, made.Photoperiod, made.Stagger);
        var window = calendar.At(made.Around);
        window = window.IsLit || window.Until == Instant.MaxValue ? window : calendar.At(window.Until);
        return !window.IsLit || window.Until == Instant.MaxValue || window.Until - window.From >= made.Photoperiod.Length;
    });

    private static LightCalendar Of(int hour, int minute, Duration length) =>
        new(London, new Photoperiod(new LocalTime(hour, minute), length), Duration.Zero);
}
