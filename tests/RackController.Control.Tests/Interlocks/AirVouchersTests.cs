using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Which sensors keep the lights on where another sensor of the same air has fallen silent (row air-too-hot).</summary>
public class AirVouchersTests
{
    [Fact]
    public void TwoSensorsOfTheWholeRackVouchForATierAsOneDoes()
    {
        var rig = Silenced(tiers: 2, silent: 2, null, null);
        Assert.True(rig.IsOn("north/tier 2 light"));
    }

    [Fact]
    public void ASecondSensorOnTheTierVouchesForIt()
    {
        var rig = Silenced(tiers: 2, silent: 2, 2);
        Assert.True(rig.IsOn("north/tier 2 light"));
    }

    [Fact]
    public void OneOfAnotherTierDoesNot()
    {
        var rig = Silenced(tiers: 2, silent: 2, 1);
        Assert.False(rig.IsOn("north/tier 2 light"));
        Assert.True(rig.IsOn("north/tier 1 light"));
    }

    [Fact]
    public void ForTheWholeRackOneLitTierWithoutASensorIsOneTooMany()
    {
        var rig = Silenced(tiers: 3, silent: null, 1, 2);
        Assert.All([1, 2, 3], tier => Assert.False(rig.IsOn($"north/tier {tier} light")));
        Assert.True(Silenced(tiers: 3, silent: null, 1, 2, 3).IsOn("north/tier 3 light"));
    }

    [Fact]
    public void ASensorThatIsSilentGivesNothingToRemember()
    {
        var rig = Silenced(Sites.OneRack().WithContactor(), silent: 2, 2);
        rig.ScanFor(Duration.FromSeconds(10));
        var version = rig.Control.MemoryVersion;
        rig.ScanFor(Duration.FromSeconds(10));
        Assert.Equal(version, rig.Control.MemoryVersion);
    }

    // Five minutes after the first of the air sensors fell silent; the others stand on these tiers, null for the whole rack.
    private static Rig Silenced(int tiers, int? silent, params int?[] others) => Silenced(Sites.OneRack(tiers), silent, others);

    private static Rig Silenced(Site site, int? silent, params int?[] others)
    {
        var rig = new Rig(site with
        {
            Sensors =
            [
                .. site.Sensors,
                .. others.Prepend(silent).Select((tier, i) => site.Sensors[0] with
                {
                    Id = new SensorId(site.Sensors.Length + i),
                    Name = $"north/air {i}",
                    Kind = SensorKind.AirTemperature,
                    TierNumber = tier,
                    PlausibleMax = 60,
                    StaleAfter = Duration.FromSeconds(30),
                }),
            ],
        });
        rig.LeapFor(Duration.FromMinutes(1));
        rig.Silence("north/air 0");
        rig.LeapFor(Duration.FromMinutes(5));
        return rig;
    }
}
