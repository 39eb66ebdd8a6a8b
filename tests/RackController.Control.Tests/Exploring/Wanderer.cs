using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Exploring;

/// <summary>Takes one interlock from state to state, and knows every turning that can be taken from each.</summary>
internal sealed class Wanderer
{
    /// <summary>From one scan to the next.</summary>
    public static readonly Duration Scan = Duration.FromMilliseconds(100);

    private static readonly Duration justNot = Duration.FromMilliseconds(1);
    private static readonly Duration longer = Duration.FromHours(25);
    private readonly Site site;
    private readonly string key;
    private readonly Facts facts;
    private readonly WalkedTests tests;
    private readonly RackDesk desk;
    private readonly Area rack;
    private readonly Area area;
    private readonly Agenda agenda = new();

    public Wanderer(Site site, Interlock interlock)
    {
        this.site = site;
        key = interlock.Key;
        var areas = new Areas(site);
        rack = areas.Racks[0];
        area = areas.At(interlock.Place);
        desk = new RackDesk(site.Racks[0]);
        tests = new WalkedTests(site, areas, Surroundings.AtRest(site).Now);
        facts = new Facts(site, areas, [desk], tests.Log, Surroundings.AtRest(site).Now);
        Start = Look(interlock, Surroundings.AtRest(site).After(Scan), null);
    }

    /// <summary>The rack at rest, just after its first start.</summary>
    public Standpoint Start { get; }

    /// <summary>Every row's instances at a site.</summary>
    public static ImmutableArray<Interlock> All(Site site, Moment start, ICollection<SensorLevel> levels) =>
        CauseAndEffectTable.Build(new InterlockSite(site, start, levels));

    /// <summary>Every turning that can be taken from a state.</summary>
    public IEnumerable<(TurningKind Kind, Standpoint To)> Turnings(Standpoint from, IEnumerable<Input> inputs)
    {
        foreach (var to in inputs.SelectMany(input => Told(from, input)))
        {
            yield return (TurningKind.Facts, to);
        }

        foreach (var later in Later(from))
        {
            yield return (TurningKind.Time, later);
        }

        var seen = Twin.Of(from.Interlock);
        seen.Acknowledged();
        yield return (TurningKind.Acknowledgement, Look(seen, from.Around.After(Scan), Step(from, "acknowledged")));

        var reset = Twin.Of(from.Interlock);
        reset.TryReset();
        yield return (TurningKind.Reset, Look(reset, from.Around.After(Scan), Step(from, "reset")));
        yield return (TurningKind.Restart, Restart(from, Duration.Zero));
        yield return (TurningKind.Restart, Restart(from, longer));
    }

    /// <summary>One input is turned each way.</summary>
    public IEnumerable<Standpoint> Told(Standpoint from, Input input) => input.Ways.Select(
        way => Look(Twin.Of(from.Interlock), way.Set(from.Around.After(Scan)), Step(from, $"{input.Name} {way.Name}")));

    /// <summary>Nothing but time passes: until just before the next time that was named, until then, and until just after.</summary>
    public IEnumerable<Standpoint> Later(Standpoint from) => Waits(from).Distinct().Select(wait => Wait(from, wait));

    /// <summary>Nothing but time passes.</summary>
    public Standpoint Wait(Standpoint from, Duration time) =>
        Look(Twin.Of(from.Interlock), from.Around.After(time), Step(from, $"{time.TotalSeconds} s"));

    /// <summary>An interlock looks.</summary>
    public Standpoint Look(Interlock interlock, Surroundings around, Trail? came)
    {
        around.Tell(facts, tests, desk, rack, area);
        agenda.Begin(around.Now);
        interlock.Look(facts, agenda);
        return new Standpoint(interlock, around, agenda.EarliestLook, came);
    }

    private static IEnumerable<Duration> Waits(Standpoint from)
    {
        if (from.Next == MonotonicTime.Never)
        {
            return [Scan, longer];
        }

        var left = Duration.Max(from.Next - from.Around.Now.Monotonic, justNot);
        return left > Scan ? [Scan, left - justNot, left, left + justNot] : [left, Scan];
    }

    private Standpoint Restart(Standpoint from, Duration away)
    {
        var writer = new MemoryWriter(from.Around.Now, expected: 0);
        from.Interlock.Save(writer);
        var before = from.Around.After(away + Scan);
        var around = before with { Before = before.Now, On = [.. site.Loads.Select(_ => false)] };
        var anew = All(site, around.Now, []).Single(each => each.Key == key);
        anew.Restore(new MemoryReader(writer.ToMemory(), around.Now), around.Now);
        return Look(anew, around.After(Scan), Step(from, $"restart after {away}"));
    }

    private static Trail Step(Standpoint from, string step) => new(step, from.Came);
}
