using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Opens the contactor of a light that was told off and still draws current in air that is too hot. Hazard: a lamp that no relay puts out
/// heats what is too hot already, and, if the contactor closed by itself, again and again with nobody there.
/// <para>Where the light is known to draw current though told off, only a person may close the contactor again. Where it merely seems
/// to, it closes by itself once the air has cooled, because it takes air and water away as well; and the third time in a day it is
/// taken for known, since that is no accident.</para>
/// </summary>
/// <param name="row">The row.</param>
/// <param name="site">Its site.</param>
/// <param name="light">The light.</param>
/// <param name="air">The sensors of the air that it heats.</param>
internal sealed class LightStaysOn(CauseAndEffectRow row, InterlockSite site, Load light, ImmutableArray<Sensor> air)
    : Interlock(row, Place.Of(site.Site[light.Rack], light), [])
{
    private const int SuspicionsToLatch = 3;
    private readonly Circuit circuit = site.Site[light.Circuit];
    private readonly InterlockLimits limits = site.Site[light.Rack].Limits;
    private readonly ImmutableArray<HotAir> airs = [.. air.Select(sensor => new HotAir(site, sensor, site.Site[light.Rack].Limits))];
    private readonly RecentTrips suspicions = new($"{light.Name}/{row.Id}", SuspicionsToLatch);
    private readonly ShownUnit unit = site.Site.Units.Of("°C");
    private bool isSuspected;

    public override string Settings =>
        $"above {unit.Limit(limits.AirHotC)}, until below {unit.Limit(limits.AirHotC - limits.AirHotReturnK)}; known to stay on, or "
        + $"{SuspicionsToLatch.Times()} in 24 h, it latches";

    public override ImmutableArray<CircuitId> MayCut { get; } = [light.Circuit];

    protected override bool IsPresent(Facts facts, Agenda agenda)
    {
        var flow = facts.WasOn(light.Id) ? Flow.Still : facts.FlowOf(light.Id);
        var isHot = IsHot(facts);
        var staysOn = isHot && flow is Flow.Flows or Flow.SeemsToFlow or Flow.MayFlow;
        if (staysOn && (flow == Flow.Flows || (!Objects && IsOneTooMany(facts))))
        {
            Latch();
        }

        // Behind an open contactor nothing flows, which proves nothing.
        isSuspected = !IsLatched && (staysOn || (isSuspected && isHot));
        return staysOn || isSuspected;
    }

    public override string Words(ClockFace clock) => IsLatched
        ? $"{light.Name} stayed on in air that is too hot though its relay was told off, and the contactor cuts {circuit.Name} until "
            + "somebody has pulled that light's plug and resets"
        : $"{light.Name}, or one that draws as much, {(isSuspected ? "seems" : "seemed")} to stay on in air that is too hot though its "
            + $"relay was told off, and the contactor cuts {circuit.Name} until the air has cooled";

    protected override void SaveOwn(MemoryWriter memory)
    {
        suspicions.Save(memory);
        foreach (var (place, each) in airs.Index())
        {
            each.Save(memory, $"{Key}/{air[place].Name}");
        }
    }

    protected override void RestoreOwn(MemoryReader memory, Moment start)
    {
        suspicions.Restore(memory);
        foreach (var (place, each) in airs.Index())
        {
            each.Restore(memory, $"{Key}/{air[place].Name}");
        }
    }

    protected override void Forget() => suspicions.Clear();

    private bool IsHot(Facts facts)
    {
        var isHot = false;
        foreach (var each in airs)
        {
            if (each.Look(facts))
            {
                Changed();
            }

            isHot |= each.IsHot;
        }

        return isHot;
    }

    private bool IsOneTooMany(Facts facts)
    {
        Changed();
        return suspicions.AddAndAskWhetherTooMany(facts.Now.Monotonic);
    }
}
