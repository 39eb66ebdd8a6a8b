using NodaTime;
using RackController.Control.Tests.Scanning;
using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>Tells a random story to a controller, writes it down, and holds what the controller answers to the plain table.</summary>
internal sealed class Chronicler
{
    private readonly RandomStory story;
    private readonly Told told;
    private readonly Chronicle chronicle;
    private readonly List<PlainRow> rows;
    private readonly HashSet<string> tests;
    private PlainCurrents? currents;
    private string? underWay;
    private Boot boot;

    public Chronicler(RandomStory story)
    {
        this.story = story;
        told = new Told(story);
        chronicle = new Chronicle(story.Site);
        rows = PlainTable.Of(story.Site);
        foreach (var row in rows)
        {
            var cut = row.Row is "relay-welded" or "light-stays-on" ? CutWith(row.Row, row.Place) : null;
            chronicle.LatchHolds[row.Key] =
                [.. story.Site.Loads.Where(load => row.Loads(load) || load.Circuit == cut).Select(load => load.Rack)];
        }

        boot = new Boot(story.Now, SavedAt: null, First: 0);
        tests = [.. told.Control.ProofTests().Select(test => test.Item)];
    }

    /// <summary>The rows of the plain table on this site.</summary>
    public IEnumerable<string> Rows => rows.Select(row => row.Row);

    /// <summary>Makes the next scan of the story and compares.</summary>
    /// <returns>The first difference; null where there is none.</returns>
    public string? Scan()
    {
        if (story.StartsAnewAt is { } start)
        {
            boot = new Boot(start, chronicle.Pages.Count > 0 ? chronicle.Now.At : boot.Start, chronicle.Pages.Count);
            underWay = null;
        }

        told.FollowRestart();
        told.Forget();
        told.Scan();
        Write();
        foreach (var row in rows)
        {
            chronicle.Now.Answers[row.Key] = row.Ask(chronicle, row.Key);
        }

        foreach (var item in chronicle.Now.Passed)
        {
            chronicle.PassedAt[item] = chronicle.Now.Calendar;
        }

        return DifferenceOfLoads() ?? DifferenceOfAlarms() ?? DifferenceOfLatches();
    }

    private void Write()
    {
        var site = story.Site;
        var page = new Page
        {
            At = story.Now,
            Boot = boot,
            Readings = [.. site.Sensors.Select(sensor => story.Readings[sensor.Id])],
            Conditions = story.Conditions,
            Requests = story.Requests,
        };
        chronicle.Add(page);
        page.Judged = [.. site.Sensors.Select(sensor => PlainReadings.Believed(chronicle.Pages, site, sensor))];
        page.Doubted = Doubted();
        page.Believed = [.. site.Sensors.Zip(page.Judged, (sensor, said) => page.Doubted.Contains(sensor.Name) ? null : said)];
        page.InUse = [.. site.Racks.Select(
            rack => rack.Tiers.Select(tier => told.Control.IsTierInUse(rack.Id, tier.Number)).ToArray())];
        currents = chronicle.IsFirstOfItsRun(chronicle.Last) ? new PlainCurrents(chronicle) : currents;
        page.Flows = currents!.Read();
        page.On = [.. told.Commands];
        page.Cut = [.. told.Commands.Skip(site.Loads.Length)];
        var why = told.Control.Why();
        page.Sheds = [.. site.Circuits.Select(circuit => why.Any(
            each => site[each.Load].Circuit == circuit.Id && each.Admission.Contains("may carry", StringComparison.Ordinal)))];
        var kept = told.Control.Save().Items;
        page.Flood = [.. site.Racks.Select(rack => kept[$"{rack.Name}/demand/flood-number"])];
        page.FillHitItsLimit = [.. site.Racks.Select(rack => kept[$"{rack.Name}/demand/fill-hit-its-limit"] == 1)];
        page.Waits = [.. site.Racks.Select(rack => told.Control.FloodPhase(rack.Id) == FloodPhase.Waiting)];
        page.Acknowledged = [.. told.Events.Where(each => each is { Kind: EventKind.Request, What: "acknowledge: acknowledged" })
            .Select(each => each.Subject)];
        page.Released.UnionWith(Latches.Released(chronicle));
        page.Filled = [.. site.Racks.Where(rack => told.Events.Any(
            each => each is { Kind: EventKind.Flood, What: FloodEvent.Soaking } && each.Subject == rack.Name)).Select(rack => rack.Id)];
        WriteTests(page, kept[$"{site.Racks[0].Name}/demand/clock"]);
    }

    private void WriteTests(Page page, long clockMs)
    {
        page.Calendar = Calendar(page, clockMs);
        foreach (var (item, at) in chronicle.PassedAt)
        {
            chronicle.PassedAt[item] = Instant.Min(at, page.Calendar);
        }

        foreach (var request in page.Requests)
        {
            underWay = request switch
            {
                AbandonProofTest => null,
                BeginProofTest begin when tests.Contains(begin.Item) => underWay ?? begin.Item,
                _ => underWay,
            };
        }

        page.UnderTest = underWay;
        underWay = told.Control.ProofTestUnderWay()?.Item;
        page.Passed = Ended("passed");
        page.Failed = Ended("failed");
    }

    private HashSet<string> Ended(string how) =>
        [.. told.Events.Where(each => each.Kind == EventKind.ProofTest && each.What == how).Select(each => each.Subject)];

    // The wall clock while that is trusted; else what it was, and the time since. Memory keeps whole milliseconds.
    private Instant Calendar(Page page, long clockMs)
    {
        if (page.At.WallTrusted)
        {
            return page.At.Wall;
        }

        var isFirst = chronicle.IsFirstOfItsRun(chronicle.Last);
        if (chronicle.Last == 0)
        {
            return boot.Start.WallTrusted
                ? boot.Start.Wall + (page.At.Monotonic - boot.Start.Monotonic)
                : Instant.FromUnixTimeMilliseconds(clockMs);
        }

        var before = chronicle.Pages[chronicle.Last - 1];
        return isFirst
            ? Instant.FromUnixTimeMilliseconds(before.Calendar.ToUnixTimeMilliseconds()) + (page.At.Monotonic - boot.Start.Monotonic)
            : before.Calendar + (page.At.Monotonic - before.At.Monotonic);
    }

    // Words about what a sensor does are of a doubt; those about its readings are not.
    private HashSet<string> Doubted()
    {
        var doubted = chronicle.IsFirstOfItsRun(chronicle.Last) ? [] : chronicle.Pages[chronicle.Last - 1].Doubted.ToHashSet();
        foreach (var told in told.Events.Where(
            each => each.Kind == EventKind.Reading && each.Because.StartsWith("it ", StringComparison.Ordinal)))
        {
            _ = told.What == "unknown" ? doubted.Add(told.Subject) : doubted.Remove(told.Subject);
        }

        return doubted;
    }

    private string? DifferenceOfLoads()
    {
        foreach (var why in told.Control.Why())
        {
            var load = story.Site[why.Load];
            var controls = why.Interlocks.Select(words => words[..words.IndexOf(':', StringComparison.Ordinal)]).Order().ToList();
            var isForbidden = controls.Any(row => row != "scan-fault");
            var plain = rows.Where(row => row.Loads(load) && Objects(row, load)).Select(row => row.Row).Order().ToList();
            if (!controls.SequenceEqual(plain))
            {
                return $"{load.Name}: Control has {string.Join(", ", controls)}; plainly {string.Join(", ", plain)}";
            }

            var mustBeOff = isForbidden || (controls.Count > 0 && load.SafeState == SwitchState.Off);
            if (mustBeOff && why.State == SwitchState.On)
            {
                return $"{load.Name} is {why.State} against {string.Join(", ", controls)}";
            }
        }

        return null;
    }

    private string? DifferenceOfAlarms()
    {
        var states = told.Control.Alarms().ToDictionary(alarm => alarm.Key, alarm => alarm.State);
        foreach (var row in rows.Where(row => CauseAndEffectTable.Rows.Single(each => each.Id == row.Row).Alarm is not null))
        {
            var state = states.GetValueOrDefault(row.Key);
            var answer = chronicle.Now.Answers[row.Key];
            bool? alarms = state switch
            {
                AlarmState.Unacknowledged or AlarmState.Acknowledged or AlarmState.Latched => true,
                AlarmState.Normal or AlarmState.ReturnedUnacknowledged => false,
                _ => null,
            };
            if (alarms is { } shown && shown != (answer.Alarms || answer.Latched))
            {
                return $"the alarm {row.Key} is {state}; plainly {answer}";
            }
        }

        return null;
    }

    private string? DifferenceOfLatches()
    {
        var kept = told.Control.Save().Items;
        return rows.Where(row => kept[$"{row.Key}/latched"] == 1 != chronicle.Now.Answers[row.Key].Latched)
            .Select(row => $"the latch of {row.Key}; plainly {chronicle.Now.Answers[row.Key]}").FirstOrDefault();
    }

    // The circuit whose contactor opens for a pump, and in the heat for a light.
    private CircuitId? CutWith(string row, string place)
    {
        var load = story.Site.Loads.Single(each => each.Name == place);
        var isCut = story.Site[load.Circuit].HasUpstreamContactor && (row == "light-stays-on" || load.Kind == LoadKind.Pump);
        return isCut ? load.Circuit : null;
    }

    private bool Objects(PlainRow row, Load load)
    {
        var answer = chronicle.Now.Answers[row.Key];
        return (answer.Present || answer.Latched) && answer.Spares != load.Id
            && !(answer.SparesOnAtRest && load.SafeState == SwitchState.On);
    }
}
