namespace RackController.Model;

/// <summary>
/// What each load is told, powered or not, and each circuit's contactor, open or not. Polarity and contact are the business of
/// whoever switches the relay. One instance is filled again by every scan.
/// </summary>
public sealed class RelayCommands
{
    private readonly SwitchState[] states;
    private readonly bool[] openContactors;

    /// <summary>Commands for a site, every load in its safe state and every contactor closed.</summary>
    /// <param name="site">The site whose loads will be commanded.</param>
    public RelayCommands(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        states = new SwitchState[site.Loads.Length];
        openContactors = new bool[site.Circuits.Length];
        foreach (var load in site.Loads)
        {
            states[load.Id.Index] = load.SafeState;
        }
    }

    /// <summary>How many loads there are.</summary>
    public int Count => states.Length;

    /// <summary>What one load is told.</summary>
    /// <param name="load">A load of the site.</param>
    public SwitchState this[LoadId load]
    {
        get => states[load.Index];
        set => states[load.Index] = value;
    }

    /// <summary>Whether a load is told to be powered.</summary>
    /// <param name="load">A load of the site.</param>
    public bool IsOn(LoadId load) => states[load.Index] == SwitchState.On;

    /// <summary>Whether the contactor of a circuit is told to cut it; never where there is none.</summary>
    /// <param name="circuit">A circuit of the site.</param>
    public bool IsCut(CircuitId circuit) => openContactors[circuit.Index];

    /// <summary>Tells the contactor of a circuit to cut it, or to close again.</summary>
    /// <param name="circuit">A circuit of the site that has one.</param>
    /// <param name="isCut">Whether to cut it.</param>
    public void SetCut(CircuitId circuit, bool isCut) => openContactors[circuit.Index] = isCut;

    /// <summary>Takes over everything that <paramref name="other"/> tells.</summary>
    /// <param name="other">Commands for the same site.</param>
    public void CopyFrom(RelayCommands other)
    {
        ArgumentNullException.ThrowIfNull(other);
        other.states.CopyTo(states, 0);
        other.openContactors.CopyTo(openContactors, 0);
    }
}
