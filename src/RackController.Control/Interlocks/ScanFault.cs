using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Puts every load in its safe state when scans come late or inputs and outputs fail, until they have been good for a while.
/// Hazard: a relay that stays on because nobody looked. Whoever scans feeds no watchdog meanwhile.
/// </summary>
internal sealed class ScanFault(CauseAndEffectRow row, Site site, ImmutableArray<LoadId> loads)
    : Interlock(row, Place.Controller, loads)
{
    private readonly Duration recovery = site.Racks.Max(rack => rack.Limits.ScanRecovery);
    private MonotonicTime? goodAgainAt;
    private string what = "";

    public override string Settings => $"late by {site.Scan.LateAfter.InWords()}; good for {recovery.InWords()}";

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        if (facts.IsScanFaulty)
        {
            what = facts.Conditions.Io.Fault ?? $"a scan came {facts.Conditions.LateBy.InWords()} late";
            goodAgainAt = facts.Now.Monotonic + recovery;
        }

        if (goodAgainAt is not { } until)
        {
            return false;
        }

        if (facts.Now.Monotonic >= until)
        {
            goodAgainAt = null;
            return false;
        }

        agenda.Add(until);
        return true;
    }

    public override string Words(ClockFace clock) => goodAgainAt is { } until ? $"{what}; safe until {clock.At(until)}" : what;
}
