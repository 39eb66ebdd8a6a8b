using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Watches a rig from outside, scan by scan, and knows nothing of interlocks: only what may never be seen at the
/// relays, given what the sensors said and people asked.</summary>
internal sealed class Warden(Rig rig)
{
    private readonly Dictionary<string, MonotonicTime> since = [];
    private readonly Dictionary<string, MonotonicTime> offSince = [];
    private readonly HashSet<string> on = [];
    private MonotonicTime lastOn = MonotonicTime.FromMilliseconds(-1_000_000);
    private MonotonicTime booted = rig.Now.Monotonic;
    private Duration pumpTime;

    private static Duration Debounce { get; } = Duration.FromMilliseconds(200);

    private InterlockLimits Limits => rig.Site.Racks[0].Limits;

    private MonotonicTime Now => rig.Now.Monotonic;

    /// <summary>The controller started anew: nothing was on meanwhile.</summary>
    public void Booted()
    {
        since.Clear();
        offSince.Clear();
        on.Clear();
        on.UnionWith(rig.Site.Loads.Where(load => load.SafeState == SwitchState.On).Select(load => load.Name));
        booted = Now;
        lastOn = Now + -Duration.FromMinutes(10);
    }

    /// <summary>Looks at the relays after a scan.</summary>
    public void Look()
    {
        var water = rig.IsOn("north/pump") || rig.IsOn("north/tier 1 valve") || rig.IsOn("north/tier 2 valve");
        Never("pump on a dry reservoir", rig.IsOn("north/pump") && Lasts("dry", rig.Value("north/reservoir low float") == 0));
        Never("water while the floor is wet", water && Lasts("wet", rig.Value("north/leak rope") == 1));
        Never("water above a standpipe", water && Lasts("high", rig.Value("north/tier 1 high float") == 1));
        Never("pump while a rope is silent", rig.IsOn("north/pump") && Lasts("silent", rig.IsSilent("north/leak rope"), 2_000));
        Never("anything without supply", Lasts("away", rig.Value("sockets/supply sense") == 0) && on.Count > 0 && Any());
        Never("unsafe while outputs fail", !rig.Conditions.Io.IsOk && Unsafe().Any());
        Never("unsafe while stopped", IsStopped && Unsafe().Any());
        Never("water while hands are in", Now < HandsUntil && water);
        Never("a circuit above its limit", rig.Site.Circuits[0].ContinuousLimitA + 1e-6 < Amperes());
        FollowRelays();
    }

    /// <summary>Whether somebody stopped the rack.</summary>
    public bool IsStopped { get; set; }

    /// <summary>Until when hands are in the rack.</summary>
    public MonotonicTime HandsUntil { get; set; } = MonotonicTime.FromMilliseconds(-1);

    private void FollowRelays()
    {
        foreach (var load in rig.Site.Loads)
        {
            if (rig.IsOn(load.Name) && on.Add(load.Name))
            {
                TurnedOn(load);
            }
            else if (!rig.IsOn(load.Name) && on.Remove(load.Name))
            {
                offSince[load.Name] = Now;
            }
        }

        var pump = rig.IsOn("north/pump");
        Never("a pump past its maximum", pump && Now - since["north/pump"] >= Limits.PumpMaximumRun);
        pumpTime += pump ? Duration.FromMilliseconds(100) : Duration.Zero;
        Never("a pump past its budget", pumpTime > Limits.PumpDailyBudget + Duration.FromSeconds(1));
    }

    private void TurnedOn(Load load)
    {
        Never("two loads at once", Now - lastOn < Limits.SwitchingStagger);
        lastOn = Now;
        since[load.Name] = Now;
        if (offSince.TryGetValue(load.Name, out var off))
        {
            Never($"a relay without rest: {load.Name}", Now - off < Limits.RelayRest);
        }

        if (load.Kind == LoadKind.Pump)
        {
            var rests = offSince.TryGetValue(load.Name, out var stopped) ? stopped : booted;
            Never("a pump without rest", Now - rests < Limits.PumpRest);
        }
    }

    private bool Any() => rig.Site.Loads.Any(load => rig.IsOn(load.Name));

    private IEnumerable<Load> Unsafe() =>
        rig.Site.Loads.Where(load => load.SafeState == SwitchState.Off && rig.IsOn(load.Name));

    private double Amperes() => rig.Site.Loads.Where(load => rig.IsOn(load.Name)).Sum(load => load.CurrentA(120));

    private bool Lasts(string what, bool isSo, int milliseconds = 0)
    {
        if (!isSo)
        {
            since.Remove(what);
            return false;
        }

        since.TryAdd(what, Now);
        return Now - since[what] > Debounce + Duration.FromMilliseconds(milliseconds);
    }

    private void Never(string what, bool isSeen) => Assert.False(isSeen, $"{what}, at {rig.Now.Monotonic.Nanoseconds / 1e9:0.0} s");
}
