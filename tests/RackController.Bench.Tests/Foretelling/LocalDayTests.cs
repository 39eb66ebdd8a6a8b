using NodaTime;
using RackController.Testing;

namespace RackController.Bench.Tests.Foretelling;

public sealed class LocalDayTests
{
    // Transitions of the IANA time zone database (2025b, read with zdump).
    [Theory]
    [InlineData("America/New_York", "2026-03-08", "23 hours: clocks go from 02:00 EST to 03:00 EDT.")]
    [InlineData("America/New_York", "2026-11-01", "25 hours: clocks go from 02:00 EDT to 01:00 EST.")]
    [InlineData("Europe/London", "2026-03-29", "23 hours: clocks go from 01:00 GMT to 02:00 BST.")]
    [InlineData("Europe/London", "2027-10-31", "25 hours: clocks go from 02:00 BST to 01:00 GMT.")]
    [InlineData("Australia/Sydney", "2026-10-04", "23 hours: clocks go from 02:00 AEST to 03:00 AEDT.")]
    [InlineData("Australia/Sydney", "2027-04-04", "25 hours: clocks go from 03:00 AEDT to 02:00 AEST.")]
    [InlineData("Australia/Lord_Howe", "2026-04-05", "24.5 hours: clocks go from 02:00 +11 to 01:30 +1030.")]
    [InlineData("Australia/Lord_Howe", "2026-10-04", "23.5 hours: clocks go from 02:00 +1030 to 02:30 +11.")]
    public void ADaySaysHowLongItIsAndWhatItsClocksDo(string zone, string date, string words)
    {
        var day = new LocalDay(Sites.OneRack() with { Zone = DateTimeZoneProviders.Tzdb[zone] }, Parse(date));
        Assert.Equal("This day has " + words, day.ChangeInWords);
    }

    [Fact]
    public void AnOrdinaryDayHasNothingToSayOfItsClocks()
    {
        var day = new LocalDay(Sites.OneRack(), Parse("2026-03-09"));
        Assert.Null(day.ChangeInWords);
        Assert.Equal("07:00", day.Clock(Instant.FromUtc(2026, 3, 9, 11, 0)));
        Assert.Equal("Monday 9 March 2026", day.Words);
    }

    [Fact]
    public void ATimeThatComesTwiceCarriesItsZonesName()
    {
        var day = new LocalDay(Sites.OneRack(), Parse("2026-11-01"));
        Assert.Equal("01:30 EDT", day.Clock(Instant.FromUtc(2026, 11, 1, 5, 30)));
        Assert.Equal("01:30 EST", day.Clock(Instant.FromUtc(2026, 11, 1, 6, 30)));
    }

    private static LocalDate Parse(string date) => NodaTime.Text.LocalDatePattern.Iso.Parse(date).Value;
}
