using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Scanning;

/// <summary>
/// What happens to a site, scan by scan, from one seed: sensors that fail in every way, clocks that step, drift and lose trust, scans
/// that come late or fail, and people who ask for anything at any time. It does not look at what a controller makes of it, so any two
/// can be told the same story.
/// </summary>
internal sealed class RandomStory
{
    private readonly Dice dice;
    private readonly RandomFeed[] feeds;
    private readonly Sensor[] vital;
    private readonly string[] alarmKeys;
    private readonly string[] latchKeys;
    private readonly RandomTester tester;
    private readonly List<OperatorRequest> asked = [];
    private Duration pace = Duration.FromMilliseconds(100);
    private Duration wallDrift = Duration.Zero;
    private int failsFor;
    private int lateFor;

    private RandomStory(Dice dice, Site site)
    {
        this.dice = dice;
        Site = site;
        var start = new Moment(MonotonicTime.Zero, Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);
        var interlocks = CauseAndEffectTable.Build(new InterlockSite(site, start, []));
        alarmKeys = [.. interlocks.Where(each => each.Row.Alarm is not null).Select(each => each.Key)];
        latchKeys = [.. interlocks.Where(each => each.Row.Returns.HasFlag(WaysBack.Reset)).Select(each => each.Key)];
        Levels = new RackControl(site, start, memory: null).Levels.ToLookup(level => level.Sensor, level => level.Value);
        feeds = [.. site.Sensors.Select(sensor => new RandomFeed(sensor, [.. Levels[sensor.Id]]))];
        Array.ForEach(feeds, feed => feed.Heal());
        vital = [.. site.Sensors.Where(sensor => sensor.Kind is SensorKind.ReservoirLowFloat or SensorKind.SupplySense)];
        tester = new RandomTester(site, feeds, latchKeys, asked);
        Readings = new Readings(site);
        Now = new Moment(MonotonicTime.FromMilliseconds(5_000), Start(), WallTrusted: !dice.Chance(4));
    }

    /// <summary>The story of a seed.</summary>
    public static RandomStory Of(int seed)
    {
        var dice = new Dice(seed);
        return new RandomStory(dice, HastySite.Of(dice));
    }

    public Site Site { get; }

    /// <summary>The values at which something may be decided differently.</summary>
    public ILookup<SensorId, double> Levels { get; }

    public Moment Now { get; private set; }

    public Readings Readings { get; }

    public ScanConditions Conditions { get; private set; }

    public OperatorRequest[] Requests { get; private set; } = [];

    /// <summary>When the controller started anew with what it remembers, just before this scan; null when it did not.</summary>
    public Moment? StartsAnewAt { get; private set; }

    /// <summary>Whether something happens before the next scan.</summary>
    public bool IsLastOfTurn { get; private set; }

    /// <summary>Tells the story, one scan after the other. In every turn something happens, and then some scans pass.</summary>
    /// <returns>The place of each scan, in words.</returns>
    public IEnumerable<string> Scans(int turns)
    {
        for (var turn = 0; turn < turns; turn++)
        {
            for (var more = dice.Between(1, 3); more > 0 && !tester.IsLeftAlone; more--)
            {
                Happen();
            }

            var scans = dice.Between(0, 4) switch
            {
                0 => dice.Between(1, 3),
                < 4 => dice.Between(1, 60),
                _ => dice.Between(60, 600),
            };
            for (var scan = 0; scan < scans; scan++)
            {
                IsLastOfTurn = scan == scans - 1;
                Advance();
                yield return $"turn {turn}, scan {scan}";
                StartsAnewAt = null;
            }
        }
    }

    private void Advance()
    {
        var by = dice.Chance(40) ? Duration.FromNanoseconds(dice.Of(1, 33_333_333, 150_000_000, 700_000_000)) : pace;
        Now = Now with { Monotonic = Now.Monotonic + by, Wall = Now.Wall + by + wallDrift };
        tester.GoOn(Now.Monotonic);
        foreach (var sensor in Site.Sensors)
        {
            Readings[sensor.Id] = feeds[sensor.Id.Index].At(Now.Monotonic);
        }

        Conditions = new ScanConditions(
            failsFor-- > 0 ? new IoOutcome("the board is gone") : IoOutcome.Ok,
            lateFor-- > 0 ? Duration.FromMilliseconds(dice.Of(400, 500, 501, 3_000)) : Duration.Zero);
        Requests = [.. asked];
        asked.Clear();
    }

    // Around a change of the clock in New York, in spring or autumn, or on an ordinary day.
    private Instant Start() =>
        dice.Of(Instant.FromUtc(2026, 11, 1, 5, 0), Instant.FromUtc(2027, 3, 14, 6, 0), Instant.FromUtc(2026, 6, 1, 16, 0))
        + Duration.FromMinutes(dice.Between(-600, 600));

    private void Happen()
    {
        switch (dice.Between(0, 34))
        {
            case 0:
                var stepMs = dice.Of(-14_400_000, -3_600_000, -1_500, -1, 1, 60_000, 18_000_000);
                Now = Now with { Wall = Now.Wall + Duration.FromMilliseconds(stepMs) };
                break;
            case 1:
                Now = Now with { WallTrusted = !Now.WallTrusted };
                break;
            case 2:
                wallDrift = Duration.FromNanoseconds(dice.Of(0, 0, 0, 0, 1, -50_000));
                break;
            case 3:
                failsFor = dice.Between(1, 30);
                break;
            case 4:
                lateFor = dice.Between(1, 5);
                break;
            case 5 when dice.Chance(3):
                Restart();
                break;
            case 6:
                pace = Duration.FromMilliseconds(dice.Of(100, 100, 100, 20, 1_000, 10_000, 3_600_000));
                break;
            case 7:
                PutRight();
                break;
            case 12:
                LightsReadOnInTheHeat();
                break;
            case 11:
                tester.TestOne(dice, Now.Monotonic);
                break;
            case >= 8 and < 11:
                TraysRead(full: dice.Chance(2), new RackId(dice.Between(0, Site.Racks.Length - 1)));
                break;
            case < 19:
                asked.Add(Request());
                break;
            case < 22:
                Flip(dice.Of(vital));
                break;
            case > 32:
                CanopiesRead(lit: dice.Chance(2));
                break;
            default:
                dice.Of(feeds).Change(dice, Now.Monotonic);
                break;
        }
    }

    private void PutRight()
    {
        foreach (var feed in feeds)
        {
            feed.Heal();
        }

        (pace, wallDrift) = (Duration.FromMilliseconds(100), Duration.Zero);
        asked.Add(new Resume("Ben", null));
        asked.AddRange(Site.Racks.SelectMany(
            rack => rack.Tiers.Select(tier => new SetTierInUse("Ben", rack.Id, tier.Number, InUse: true))));
        foreach (var key in latchKeys)
        {
            asked.Add(new ResetLatch("Ada", key));
            asked.Add(new ConfirmReset("Ben", key));
        }

        asked.AddRange(Site.Racks.Select(rack => new FloodNow("Ben", rack.Id)));
        if (dice.Chance(2))
        {
            tester.TestRack(dice, Now.Monotonic);
        }
        else
        {
            pace = Duration.FromMilliseconds(500);
            tester.FloodOften(dice.Of<Rack>([.. Site.Racks]), Now.Monotonic);
        }
    }

    private void TraysRead(bool full, RackId rack)
    {
        foreach (var sensor in Site.Sensors.Where(sensor => sensor.Rack == rack
            && sensor.Kind is SensorKind.TrayFullFloat or SensorKind.TrayLevel))
        {
            feeds[sensor.Id.Index].Heal();
            feeds[sensor.Id.Index].Say(full ? sensor.PlausibleMax : sensor.PlausibleMin);
        }
    }

    private void LightsReadOnInTheHeat()
    {
        foreach (var sensor in Site.Sensors.Where(sensor => sensor.Kind is SensorKind.AirTemperature or SensorKind.CircuitCurrent))
        {
            feeds[sensor.Id.Index].Heal();
            feeds[sensor.Id.Index].Say(sensor.Kind == SensorKind.AirTemperature ? sensor.PlausibleMax : dice.Of(0.3, 0.97));
        }
    }

    private void CanopiesRead(bool lit)
    {
        foreach (var sensor in Site.Sensors.Where(sensor => sensor.Kind == SensorKind.LightLevel))
        {
            feeds[sensor.Id.Index].Heal();
            feeds[sensor.Id.Index].Say(lit ? sensor.PlausibleMax : sensor.PlausibleMin);
        }
    }

    // What latches only after several trips would hardly come about by chance among so many sensors.
    private void Flip(Sensor contact)
    {
        feeds[contact.Id.Index].Heal();
        feeds[contact.Id.Index].Say(dice.Of(0.0, 1.0));
    }

    private void Restart()
    {
        var away = Duration.FromSeconds(dice.Of(0, 5, 600, 100_000));
        Now = new Moment(MonotonicTime.FromMilliseconds(dice.Of(0, 5_000)), Now.Wall + away, Now.WallTrusted && !dice.Chance(4));
        StartsAnewAt = Now;
    }

    private OperatorRequest Request()
    {
        var rack = new RackId(dice.Between(0, Site.Racks.Length - 1));
        var tier = dice.Between(1, Site[rack].Tiers.Length);
        var key = dice.Of(alarmKeys);
        return dice.Between(0, 15) switch
        {
            0 or 1 => new FloodNow("Ada", rack),
            2 => new SkipNextFlood("Ada", rack),
            3 => new HoldForService("Ada", rack, Duration.FromSeconds(dice.Between(-5, 200))),
            4 => new EndServiceHold("Ada", rack),
            5 => new Stop("Ada", dice.Chance(2) ? null : rack),
            6 or 7 => new Resume("Ada", dice.Chance(2) ? null : rack),
            8 => new SetTierInUse("Ada", rack, tier, dice.Chance(2)),
            9 => new Shelve("Ada", key, Duration.FromSeconds(dice.Between(0, 100))),
            10 => new SetAlarmOutOfService("Ada", key, dice.Chance(2)),
            11 => new Acknowledge("Ada", key),
            12 => new Unshelve("Ada", key),
            13 => new ResetLatch("Ada", dice.Of(latchKeys)),
            _ => new ConfirmReset("Ben", ResetAndConfirmed()),
        };
    }

    private string ResetAndConfirmed()
    {
        var key = dice.Of(latchKeys);
        asked.Add(new ResetLatch("Ada", key));
        return key;
    }
}
