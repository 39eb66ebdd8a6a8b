using System.Globalization;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>What can be asked of one rack, and what comes of it.</summary>
internal static class RackChoices
{
    /// <summary>All of it.</summary>
    /// <param name="rack">The rack.</param>
    public static IEnumerable<Choice> Of(Rack rack)
    {
        yield return new Choice(
            "flood", $"Flood {rack.Name} now", "Flood now", by => new FloodNow(by, rack.Id), (site, at) => Flood(site, rack, at));
        yield return new Choice(
            "skip", $"Skip the next flood of {rack.Name}", "Skip it", by => new SkipNextFlood(by, rack.Id),
            (site, at) => Skip(site, rack, at));
        yield return new Choice(
            "hold", $"Hands in {rack.Name}", "Hold the pump", by => new HoldForService(by, rack.Id, rack.Limits.ServiceHoldMaximum),
            (_, at) => Hold(rack, at));
        yield return new Choice(
            "end-hold", $"Hands are out of {rack.Name}", "Hands are out", by => new EndServiceHold(by, rack.Id),
            (site, at) => Freed(site, rack, at));
        yield return new Choice(
            "resume", $"Resume {rack.Name}", "Resume", by => new Resume(by, rack.Id), (site, at) => Freed(site, rack, at));
        foreach (var tier in rack.Tiers)
        {
            yield return new Choice(
                $"tiers/{tier.Number}/rest", $"Take tier {tier.Number} of {rack.Name} out of use", "Out of use",
                by => new SetTierInUse(by, rack.Id, tier.Number, false),
                (_, _) =>
                    [$"Tier {tier.Number} has no light from now on, and no water where it has a valve of its own.", StaysOverRestart]);
            yield return new Choice(
                $"tiers/{tier.Number}/use", $"Take tier {tier.Number} of {rack.Name} into use", "Into use",
                by => new SetTierInUse(by, rack.Id, tier.Number, true),
                (_, _) => [$"Tier {tier.Number} is lit and flooded as the schedule says.", StaysOverRestart]);
        }
    }

    private const string StaysOverRestart = "It stays so until somebody changes it, also over a restart.";

    private static IEnumerable<string> Flood(Site site, Rack rack, SiteStatus status)
    {
        var outlook = status.Outlooks[rack.Id.Index];
        var phase = status.Floods[rack.Id.Index];
        if (status.Asked[rack.Id.Index].IsStopped)
        {
            yield return $"{rack.Name} is stopped: nothing will flood before it is resumed.";
            yield break;
        }

        yield return phase switch
        {
            FloodPhase.Idle when outlook.Objections.IsEmpty => "The pump starts at once, or as soon as its circuit has its turn.",
            FloodPhase.Idle => "The flood waits until the pump may start:",
            FloodPhase.Draining => "A flood follows once the trays have drained.",
            _ => $"Another flood is not begun: {phase.InWords()}.",
        };
        foreach (var objection in outlook.Objections)
        {
            yield return $"{objection}.";
        }

        var (runs, drains) = (PageWords.CountDown(outlook.PumpRunsFor), PageWords.CountDown(outlook.DrainsFor));
        yield return $"The pump runs for {runs} at most, then the trays drain for {drains}.";
        if (!outlook.Shed.IsEmpty)
        {
            var names = string.Join(", ", outlook.Shed.Select(load => site[load].Name));
            yield return $"Meanwhile {names} must wait: {site[site[rack.Pump.Load].Circuit].Name} does not carry all of it at once.";
        }

        yield return "The schedule stays as it is.";
    }

    private static IEnumerable<string> Skip(Site site, Rack rack, SiteStatus status)
    {
        var next = status.Due.FirstOrDefault(due => due.Subject == rack.Name && due.What == "flood");
        yield return next is null
            ? "No flood is due by the schedule."
            : $"The flood of {next.At.InZone(site.Zone).ToString("ddd HH:mm", CultureInfo.InvariantCulture)} is left out; "
                + "the one after it comes as planned.";
        yield return "Asking twice still leaves out one.";
    }

    private static IEnumerable<string> Hold(Rack rack, SiteStatus status)
    {
        if (status.Floods[rack.Id.Index] is FloodPhase.Filling or FloodPhase.Soaking)
        {
            yield return "The pump stops now, in the midst of a flood.";
        }

        var most = PageWords.CountDown(rack.Limits.ServiceHoldMaximum);
        yield return $"The pump of {rack.Name} cannot start and its valves are closed, for {most} at most.";
        yield return "It ends by itself after that, with a warning before; say when your hands are out.";
        yield return $"{HandsInWords.Hold} {HandsInWords.Plug}";
    }

    private static IEnumerable<string> Freed(Site site, Rack rack, SiteStatus status)
    {
        yield return $"The pump of {rack.Name} may start in {PageWords.CountDown(rack.Limits.StartDelay)}: keep your hands out.";
        var due = status.Due.Where(due => due.Subject.StartsWith(rack.Name, StringComparison.Ordinal)).Take(3);
        foreach (var next in due)
        {
            yield return $"Next: {PageWords.Clock(next.At, status.At.Wall, site.Zone)} {next.Subject} {next.What}.";
        }
    }
}
