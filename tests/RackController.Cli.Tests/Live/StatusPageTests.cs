using RackController.Control;
using RackController.Live;
using RackController.Model;
using RackController.Service;

namespace RackController.Cli.Tests.Live;

public sealed class StatusPageTests
{
    private static readonly Site FourTiers = Pictures.DemoSite("demo-four-tier.yaml");

    [Theory]
    [InlineData("demo-four-tier.yaml", 80, 24)]
    [InlineData("demo-four-tier.yaml", 100, 30)]
    [InlineData("demo-four-tier.yaml", 40, 10)]
    [InlineData("demo-four-tier.yaml", 200, 80)]
    [InlineData("demo-three-racks.yaml", 80, 24)]
    [InlineData("demo-three-racks.yaml", 160, 60)]
    public void NoLineIsWiderAndNoPageHigherThanTheScreen(string file, int width, int height)
    {
        var site = Pictures.DemoSite(file);
        var status = Pictures.Calm(site) with
        {
            Alarms = [.. Enumerable.Repeat(Pictures.Alarm("north/high-water", AlarmPriority.Critical, AlarmState.Latched), 4)],
        };

        var lines = Page(site, status, width, height);

        Assert.True(lines.Count <= height, $"{lines.Count} lines");
        Assert.All(lines, line => Assert.True(line.Length <= width, line));
    }

    [Fact]
    public void EveryLoadAndEveryReadingOfTheFourTierDemoFitsOn80By24BesideThreeAlarms()
    {
        var status = Pictures.Calm(FourTiers) with
        {
            Alarms = [.. Enumerable.Repeat(Pictures.Alarm("north/low-float", AlarmPriority.High, AlarmState.Unacknowledged), 3)],
        };

        var page = string.Join('\n', Page(FourTiers, status, 80, 24));

        Assert.All(FourTiers.Loads, load => Assert.Contains(Short(load.Name), page, StringComparison.Ordinal));
        Assert.All(FourTiers.Sensors, sensor => Assert.Contains(Short(sensor.Name), page, StringComparison.Ordinal));
        Assert.Equal(3, page.Split("north/low-float").Length - 1);
        Assert.Contains("keys", page, StringComparison.Ordinal);
    }

    [Fact]
    public void UpkeepThatIsDueStandsBeforeWhatTheScheduleWillDo()
    {
        var calm = Pictures.Calm(FourTiers);
        var due = UpkeepList.OfNew(FourTiers, calm.At.Wall).Works[..2];

        var page = string.Join('\n', Page(FourTiers, calm with { DueUpkeep = due }, 100, 30));

        Assert.Contains("Next  2 works of upkeep are due", page, StringComparison.Ordinal);
        Assert.DoesNotContain("upkeep", string.Join('\n', Page(FourTiers, calm, 100, 30)), StringComparison.Ordinal);
    }

    [Fact]
    public void WhereNotAllRacksFitTheChosenOneIsShown()
    {
        var site = Pictures.DemoSite("demo-three-racks.yaml");

        var page = Page(site, Pictures.Calm(site), 80, 24, chosen: new RackId(1));

        Assert.Contains($"[{site.Racks[1].Name}]", page[1], StringComparison.Ordinal);
        var loads = site.Loads.Count(load => load.Rack == new RackId(1));
        Assert.Equal(loads, page.Count(line => line.Contains('●') || line.Contains('○')));
    }

    [Fact]
    public void WhatIsAbnormalCarriesASignAndNotOnlyAColour()
    {
        var status = Pictures.Calm(FourTiers);
        var leak = status.Sensors.Single(sensor => sensor.Sensor.Kind == SensorKind.LeakRope);
        var lost = status.Sensors.Single(sensor => sensor.Sensor.Kind == SensorKind.WaterTemperature);
        status = status with
        {
            Sensors = status.Sensors
                .Replace(leak, leak with { Reading = leak.Reading with { Value = 1 } })
                .Replace(lost, lost with { Doubt = "missing" }),
            Health = status.Health with { Fault = "the chip is gone" },
        };

        var page = string.Join('\n', Page(FourTiers, status, 100, 30));

        Assert.Contains("! wet", page, StringComparison.Ordinal);
        Assert.Contains("! missing", page, StringComparison.Ordinal);
        Assert.Contains("! the chip is gone", page, StringComparison.Ordinal);
    }

    [Fact]
    public void AnAlarmSaysHowUrgentItIsInWords()
    {
        var status = Pictures.Calm(FourTiers) with
        {
            Alarms = [Pictures.Alarm("north/high-water", AlarmPriority.Critical, AlarmState.Latched)],
        };

        var page = Page(FourTiers, status, 140, 40);

        Assert.StartsWith("!!!! north/high-water (critical, latched) water stands above", page[2], StringComparison.Ordinal);
        Assert.Contains("look for the blocked drain (at once)", page[3], StringComparison.Ordinal);
    }

    [Fact]
    public void AClockThatIsNotTrustedIsSaid()
    {
        var status = Pictures.Calm(FourTiers);

        var page = Page(FourTiers, status with { At = status.At with { WallTrusted = false } }, 80, 24);

        Assert.EndsWith("Mon 1 Jun 2026 13:00:00 (! clock not trusted)", page[0], StringComparison.Ordinal);
    }

    [Fact]
    public void OnANarrowScreenTheNameOfTheSiteComesBeforeTheWordThatTheClockIsWell()
    {
        var page = Page(FourTiers, Pictures.Calm(FourTiers), 80, 24, speed: 60);

        Assert.StartsWith("Millbrook cellar  ", page[0], StringComparison.Ordinal);
        Assert.EndsWith("Mon 1 Jun 2026 13:00:00", page[0].TrimEnd(), StringComparison.Ordinal);
    }

    private static List<string> Page(
        Site site, SiteStatus status, int width, int height, RackId chosen = default, double speed = 1) =>
    [
        .. new StatusPage(site, speed).Lines(status, chosen, new StyledLine().Add("keys"), width, height)
            .Select(line => string.Concat(line.Render(width).Select(segment => segment.Text))),
    ];

    private static string Short(string name) => name.StartsWith("north/", StringComparison.Ordinal) ? name[6..] : name;
}
