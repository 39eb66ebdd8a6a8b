using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.ProofTests;

/// <summary>The rack of <see cref="Sites.OneRack"/> with everything that has a proof test: full floats, a reservoir level and a current
/// sensor besides. It fills until its trays are full.</summary>
internal static class ProofSite
{
    public static Site Whole { get; } = Make();

    /// <summary>Does what a step asks of a contact, and waits until it may be over.</summary>
    public static void Move(this Rig rig, string contact, double value)
    {
        rig.Set(contact, value);
        rig.ScanFor(ProofTestDesk.Hold + Duration.FromSeconds(3));
    }

    /// <summary>Tests a contact that is well.</summary>
    public static void TestContact(this Rig rig, string contact)
    {
        var harmful = rig.Sensor(contact).HarmfulValue!.Value;
        rig.Scan(new BeginProofTest("Ada", contact));
        rig.Move(contact, harmful);
        rig.Move(contact, 1 - harmful);
    }

    /// <summary>Resets a latch by the usual two actions.</summary>
    public static void Reset(this Rig rig, string latch)
    {
        rig.Scan(new ResetLatch("Ada", latch));
        rig.Scan(new ConfirmReset("Ben", latch));
    }

    public static ProofTestStatus Test(this Rig rig, string item) => rig.Control.ProofTests().Single(test => test.Item == item);

    /// <summary>What the proof test of an item came to last, and why.</summary>
    public static (string What, string Because) Outcome(this Rig rig, string item)
    {
        var last = rig.Events.Last(happened => happened.Kind == EventKind.ProofTest && happened.Subject == item);
        return (last.What, last.Because);
    }

    private static Site Make()
    {
        var site = Sites.OneRack().WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with { Fill = new FillUntilFull(Duration.FromMinutes(6), FullDepthMm: 40) },
        });
        var like = site.Sensors[0] with { HeightMm = 0 };
        var more = new[]
        {
            like with { Name = "north/tier 1 full float", Kind = SensorKind.TrayFullFloat, TierNumber = 1, HeightMm = 45 },
            like with { Name = "north/tier 2 full float", Kind = SensorKind.TrayFullFloat, TierNumber = 2, HeightMm = 45 },
            like with { Name = "north/reservoir full float", Kind = SensorKind.ReservoirFullFloat, HeightMm = 350 },
            like with { Name = "north/reservoir level", Kind = SensorKind.ReservoirLevel, PlausibleMax = 400 },
            like with
            {
                Name = "sockets/current", Kind = SensorKind.CircuitCurrent, PlausibleMax = 20, Rack = null, Circuit = new CircuitId(0),
            },
        };
        return site with
        {
            Sensors = [.. site.Sensors, .. more.Select((sensor, i) => sensor with { Id = new SensorId(site.Sensors.Length + i) })],
        };
    }
}
