using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Opens the contactor of a circuit while an interlock asks for it, and closes it when none does any more. It acts where no relay can: on
/// everything that hangs on the circuit.
/// </summary>
internal sealed class Contactors
{
    private readonly Site site;
    private readonly ImmutableArray<(Circuit Circuit, ImmutableArray<Interlock> Cutters)> contactors;

    public Contactors(Site site, ImmutableArray<Interlock> interlocks)
    {
        this.site = site;
        contactors =
        [
            .. site.Circuits.Where(circuit => circuit.HasUpstreamContactor).Select(circuit => (
                circuit, interlocks.Where(interlock => interlock.MayCut.Contains(circuit.Id)).ToImmutableArray())),
        ];
    }

    /// <summary>Commands them, after every interlock has looked, and tells admission.</summary>
    public void Command(RelayCommands commands, Admission admission, Areas areas, in Moment now, IEventSink events)
    {
        foreach (var (circuit, cutters) in contactors)
        {
            var cutter = CutterOf(circuit.Id, cutters);
            var isCut = cutter is not null;
            if (commands.IsCut(circuit.Id) == isCut)
            {
                continue;
            }

            commands.SetCut(circuit.Id, isCut);
            admission.Cut(circuit.Id, isCut);
            areas.Of(circuit.Id).Agenda.Add(now.Monotonic);
            events.Take(new ControlEvent(
                now, EventKind.Load, circuit.ContactorName, isCut ? "open" : "closed",
                cutter?.Words(new ClockFace(now, site.Zone)) ?? "nothing asks for it to be open"));
        }
    }

    private static Interlock? CutterOf(CircuitId circuit, ImmutableArray<Interlock> cutters)
    {
        foreach (var cutter in cutters)
        {
            if (cutter.Cuts(circuit))
            {
                return cutter;
            }
        }

        return null;
    }
}
