using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Growing;

/// <summary>What a circuit has left at the worst moment of an ordinary day, by nameplates and schedule. Fans and aerators count as on;
/// a pump counts at its floods, a valve with its pump. It is a sum and no measurement, and starting currents are left out.</summary>
/// <param name="Circuit">The circuit.</param>
/// <param name="At">The first time of the day, since midnight, at which most runs together.</param>
/// <param name="Together">What runs then.</param>
public sealed record CircuitHeadroom(Circuit Circuit, Duration At, ImmutableArray<Load> Together)
{
    private static readonly Duration day = Duration.FromDays(1);

    /// <summary>What runs together, A.</summary>
    public double TogetherA => SumA(Together);

    /// <summary>What is left of what it may carry for hours, A; negative where that is not enough.</summary>
    public double LeftA => Circuit.ContinuousLimitA - TogetherA;

    /// <summary>The headroom of a circuit.</summary>
    /// <param name="site">Its site.</param>
    /// <param name="circuit">The circuit.</param>
    public static CircuitHeadroom Of(Site site, Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(circuit);
        var loads = site.Loads.Where(load => load.Circuit == circuit.Id)
            .Select(load => (Load: load, Times: TimesOf(site[load.Rack], load))).ToImmutableArray();

        // More can run together only where something begins.
        return loads.SelectMany(one => one.Times).Select(time => time.Start).Append(Duration.Zero).Distinct().Order()
            .Select(at => new CircuitHeadroom(
                circuit, at, [.. loads.Where(one => one.Times.Any(time => Covers(time, at))).Select(one => one.Load)]))
            .MaxBy(one => one.TogetherA)!;
    }

    /// <summary>It in lines, without a point at their ends.</summary>
    /// <param name="moreA">What else somebody would like to plug in, A; null for nothing.</param>
    public IEnumerable<string> Lines(double? moreA)
    {
        yield return $"may carry {Circuit.ContinuousLimitA:0.##} A for hours, of a breaker of {Circuit.BreakerA:0.##} A";
        if (Together.IsEmpty)
        {
            yield return "nothing on it runs";
            yield break;
        }

        var parts = Together.GroupBy(load => load.Kind).Select(kind => $"{Words(kind.Key, kind.Count())} {SumA(kind):0.00}");
        yield return $"most runs together at {LocalTime.Midnight.PlusNanoseconds(At.ToInt64Nanoseconds()):HH:mm}: "
            + $"{string.Join(" + ", parts)} = {TogetherA:0.00} A";
        yield return $"left: {Circuit.ContinuousLimitA:0.##} - {TogetherA:0.00} = {LeftA:0.00} A"
            + (LeftA < 0 ? ": not all of it can run together, and the controller sheds by priority, lights first" : "");
        if (Together.Where(load => load.Kind == LoadKind.Light).MaxBy(AmpereOf) is { } light && LeftA >= AmpereOf(light))
        {
            var count = Math.Floor(LeftA / AmpereOf(light));
            yield return $"that is {count:0} more {(count == 1 ? "light" : "lights")} like {light.Name}, {AmpereOf(light):0.00} A each";
        }

        if (moreA is { } more)
        {
            var share = (TogetherA + more) / Circuit.ContinuousLimitA;
            yield return $"with {more:0.##} A more: {TogetherA + more:0.00} A, {100 * share:0} % of what it may carry"
                + (share > 1 ? ": it does not fit; put it on another circuit" : "");
        }
    }

    private double SumA(IEnumerable<Load> loads) => loads.Sum(AmpereOf);

    private double AmpereOf(Load load) => load.CurrentA(Circuit.VoltageV);

    private static bool Covers((Duration Start, Duration Length) time, Duration at) =>
        time.Length >= day || (at >= time.Start ? at - time.Start : at + day - time.Start) < time.Length;

    private static IEnumerable<(Duration Start, Duration Length)> TimesOf(Rack rack, Load load)
    {
        var tier = load.TierNumber is { } number ? rack.Tier(number) : null;
        var pumps = rack.Schedule.Floods.Fill.Limit + rack.Schedule.Floods.Soak;
        return load.Kind switch
        {
            LoadKind.Fan or LoadKind.Aerator => [(Duration.Zero, day)],
            LoadKind.Pump => rack.Schedule.Starts().Select(start => (start, pumps)),
            LoadKind.Valve => tier!.InUse ? rack.Schedule.Starts().Select(start => (start, pumps)) : [],
            LoadKind.Light => tier!.InUse && rack.Schedule.Lights[tier.Number - 1] is { } lit
                ? [(Duration.FromNanoseconds(
                    (lit.Start.NanosecondOfDay + (rack.Schedule.LightStagger * (tier.Number - 1)).ToInt64Nanoseconds())
                    % NodaConstants.NanosecondsPerDay), lit.Length)]
                : [],
            _ => throw new InvariantBrokenException("every kind of load has its times"),
        };
    }

    private static string Words(LoadKind kind, int count) => (kind, count) switch
    {
        (LoadKind.Pump, 1) => "pump",
        (LoadKind.Pump, _) => $"{count} pumps",
        (LoadKind.Valve, 1) => "valve",
        (LoadKind.Valve, _) => $"{count} valves",
        (LoadKind.Light, 1) => "light",
        (LoadKind.Light, _) => $"{count} lights",
        (LoadKind.Fan, 1) => "fan",
        (LoadKind.Fan, _) => $"{count} fans",
        (LoadKind.Aerator, 1) => "aerator",
        (LoadKind.Aerator, _) => $"{count} aerators",
        _ => throw new InvariantBrokenException("every kind of load has its name"),
    };
}
