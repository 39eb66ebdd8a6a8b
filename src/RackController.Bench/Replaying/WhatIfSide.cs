using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>One of the two controllers that are told the same: what it reads, commands, remembers and brings about.</summary>
internal sealed class WhatIfSide(Site site) : IEventSink
{
    private RackControl? control;
    private RelayCommands? commands;

    public Readings Readings { get; } = new(site);

    /// <summary>Trips and alarms so far.</summary>
    public EventCounts Counts { get; } = new(site);

    /// <summary>The last scan, or when it took charge.</summary>
    public Moment At { get; private set; }

    /// <summary>What it remembered when it last rested; null when it never did.</summary>
    public ControlMemory? Memory { get; private set; }

    /// <summary>Takes charge.</summary>
    public void Begin(in Moment at, ControlMemory? memory)
    {
        control = new RackControl(site, at, memory);
        commands = null;
        At = at;
    }

    /// <summary>Lets go, and remembers.</summary>
    public void Rest()
    {
        Memory = control?.Save() ?? Memory;
        control = null;
    }

    /// <summary>The scan at which it could change something by itself before the next on record; null when there is none.</summary>
    public Moment? DueBefore(RecordedScan next) =>
        control is null || commands is null ? null : ReplayPace.Before(next, control, At);

    public void Scan(in Moment at, in ScanConditions conditions, OperatorRequest[] requests)
    {
        Invariant.Holds(control is not null, "who scans has taken charge");
        At = at;
        commands = control.Scan(at, Readings, conditions, requests, this);
    }

    public bool IsOn(LoadId load) => commands?.IsOn(load) ?? site[load].SafeState == SwitchState.On;

    /// <summary>Why a load is as it is, step by step.</summary>
    public ImmutableArray<string> Why(LoadId load)
    {
        Invariant.Holds(control is not null, "who is asked has taken charge");
        return ReplayWords.Of(control.Why()[load.Index]);
    }

    void IEventSink.Take(ControlEvent happened) => Counts.Count(new LogEntry(
        Duration.Zero, happened.At.Wall, happened.At.Wall, happened.Kind, happened.Subject, happened.What, happened.Because));
}
