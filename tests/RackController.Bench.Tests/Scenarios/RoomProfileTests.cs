using NodaTime;
using RackController.Bench.Tests.Support;

namespace RackController.Bench.Tests.Scenarios;

public sealed class RoomProfileTests
{
    private const string Rest =
        "start: 2026-03-02 00:00\nlength: 2 d\nexpect:\n  - that: x\n    never: { rack: north, spilled: above 1 L }\n";

    private static readonly DateTimeZone London = DateTimeZoneProviders.Tzdb["Europe/London"];

    private static readonly RoomProfile Day = new(
        [new RoomPoint(new LocalTime(6, 0), 18, 60), new RoomPoint(new LocalTime(14, 0), 24, 40)]);

    [Theory]
    [InlineData(6, 18, 60)]
    [InlineData(10, 21, 50)]
    [InlineData(14, 24, 40)]
    // 8 h of the 16 h down to the next morning.
    [InlineData(22, 21, 50)]
    [InlineData(2, 19.5, 55)]
    public void TheAirRunsEvenlyFromPointToPointRoundTheClock(int hour, double airC, double humidity)
    {
        var air = Day.At(Instant.FromUtc(2026, 3, 2, hour, 0), London);
        Assert.Equal(airC, air.AirC, 1e-9);
        Assert.Equal(humidity, air.HumidityPercent, 1e-9);
    }

    [Fact]
    public void TheNextPointIsThatOfTheLocalClock()
    {
        // The clocks of London go ahead at 01:00 UTC on 29 March 2026 (IANA tzdb 2025b): 06:00 is then 05:00 UTC.
        Assert.Equal(Instant.FromUtc(2026, 3, 28, 6, 0), Day.After(Instant.FromUtc(2026, 3, 28, 5, 59), London).At);
        Assert.Equal(Instant.FromUtc(2026, 3, 29, 5, 0), Day.After(Instant.FromUtc(2026, 3, 28, 14, 0), London).At);
    }

    [Fact]
    public void AProfileOfOnePointIsAConstantRoom()
    {
        var constant = new RoomProfile([new RoomPoint(new LocalTime(12, 0), 21, 55)]);
        Assert.Equal((21, 55), constant.At(Instant.FromUtc(2026, 3, 2, 7, 0), London));
    }

    [Fact]
    public void AScenarioMayGiveItsPointsInAnyOrder()
    {
        var scenario = Scenes.Read(
            "room:\n  - { at: 14:00, air: 24 °C, humidity: 40 % }\n  - { at: 06:00, air: 18 °C, humidity: 60 % }\n" + Rest).Scenario;
        Assert.Equal(Day.Points.Select(point => point.At), scenario!.Room!.Points.Select(point => point.At));
        Assert.Equal(18, scenario.Room.Points[0].AirC, 1e-9);
        Assert.Equal(40, scenario.Room.Points[1].HumidityPercent, 1e-9);
        Assert.Null(Scenes.Read(Rest).Scenario!.Room);
    }

    [Theory]
    [InlineData("room:\n  - { at: 14:00, air: 24 °C }\n", "lacks `humidity`")]
    [InlineData("room:\n  - { at: 14:00, air: 24 L, humidity: 40 % }\n", "`air`")]
    [InlineData("room: 24 °C\n", "no list")]
    [InlineData(
        "room:\n  - { at: 14:00, air: 24 °C, humidity: 40 % }\n  - { at: 14:00, air: 20 °C, humidity: 40 % }\n", "at the same time")]
    public void APointThatCannotBeIsSaidWhereItIs(string room, string what) => Assert.Contains(
        Scenes.Read(room + Rest).Complaints, complaint => complaint.What.Contains(what, StringComparison.Ordinal));
}
