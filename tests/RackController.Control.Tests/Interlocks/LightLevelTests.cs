using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Rows light-missing and light-unasked. The lamp of the test site gives 180 umol/m2/s, which at the usual 0.015 for each lux
/// is 12 000 lx: it is missing below 1200, and on unasked above 3600.</summary>
public class LightLevelTests
{
    private const string Sensor = "north/tier 1 light level";
    private const string Missing = "north/tier 1/light-missing";
    private const string Unasked = "north/tier 1/light-unasked";

    private readonly Rig rig = new(Site());

    public LightLevelTests()
    {
        rig.Set(Sensor, 12_000);
        rig.LeapUntil(() => rig.IsOn("north/tier 1 light"));
        rig.ScanFor(Duration.FromSeconds(1));
    }

    [Fact]
    public void ALightThatIsOnAndDarkIsToldOfOnceThatHasLasted()
    {
        rig.Set(Sensor, 1199);
        rig.Scan();
        rig.LeapFor(Duration.FromMinutes(5) - Duration.FromSeconds(1));
        Assert.Null(rig.Alarm(Missing));
        rig.LeapFor(Duration.FromSeconds(2));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Missing)!.State);
        Assert.Equal("the light of tier 1 is told on and its tier shows less than 1200 lx", rig.Alarm(Missing)!.Cause);
        Assert.True(rig.IsOn("north/tier 1 light"));
    }

    [Fact]
    public void ALightThatIsOnAndSeenTellsNobody()
    {
        rig.Set(Sensor, 1200);
        rig.LeapFor(Duration.FromHours(1));
        Assert.Null(rig.Alarm(Missing));
        Assert.Null(rig.Alarm(Unasked));
    }

    [Fact]
    public void AHandOverTheSensorTellsNobody()
    {
        for (var minute = 0; minute < 20; minute += 4)
        {
            rig.Set(Sensor, 0);
            rig.LeapFor(Duration.FromMinutes(4));
            rig.Set(Sensor, 12_000);
            rig.Scan();
        }

        Assert.Null(rig.Alarm(Missing));
    }

    [Fact]
    public void ALightThatIsSeenAgainIsMissingNoMore()
    {
        rig.Set(Sensor, 0);
        rig.LeapFor(Duration.FromMinutes(6));
        rig.Set(Sensor, 1200);
        rig.Scan();
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Missing)!.State);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void ADeadLampDoesNotHealInTheDarkNorWhileNobodyKnows(bool isSilent)
    {
        rig.Set(Sensor, 0);
        rig.LeapFor(Duration.FromMinutes(6));
        if (isSilent)
        {
            rig.Silence(Sensor);
            rig.ScanFor(Duration.FromMinutes(2));
        }
        else
        {
            rig.LeapUntil(() => !rig.IsOn("north/tier 1 light"));
            rig.LeapFor(Duration.FromHours(1));
        }

        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Missing)!.State);
    }

    [Fact]
    public void AReadingThatIsUnknownBeginsTheWaitAnew()
    {
        rig.Set(Sensor, 0);
        rig.LeapFor(Duration.FromMinutes(4));
        rig.Silence(Sensor);
        rig.ScanFor(Duration.FromMinutes(1));
        rig.Speak(Sensor);
        rig.LeapFor(Duration.FromMinutes(4));
        Assert.Null(rig.Alarm(Missing));
        rig.LeapFor(Duration.FromMinutes(2));
        Assert.NotNull(rig.Alarm(Missing));
    }

    [Fact]
    public void ATierOutOfUseMissesNoLight()
    {
        rig.Set(Sensor, 0);
        rig.LeapFor(Duration.FromMinutes(6));
        rig.Ask(new SetTierInUse("Ann", new RackId(0), 1, InUse: false));
        rig.Scan();
        rig.Scan();
        Assert.Equal(AlarmState.SuppressedByDesign, rig.Alarm(Missing)!.State);
    }

    [Fact]
    public void ALightThatIsOffAndShinesIsToldOfOnceThatHasLasted()
    {
        ToTheNight();
        rig.Set(Sensor, 3601);
        rig.Scan();
        rig.LeapFor(Duration.FromMinutes(5) - Duration.FromSeconds(1));
        Assert.Null(rig.Alarm(Unasked));
        rig.LeapFor(Duration.FromSeconds(2));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Unasked)!.State);
        Assert.Equal("the light of tier 1 is told off and its tier shows more than 3600 lx", rig.Alarm(Unasked)!.Cause);
    }

    [Fact]
    public void WhatANeighbourSheddsOnADarkTierTellsNobody()
    {
        ToTheNight();
        rig.Set(Sensor, 3600);
        rig.LeapFor(Duration.FromHours(1));
        Assert.Null(rig.Alarm(Unasked));
        Assert.Null(rig.Alarm(Missing));
    }

    [Fact]
    public void ALightThatIsToldOnShinesByRight()
    {
        ToTheNight();
        rig.Set(Sensor, 12_000);
        rig.LeapFor(Duration.FromMinutes(6));
        rig.LeapUntil(() => rig.IsOn("north/tier 1 light"));
        rig.Scan();
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Unasked)!.State);
    }

    [Fact]
    public void ALampThatNobodySeesAnyMoreIsNotTakenForDark()
    {
        ToTheNight();
        rig.Set(Sensor, 12_000);
        rig.LeapFor(Duration.FromMinutes(6));
        rig.Silence(Sensor);
        rig.ScanFor(Duration.FromMinutes(2));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Unasked)!.State);
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(180, false)]
    public void ALampThatIsNotThereOrGivesNothingIsNotCompared(double ppfd, bool hasLight)
    {
        var site = Site().WithRack(rack => rack with
        {
            Tiers = rack.Tiers.SetItem(
                0, rack.Tiers[0] with { PpfdUmolPerM2S = ppfd, Light = hasLight ? rack.Tiers[0].Light : null }),
        });
        Assert.DoesNotContain(
            CauseAndEffectTable.Build(new InterlockSite(site, default, [])), each => each.Row.Id is "light-missing" or "light-unasked");
    }

    private void ToTheNight()
    {
        rig.LeapUntil(() => !rig.IsOn("north/tier 1 light"));
        rig.Set(Sensor, 0);
        rig.Scan();
    }

    private static Site Site()
    {
        var site = Sites.OneRack();
        return site with
        {
            Sensors = site.Sensors.Add(site.Sensors[0] with
            {
                Id = new SensorId(site.Sensors.Length),
                Name = Sensor,
                Kind = SensorKind.LightLevel,
                TierNumber = 1,
                PlausibleMax = 70_000,
                StaleAfter = Duration.FromSeconds(30),
            }),
        };
    }
}
