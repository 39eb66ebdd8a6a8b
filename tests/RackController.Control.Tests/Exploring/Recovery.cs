using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Exploring;

/// <summary>
/// What becomes of an interlock once every cause is gone, everything is reset and acknowledged, and its loads are held off by whoever else
/// may: it must come to allow them within a time, go on allowing them for as long as they stay off, and then let them run. Interlocks see
/// the loads and never each other; so what holds for each of them alone holds for any number together, and no two of them can keep a load
/// off by turns for ever.
/// </summary>
internal static class Recovery
{
    /// <summary>Longer than any time that an interlock counts.</summary>
    private static readonly Duration longest = Duration.FromHours(25);

    /// <summary>Shorter than any time for which a load may run.</summary>
    private static readonly Duration run = Duration.FromSeconds(5);

    /// <summary>What it does that it must not.</summary>
    /// <returns>The complaint; null where all is well.</returns>
    public static string? Fault(RowWalk walk, Standpoint from, Site site)
    {
        // What only tells holds nobody off, and may have to see its load run.
        var meanwhile = from.Interlock.Loads.IsEmpty ? site.Loads.Select(load => load.Id).ToHashSet() : [];
        var wanderer = walk.Wanderer;
        var at = wanderer.Look(Twin.Of(from.Interlock), Healthy(site, from.Around.After(Wanderer.Scan), meanwhile), from.Came);
        foreach (var contact in site.Sensors.Where(sensor => sensor.IsContact))
        {
            at = Tested(wanderer, at, site, contact, meanwhile);
        }

        for (var end = at.Around.Now.Monotonic + longest; at.Interlock.Objects; at = Later(wanderer, at, site, meanwhile))
        {
            if (at.Around.Now.Monotonic > end)
            {
                return $"it never comes back: {from.Way}";
            }

            at.Interlock.Acknowledged();
            at.Interlock.TryReset();
        }

        for (var end = at.Around.Now.Monotonic + longest; at.Around.Now.Monotonic < end; at = Later(wanderer, at, site, meanwhile))
        {
            if (at.Interlock.Objects)
            {
                return $"it objects again while its loads are off: {from.Way}";
            }
        }

        for (var end = at.Around.Now.Monotonic + run; at.Around.Now.Monotonic < end;)
        {
            var on = Healthy(site, at.Around.After(Wanderer.Scan), [.. meanwhile, .. at.Interlock.Loads]);
            at = wanderer.Look(at.Interlock, on, at.Came);
            if (at.Interlock.Objects)
            {
                return $"it does not let its loads run: {from.Way}";
            }
        }

        return null;
    }

    // Moved by hand and let go, it passes its proof test.
    private static Standpoint Tested(Wanderer wanderer, Standpoint at, Site site, Sensor contact, HashSet<LoadId> on)
    {
        var moved = Healthy(site, at.Around.After(Wanderer.Scan), on);
        moved = moved with { Tests = moved.Tests with { UnderWay = contact.Id } };
        at = wanderer.Look(at.Interlock, moved.With(contact.Id, contact.HarmfulValue), at.Came);
        var passed = Healthy(site, at.Around.After(Wanderer.Scan), on);
        passed = passed with { Tests = passed.Tests with { JustPassed = contact.Id } };
        return wanderer.Look(at.Interlock, passed, at.Came);
    }

    private static Standpoint Later(Wanderer wanderer, Standpoint at, Site site, HashSet<LoadId> on)
    {
        var left = at.Next == MonotonicTime.Never ? longest : at.Next - at.Around.Now.Monotonic;
        return wanderer.Look(at.Interlock, Healthy(site, at.Around.After(Duration.Max(left, Wanderer.Scan)), on), at.Came);
    }

    // The sensors of a rack that does what it is told.
    private static Surroundings Healthy(Site site, Surroundings around, HashSet<LoadId> on)
    {
        var told = around with { On = [.. site.Loads.Select(load => on.Contains(load.Id))] };
        return told with
        {
            Sensors = [.. site.Sensors.Select(sensor => (double?)Says(site, sensor, on))],
            About = new RackFacts { FloodNumber = around.About.FloodNumber, FilledFlood = around.About.FilledFlood },
            Conditions = ScanConditions.Good,
            Now = around.Now with { WallTrusted = true },
            Flows = [.. site.Loads.Select(load => on.Contains(load.Id) ? Flow.Flows : Flow.Still)],
            IsShedding = false,
            IsCut = false,
            HoldEndsAt = null,
            Tests = new TestsTold(around.Now.Wall, HasFailed: false, UnderWay: null, JustPassed: null),
        };
    }

    private static double Says(Site site, Sensor sensor, HashSet<LoadId> on)
    {
        var circuit = site.Circuits[0];
        return sensor.Kind switch
        {
            SensorKind.CircuitCurrent => site.Loads.Where(load => on.Contains(load.Id)).Sum(load => load.CurrentA(circuit.VoltageV)),
            SensorKind.PumpFlow => on.Contains(site.Racks[0].Pump.Load) ? 30 : 0,
            SensorKind.TrayLevel => 0,
            SensorKind.LightLevel => site.Racks[0].Tier(1) is var tier && on.Contains(tier.Light!.Value) ? tier.LitLux : 0,
            _ => Surroundings.Harmless(sensor),
        };
    }
}
