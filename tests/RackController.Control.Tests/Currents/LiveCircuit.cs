using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Currents;

/// <summary>A rack whose circuit carries what its loads draw, as told and as broken, and whose sensor says so.</summary>
internal sealed class LiveCircuit
{
    private readonly Dictionary<string, double> share = [];
    private readonly HashSet<string> welded = [];

    /// <summary>A site as the test wants it, at rest in the evening, its lights out.</summary>
    public LiveCircuit(Func<Site, Site>? change = null)
    {
        var site = Sites.OneRack().WithCircuitCurrent();
        Rig = new Rig(change is null ? site : change(site), NodaTime.Instant.FromUtc(2026, 6, 2, 3, 0));
        Rig.Rack = Follow;
        Follow();
    }

    public Rig Rig { get; }

    /// <summary>What every load draws more, or less, than its nameplate says: 1 for as much.</summary>
    public double Supply { get; set; } = 1;

    /// <summary>What else is plugged in, A.</summary>
    public double OtherA { get; set; }

    /// <summary>What the circuit carries, A.</summary>
    public double CurrentA =>
        Supply * (OtherA + Rig.Site.Loads.Where(load => load.Circuit == Rig.Site.Circuits[0].Id).Sum(DrawnA));

    /// <summary>From now on a load draws a share of its nameplate: 0 for dead.</summary>
    public void Draws(string load, double shareOfNameplate) => Now(() => share[load] = shareOfNameplate);

    /// <summary>From now on a load's relay stays closed.</summary>
    public void Weld(string load) => Now(() => welded.Add(load));

    /// <summary>A load's relay was changed.</summary>
    public void Mend(string load) => Now(() => welded.Remove(load));

    /// <summary>Something changes.</summary>
    public void Now(Action change)
    {
        change();
        Follow();
    }

    private double DrawnA(Load load) =>
        (Rig.IsOn(load.Name) || welded.Contains(load.Name)) && !Rig.IsCut ? share.GetValueOrDefault(load.Name, 1) * load.CurrentA(120) : 0;

    private void Follow()
    {
        if (Rig.Value("sockets/current") != CurrentA)
        {
            Rig.Set("sockets/current", CurrentA);
        }
    }
}
