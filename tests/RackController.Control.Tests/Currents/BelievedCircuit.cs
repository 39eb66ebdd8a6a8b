using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Currents;

/// <summary>The loads of a circuit and what is believed of them. By their nameplates the pump draws 0.375 A, the aerator 0.042 A, the fan
/// 0.1 A, each of two lights 0.667 A and each of two valves 0.05 A; what is less than 0.019 A is not seen (arithmetic).</summary>
internal sealed class BelievedCircuit
{
    private readonly RelayCommands commands;

    public BelievedCircuit()
    {
        var start = new Moment(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);
        var (areas, memory) = (new Areas(Site), new MemoryReader(null, start));
        var calendar = new RackDemand(Site, new RackId(0), memory, start, []).Clock;
        commands = new RelayCommands(Site);
        Loads = new LoadBeliefs(Site, Site.Circuits[0]);
        Facts = new Facts(Site, areas, [], new ProofTestLog(Site, areas, calendar, memory, start, []), start);
        Facts.AskedBy(areas.Circuits[0]);
        Facts.Begin(start, ScanConditions.Good, commands);
    }

    public static Site Site { get; } = Sites.OneRack();

    public Facts Facts { get; }

    public LoadBeliefs Loads { get; }

    public LoadBelief Of(string load) => Loads.Of(Site.LoadNamed(load));

    /// <summary>Tells loads on or off.</summary>
    public void Tell(params (string Load, bool IsOn)[] told)
    {
        foreach (var (load, isOn) in told)
        {
            commands[Site.LoadNamed(load)] = isOn ? SwitchState.On : SwitchState.Off;
        }

        Facts.Begin(Facts.Now, ScanConditions.Good, commands);
        Loads.FollowSwitching(Facts);
    }

    /// <summary>Switches a load on and sees its current.</summary>
    public void SwitchOn(string load, double drawsA = 0.667)
    {
        Tell((load, false));
        Loads.ForgetSwitched();
        Tell((load, true));
        Judge(drawsA, 0.142 + drawsA);
        Assert.Equal(Flow.Flows, Of(load).Flow);
    }

    /// <summary>The current settles after a switching, before which it was what it had been.</summary>
    public void Judge(double changeA, double valueA) => Loads.Judge(changeA, valueA, changeA);

    /// <summary>The current changes although nobody switched anything.</summary>
    public void Wander(double changeA, double fromA = 0.142) => Loads.Wander(changeA, fromA);

    /// <summary>Nothing changes for long.</summary>
    public void LetSettle()
    {
        for (var look = 0; look < 50; look++)
        {
            Wander(0);
        }
    }
}
