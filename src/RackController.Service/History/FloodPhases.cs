using System.Collections.Immutable;
using NodaTime;
using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>When one flood went from phase to phase, and which tiers took part.</summary>
/// <param name="Filling">When the pump began to fill.</param>
/// <param name="Why">Why it was due; empty where that is not among the events.</param>
internal sealed record FloodPhases(Instant Filling, string Why)
{
    private const string Started = "started";

    /// <summary>When the water was held; null where it never was.</summary>
    public Instant? Soaking { get; init; }

    /// <summary>When the pump was told off; null while it runs.</summary>
    public Instant? Draining { get; init; }

    /// <summary>What cut it short; null when nothing did.</summary>
    public string? CutShort { get; init; }

    /// <summary>The tiers whose valves stayed shut; null where one was switched while the pump ran, or nobody knows.</summary>
    public TierSet? Resting { get; init; }

    /// <summary>Finds floods, oldest first.</summary>
    /// <param name="events">The floods of one rack, the switchings of its valves and the starts of the controller, oldest first.</param>
    /// <param name="valves">The valves by name, each with its tier.</param>
    public static IEnumerable<FloodPhases> Of(IEnumerable<ControlEvent> events, ImmutableDictionary<string, int> valves)
    {
        var shut = new ShutValves(valves);
        var why = "";
        FloodPhases? open = null;
        foreach (var (at, kind, subject, what, because) in events)
        {
            switch (kind, what)
            {
                case (EventKind.Load, _):
                    shut.Switch(subject, what == "on");
                    open = open is { Draining: null } ? open with { Resting = null } : open;
                    break;
                case (EventKind.Controller, Started):
                    shut.ShutAll();
                    break;
                case (EventKind.Flood, FloodEvent.Due):
                    why = because;
                    shut.Know();
                    break;
                case (EventKind.Flood, FloodEvent.Drained) when open is null:
                    // It may have come due while a flood drained that began before the first event, with valves that were open then.
                    shut.Forget();
                    break;
                case (EventKind.Flood, FloodEvent.Filling):
                    if (open is not null)
                    {
                        yield return open;
                    }

                    (open, why) = (new FloodPhases(at.Wall, why) { Resting = shut.Now }, "");
                    break;
                case (EventKind.Flood, FloodEvent.Soaking) when open is not null:
                    open = open with { Soaking = at.Wall };
                    break;
                case (EventKind.Flood, FloodEvent.CutShort) when open is not null:
                    open = open with { CutShort = because };
                    break;
                case (EventKind.Flood, FloodEvent.Draining) when open is not null:
                    open = open with { Draining = at.Wall };
                    break;
            }
        }

        if (open is not null)
        {
            yield return open;
        }
    }

    /// <summary>The valves that are shut, as far as the events tell: all of them at rest, and at a start.</summary>
    private sealed class ShutValves(ImmutableDictionary<string, int> valves)
    {
        private readonly HashSet<int> open = [];
        private bool isKnown = valves.IsEmpty;

        public TierSet? Now => isKnown ? TierSet.Of(valves.Values.Where(tier => !open.Contains(tier))) : null;

        public void Switch(string valve, bool isOn)
        {
            if (isOn)
            {
                open.Add(valves[valve]);
            }
            else
            {
                open.Remove(valves[valve]);
            }
        }

        public void ShutAll()
        {
            open.Clear();
            Know();
        }

        // Valves open between the flood that is due and the pump, so from its being due on nothing is missed.
        public void Know() => isKnown = true;

        public void Forget() => isKnown = valves.IsEmpty;
    }
}
