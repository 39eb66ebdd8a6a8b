using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Opens the contactor of a circuit while an interlock asks for it, and closes it when none does any more. It acts where no relay can: on
/// everything that hangs on the circuit. It stays open while hands are in a rack that draws from the circuit, or were until a moment ago.
/// Hazard: a pump whose relay is still welded starts as the contactor closes, whatever its relay is told.
/// </summary>
internal sealed class Contactors
{
    private readonly Site site;
    private readonly ImmutableArray<(Circuit Circuit, ImmutableArray<Interlock> Cutters, ImmutableArray<RackDesk> Desks)> contactors;

    public Contactors(Site site, ImmutableArray<Interlock> interlocks, ImmutableArray<RackDesk> desks)
    {
        this.site = site;
        contactors =
        [
            .. site.Circuits.Where(circuit => circuit.HasUpstreamContactor).Select(circuit => (
                circuit, interlocks.Where(interlock => interlock.MayCut.Contains(circuit.Id)).ToImmutableArray(),
                RacksOn(site, circuit.Id).Select(rack => desks[rack.Index]).ToImmutableArray())),
        ];
    }

    /// <summary>The racks that draw from a circuit.</summary>
    public static IEnumerable<RackId> RacksOn(Site site, CircuitId circuit) =>
        site.Loads.Where(load => load.Circuit == circuit).Select(load => load.Rack).Distinct();

    /// <summary>Commands them, after every interlock has looked, and tells admission.</summary>
    public void Command(RelayCommands commands, Admission admission, Areas areas, in Moment now, IEventSink events)
    {
        foreach (var (circuit, cutters, racks) in contactors)
        {
            var cutter = CutterOf(cutters);
            var isCut = cutter is not null;
            if (commands.IsCut(circuit.Id) == isCut || (!isCut && MayHaveHandsIn(racks)))
            {
                continue;
            }

            commands.SetCut(circuit.Id, isCut);
            admission.Cut(circuit.Id, isCut, now.Monotonic);
            areas.Of(circuit.Id).Agenda.Add(now.Monotonic);
            events.Take(new ControlEvent(
                now, EventKind.Load, circuit.ContactorName, isCut ? "open" : "closed",
                cutter?.Words(new ClockFace(now, site.Zone)) ?? "nothing asks for it to be open"));
        }
    }

    private static bool MayHaveHandsIn(ImmutableArray<RackDesk> racks)
    {
        foreach (var rack in racks)
        {
            if (rack.MayHaveHandsIn)
            {
                return true;
            }
        }

        return false;
    }

    private static Interlock? CutterOf(ImmutableArray<Interlock> cutters)
    {
        foreach (var cutter in cutters)
        {
            if (cutter.Objects)
            {
                return cutter;
            }
        }

        return null;
    }
}
