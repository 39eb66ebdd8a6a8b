using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>The rows that protect circuits, crops and people, each as one plain question to the chronicle.</summary>
internal static class SiteRowsPlain
{
    public static Answer ScanFault(Chronicle story)
    {
        var recovery = story.Site.Racks.Max(rack => rack.Limits.ScanRecovery);
        var isFaulty = story.ThisRunBackwards().Any(page => story.Pages[page].IsFaulty(story.Site)
            && story.Now.At.Monotonic < story.Pages[page].At.Monotonic + recovery);
        return Plain(isFaulty);
    }

    public static Answer ServiceHold(Chronicle story, Rack rack) => Plain(Hands(story, rack) is not (null, null));

    public static Answer ServiceHoldEnding(Chronicle story, Rack rack) => Plain(
        Hands(story, rack).LeaveAt is { } end && story.Now.At.Monotonic >= end + -rack.Limits.ServiceHoldWarning);

    public static Answer AirTooHot(Chronicle story, Rack rack, Sensor sensor)
    {
        var isHot = IsHot(story, rack, sensor, story.Last);
        var unknown = story.ThisRunBackwards().TakeWhile(page => IsUnknown(page, sensor) && !IsVouchedFor(page)).ToList();
        var isUnknownForLong = unknown.Count > 0
            && story.Now.At.Monotonic >= story.Pages[unknown[^1]].At.Monotonic + rack.Limits.AirUnknownGrace;
        return new Answer(isHot || isUnknownForLong, isHot, Latched: false);

        bool IsUnknown(int page, Sensor each) => story.Pages[page].Believed[each.Id.Index] is null;

        // Somebody else must know the air of the tier, or that of every tier that is lit.
        bool IsVouchedFor(int page)
        {
            var others = story.Site.Sensors.Where(other => other.Rack == rack.Id && other.Kind == SensorKind.AirTemperature
                && other.Id != sensor.Id && !IsUnknown(page, other)).ToList();
            var tiers = sensor.TierNumber is { } own
                ? [own]
                : rack.Tiers.Where(tier => tier.Light is not null).Select(tier => tier.Number).ToList();
            return tiers.Count > 0 && tiers.All(tier => others.Any(other => other.TierNumber is null || other.TierNumber == tier));
        }
    }

    /// <summary>Whether the air at a sensor was too hot at a page: it was when it last read above one limit or below the other.</summary>
    public static bool IsHot(Chronicle story, Rack rack, Sensor sensor, int page)
    {
        var (hot, cooled) = (rack.Limits.AirHotC, rack.Limits.AirHotC - rack.Limits.AirHotReturnK);
        for (var each = page; each >= 0; each--)
        {
            var airC = story.Pages[each].Believed[sensor.Id.Index];
            if (airC > hot || airC <= cooled)
            {
                return airC > hot;
            }
        }

        return false;
    }

    /// <summary>The sensors of the air that a light heats.</summary>
    public static IEnumerable<Sensor> AirOf(Site site, Load light) => site.Sensors.Where(sensor => sensor.Rack == light.Rack
        && sensor.Kind == SensorKind.AirTemperature && (sensor.TierNumber is null || sensor.TierNumber == light.TierNumber));

    public static Answer WaterTemperature(Chronicle story, Rack rack, Sensor sensor)
    {
        var limits = rack.Limits;
        var said = story.ThisRunBackwards().Select(page => story.Pages[page].Believed[sensor.Id.Index]);
        bool IsOut(double? waterC) => waterC > limits.WaterWarmC || waterC < limits.WaterColdC;
        bool IsWell(double? waterC) => waterC <= limits.WaterWarmC - 0.5 && waterC >= limits.WaterColdC + 0.5;
        return Plain(IsOut(said.FirstOrDefault(waterC => IsOut(waterC) || IsWell(waterC))));
    }

    public static Answer CircuitShed(Chronicle story, Circuit circuit) =>
        Plain(!story.IsFirstOfItsRun(story.Last) && story.Pages[story.Last - 1].Sheds[circuit.Id.Index]);

    public static Answer ReadingUnknown(Chronicle story, Sensor sensor)
    {
        var grace = Duration.FromSeconds(15);
        var (told, doubted, known) = (false, (MonotonicTime?)story.Now.Boot.Start.Monotonic, (MonotonicTime?)null);
        foreach (var page in story.ThisRunBackwards().Reverse())
        {
            var now = story.Pages[page].At.Monotonic;
            if (story.Pages[page].Believed[sensor.Id.Index] is null)
            {
                known = null;
                doubted ??= now;
                told |= now >= doubted.Value + grace;
            }
            else
            {
                known ??= now;
                if (now >= known.Value + grace)
                {
                    (told, doubted) = (false, null);
                }
            }
        }

        return Plain(told);
    }

    public static Answer ClockUntrusted(Chronicle story) => Plain(!story.Now.At.WallTrusted);

    // The steps of the trusted clock since somebody last acknowledged them, taken together; those below five minutes are none.
    public static Answer ClockStepped(Chronicle story, string key)
    {
        static bool IsStep(Duration step) => Math.Abs(step.TotalMinutes) >= 5;
        var set = Duration.Zero;
        for (var page = 0; page <= story.Last; page++)
        {
            var (it, isFirst) = (story.Pages[page], story.IsFirstOfItsRun(page));
            var (now, before) = (it.At, isFirst ? it.Boot.Start : story.Pages[page - 1].At);

            // Memory keeps whole milliseconds.
            set = isFirst ? Duration.FromMilliseconds((long)set.TotalMilliseconds) : set;
            set = it.Acknowledged.Contains(key) ? Duration.Zero : set;
            var step = now.Wall - before.Wall - (now.Monotonic - before.Monotonic);
            set += now.WallTrusted && before.WallTrusted && IsStep(step) ? step : Duration.Zero;
        }

        return Plain(IsStep(set));
    }

    // All that was asked, in order; a restart leaves what was left of a hold, and forgets who has just let go.
    private static (MonotonicTime? LeaveAt, MonotonicTime? ClearAt) Hands(Chronicle story, Rack rack) => HandsByPage(story, rack).Last();

    /// <summary>On which pages hands are in a rack that draws from a circuit, or may be still.</summary>
    public static bool[] HaveHandsIn(Chronicle story, CircuitId circuit)
    {
        var racks = story.Site.Loads.Where(load => load.Circuit == circuit).Select(load => load.Rack).Distinct();
        return racks.Select(rack => HandsByPage(story, story.Site[rack]).Select(hands => hands is not (null, null)))
            .Aggregate((one, other) => one.Zip(other, (mine, others) => mine || others)).ToArray();
    }

    private static IEnumerable<(MonotonicTime? LeaveAt, MonotonicTime? ClearAt)> HandsByPage(Chronicle story, Rack rack)
    {
        MonotonicTime? end = null, clear = null;
        var isStopped = false;
        for (var page = 0; page <= story.Last; page++)
        {
            var now = story.Pages[page].At.Monotonic;
            if (story.IsFirstOfItsRun(page) && story.Pages[page].Boot is { SavedAt: { } saved } boot)
            {
                end = end is { } before
                    ? boot.Start.Monotonic + Duration.FromMilliseconds((long)(before - saved.Monotonic).TotalMilliseconds)
                    : null;
                clear = null;
            }

            foreach (var request in story.Pages[page].Requests)
            {
                var lets = request switch
                {
                    EndServiceHold ended => ended.Rack == rack.Id && end is not null,
                    Resume resume => (resume.Rack ?? rack.Id) == rack.Id && isStopped,
                    ConfirmReset reset => story.Pages[page].Released.Contains(reset.Latch)
                        && story.LatchHolds[reset.Latch].Contains(rack.Id),
                    _ => false,
                };
                clear = lets ? now + rack.Limits.StartDelay : clear;
                isStopped = request switch
                {
                    Stop stop => isStopped || (stop.Rack ?? rack.Id) == rack.Id,
                    Resume resume => isStopped && (resume.Rack ?? rack.Id) != rack.Id,
                    _ => isStopped,
                };
                end = request switch
                {
                    HoldForService hold when hold.Rack == rack.Id => Later(end, now + HoldLength(hold, rack)),
                    EndServiceHold ended when ended.Rack == rack.Id => null,
                    _ => end,
                };
            }

            (end, clear) = (now >= end ? null : end, now >= clear ? null : clear);
            yield return (end, clear);
        }
    }

    private static MonotonicTime Later(MonotonicTime? one, MonotonicTime other) => one is { } time && time > other ? time : other;

    private static Duration HoldLength(HoldForService hold, Rack rack) =>
        Duration.Min(Duration.Max(hold.Length, Duration.Zero), rack.Limits.ServiceHoldMaximum);

    private static Answer Plain(bool isSo) => new(isSo, isSo, Latched: false);
}
