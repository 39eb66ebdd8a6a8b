namespace RackController.Control;

/// <summary>The rows that know by current what relays and loads really do.</summary>
internal static class CurrentRows
{
    public static CauseAndEffectRow RelayWelded { get; } = new(
        "relay-welded", "a load's relay is told off and current still flows", "pump current",
        RowEffect.CutCircuit, "a pump: the circuit's contactor opens, where there is one; any other load: a person is told",
        "operator reset, after the relay was changed",
        new AlarmText(
            AlarmPriority.Critical, "what hangs on the relay stays on, whatever the controller says",
            "pull its plug; change the relay; reset", "at once"))
    {
        Scope = RowScope.Circuit,
        Returns = WaysBack.ByItself | WaysBack.Reset,
        Instances = (row, site) => site.MeasuredLoads.Select(load => new RelayWelded(row, load, site.Site[load.Circuit])),
    };

    public static CauseAndEffectRow LoadDead { get; } = new(
        "dead-load", "a load is told on and draws no current", "pump current", RowEffect.Tell,
        "a person is told", "by itself once it draws current",
        new AlarmText(
            AlarmPriority.Medium, "crops dry out", "look at the load, its plug and its relay", "within a day"))
    {
        Scope = RowScope.Circuit,
        Instances = (row, site) => site.MeasuredLoads.Select(load => new LoadDead(row, load)),
    };
}
