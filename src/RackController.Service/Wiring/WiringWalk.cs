using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// A walk through everything that is wired, one thing at a time: a person says go, counts along, sees one load move, and says whether it
/// was the one that is named. Everything else stays in its safe state. It knows no clock and touches no line: whoever scans gives it both.
/// </summary>
/// <param name="site">The site.</param>
internal sealed class WiringWalk(Site site)
{
    private static readonly Duration CountDown = Duration.FromSeconds(3);

    private readonly ImmutableArray<WiringItem> items = WiringItem.AllOf(site);
    private readonly WiringGuards guards = new(site);
    private readonly SortedDictionary<int, WiringResult> results = [];
    private readonly HashSet<int> switched = [];
    private int at;
    private Phase phase;
    private MonotonicTime phaseEnds;
    private MonotonicTime actsSince;
    private bool sawHarmful;
    private bool sawHarmless;
    private string? note;

    private enum Phase
    {
        Ready,
        CountsDown,
        Acts,
        Asks,
    }

    /// <summary>Whether it is over.</summary>
    public bool IsOver { get; private set; }

    /// <summary>What came of every item, in order.</summary>
    public IReadOnlyList<WiringResult> Results => [.. items.Select((item, i) =>
        results.GetValueOrDefault(i) ?? new WiringResult(
            item.Name, WiringOutcome.Skipped, switched.Contains(i) ? "it was switched, and nobody said what moved" : "nobody tried it"))];

    /// <summary>Takes what the sensors say, and perhaps a key, and moves on.</summary>
    /// <param name="now">The time.</param>
    /// <param name="readings">What the sensors say.</param>
    /// <param name="key">A key, in upper case; null for none.</param>
    /// <returns>What was settled by the key; null when nothing was.</returns>
    public WiringResult? Scan(MonotonicTime now, Readings readings, char? key)
    {
        if (IsOver)
        {
            return null;
        }

        if (items[at] is WiredSensor { Sensor: var sensor } && readings[sensor.Id] is { Quality: ReadingQuality.Good } reading)
        {
            sawHarmful |= reading.Value == sensor.HarmfulValue;
            sawHarmless |= reading.Value == 1 - sensor.HarmfulValue;
        }

        Pass(now, readings);
        return key is { } pressed ? Take(pressed, now, readings) : null;
    }

    /// <summary>Says what every load is told: its safe state, but for the one that is tried.</summary>
    /// <param name="commands">Commands of the site, each load in its safe state.</param>
    public void Tell(RelayCommands commands)
    {
        foreach (var load in site.Loads)
        {
            commands[load.Id] = load.SafeState;
        }

        foreach (var circuit in site.Circuits)
        {
            commands.SetCut(circuit.Id, false);
        }

        if (!IsOver && phase == Phase.Acts && items[at] is WiredLoad { Load: var tried })
        {
            commands[tried.Id] = tried.SafeState == SwitchState.On ? SwitchState.Off : SwitchState.On;
        }

        if (!IsOver && phase == Phase.Acts && items[at] is WiredContactor { Circuit: var cut })
        {
            commands.SetCut(cut.Id, true);
        }
    }

    /// <summary>What the person sees.</summary>
    /// <param name="now">The time.</param>
    /// <param name="readings">What the sensors say.</param>
    public WiringPage Page(MonotonicTime now, Readings readings)
    {
        var item = items[at];
        var words = (phase, item) switch
        {
            (Phase.CountsDown, _) => $"in {Math.Ceiling((phaseEnds - now).TotalSeconds):0}",
            (Phase.Acts, _) => $"now, for {Math.Ceiling((phaseEnds - now).TotalSeconds):0} s more",
            (Phase.Asks, _) => WiringWords.Ask(item),
            (_, WiredLoad { Load: var load }) => WiringWords.Announce(load, HasLowFloat(load.Rack)),
            (_, WiredContactor contactor) =>
                $"It cuts {contactor.Circuit.Name} for {WiringGuards.Longest.TotalSeconds:0} s. Hands off the rack, and look.",
            (_, WiredSensor { Sensor: var sensor }) => (sensor.IsContact ? WiringWords.Move(sensor) + " " : "")
                + WiringWords.Now(sensor, readings[sensor.Id], now, site.Units) + (AsksOf(sensor) is { } question ? " " + question : ""),
            _ => throw new InvariantBrokenException($"every item has its words, {item.GetType().Name} too"),
        };
        return new WiringPage(at + 1, items.Length, item.Name, WiringWords.Place(site.Io, item), words, note, Keys);
    }

    private ImmutableArray<(char Key, string Word)> Keys => (phase, items[at]) switch
    {
        (Phase.CountsDown or Phase.Acts, _) => [(' ', "any key stops it")],
        (Phase.Asks, _) => [('Y', "yes"), ('N', "no"), ('G', "once more"), ('S', "skip"), ('Q', "end")],
        (_, WiredSensor { Sensor: var sensor }) =>
            AsksOf(sensor) is null ? [('N', "it does not"), .. Moves] : [('Y', "yes"), ('N', "no"), .. Moves],
        _ => [('G', "go"), .. Moves],
    };

    private ImmutableArray<(char Key, string Word)> Moves =>
        at > 0 ? [('S', "skip"), ('B', "back"), ('Q', "end")] : [('S', "skip"), ('Q', "end")];

    // A contact is asked about once it was seen to turn both ways; a value whenever somebody looks.
    private string? AsksOf(Sensor sensor) => !sensor.IsContact ? "Is that right?"
        : sawHarmful && sawHarmless ? $"It turned both ways. Was it {sensor.Name} that you moved?"
        : null;

    private bool HasLowFloat(RackId rack) =>
        site.Sensors.Any(sensor => sensor.Kind == SensorKind.ReservoirLowFloat && sensor.Rack == rack);

    private void Pass(MonotonicTime now, Readings readings)
    {
        if (phase == Phase.Acts && items[at] is WiredLoad { Load: var load } && guards.Forbids(load, now, readings) is { } reason)
        {
            StopActing(now, Phase.Ready);
            note = $"cut short: {reason}";
        }
        else if (phase == Phase.CountsDown && now >= phaseEnds)
        {
            (phase, actsSince, phaseEnds) = (Phase.Acts, now, now + WiringGuards.Longest);
            switched.Add(at);
        }
        else if (phase == Phase.Acts && now >= phaseEnds)
        {
            StopActing(now, Phase.Asks);
        }
    }

    private WiringResult? Take(char key, MonotonicTime now, Readings readings)
    {
        if (phase is Phase.CountsDown or Phase.Acts)
        {
            StopActing(now, Phase.Ready);
            note = "stopped by a key";
            return null;
        }

        if (!Keys.Any(known => known.Key == key))
        {
            return null;
        }

        switch (key)
        {
            case 'G':
                Go(now, readings);
                return null;
            case 'B':
                MoveTo(at - 1);
                return null;
            case 'Q':
                IsOver = true;
                return null;
            default:
                return Settle(key);
        }
    }

    private void Go(MonotonicTime now, Readings readings)
    {
        note = items[at] is WiredLoad { Load: var load } ? guards.Forbids(load, now, readings) : null;
        (phase, phaseEnds) = note is null ? (Phase.CountsDown, now + CountDown) : (Phase.Ready, now);
    }

    private WiringResult? Settle(char key)
    {
        var item = items[at];
        var result = key == 'S' ? null : new WiringResult(
            item.Name,
            key == 'Y' ? WiringOutcome.Right : WiringOutcome.Wrong,
            $"{WhatWasSeen(item)}, {(key == 'Y' ? "and that was right" : WhatWasWrong(item))}");
        if (result is not null)
        {
            results[at] = result;
        }

        if (result is not null && item is WiredSensor { Sensor: var sensor })
        {
            guards.Judge(sensor.Id, isRight: key == 'Y');
        }

        MoveTo(at + 1);
        note = result?.Outcome == WiringOutcome.Wrong
            ? $"{item.Name} is wrong: end here, pull the plug and mend it, or go on and mend it afterwards"
            : null;
        return result;
    }

    private static string WhatWasWrong(WiringItem item) => item switch
    {
        WiredSensor { Sensor.IsContact: true } => "although somebody moved it, or it was another",
        WiredSensor => "and it is not so",
        _ => "and something else moved, or nothing",
    };

    private string WhatWasSeen(WiringItem item) => item switch
    {
        WiredSensor { Sensor.IsContact: true } => sawHarmful && sawHarmless ? "it turned both ways" : "it did not turn both ways",
        WiredSensor => "somebody looked at what it says",
        WiredContactor => "it cut the circuit and closed again",
        _ => "it was switched and back",
    };

    private void StopActing(MonotonicTime now, Phase next)
    {
        if (phase == Phase.Acts && items[at] is WiredLoad { Load: { Kind: LoadKind.Pump } pump })
        {
            guards.Count(pump.Rack, now - actsSince);
        }

        phase = next;
    }

    private void MoveTo(int next)
    {
        (note, phase, sawHarmful, sawHarmless) = (null, Phase.Ready, false, false);
        IsOver = next == items.Length;
        at = Math.Min(next, items.Length - 1);
    }
}
