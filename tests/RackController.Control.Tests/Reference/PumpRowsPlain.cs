using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>The rows that protect pump and floor, each as one plain question to the chronicle.</summary>
internal static class PumpRowsPlain
{
    public static Answer HighWater(Chronicle story, Rack rack, string key)
    {
        var floats = story.Site.Sensors.Where(sensor => sensor.Rack == rack.Id
            && sensor.Kind is SensorKind.TrayHighFloat or SensorKind.LeakRope or SensorKind.DripTrayFloat).ToList();
        var isWet = floats.Any(each => story.Now.Believed[each.Id.Index] == 1);
        var isUnknown = floats.Any(each => story.Now.Believed[each.Id.Index] is null);
        return new Answer(isWet || isUnknown, isWet, isWet || Latches.Stands(story, key));
    }

    public static Answer LowFloat(Chronicle story, Rack rack, string key)
    {
        var floats = story.Site.Sensors.Where(sensor => sensor.Rack == rack.Id && sensor.Kind == SensorKind.ReservoirLowFloat).ToList();
        var levels = story.Site.Sensors.Where(sensor => sensor.Rack == rack.Id && sensor.Kind == SensorKind.ReservoirLevel).ToList();
        var (lowMm, backMm) = (rack.Reservoir.PumpIntakeMm + 5, rack.Reservoir.PumpIntakeMm + 15);
        bool IsLevelLow(int from)
        {
            var isLow = false;
            for (var page = story.Pages[from].Boot.First; page <= from; page++)
            {
                var limitMm = isLow ? backMm : lowMm;
                isLow = levels.Any(level => story.Pages[page].Believed[level.Id.Index] < limitMm);
            }

            return isLow;
        }

        bool IsKnown(int page) => (floats.Count > 0 ? floats : levels).All(each => story.Pages[page].Believed[each.Id.Index] is not null);
        bool IsDry(int page) => IsLevelLow(page) || floats.Any(each => story.Pages[page].Believed[each.Id.Index] == 0);
        bool IsGood(int page) => IsKnown(page) && !IsDry(page);

        bool IsTrip(int page) => story.WasOn(rack.Pump.Load, page) && IsDry(page) && IsGood(page - 1);
        long FloodOf(int page) => story.Pages[page].Flood[rack.Id.Index];
        var tripsInThisFlood = Latches.PagesSinceReset(story, key).Count(page => FloodOf(page) == FloodOf(story.Last) && IsTrip(page));
        var isOneTooMany = IsTrip(story.Last) && tripsInThisFlood >= rack.Limits.LowFloatTripsToLatch;
        var isBad = !IsGood(story.Last);
        return new Answer(
            isBad || MustReadWet(story, rack, IsDry, IsGood), IsDry(story.Last), isOneTooMany || Latches.Stands(story, key));
    }

    public static Answer PumpMaximumRun(Chronicle story, Rack rack, string key)
    {
        var pump = rack.Pump.Load;
        bool HasTripped(int page)
        {
            for (var each = page; each >= story.Pages[page].Boot.First; each--)
            {
                var now = story.Pages[each].At.Monotonic;
                if (story.WasOn(pump, each) && now >= story.OnSince(pump, each) + rack.Limits.PumpMaximumRun)
                {
                    return true;
                }

                if (!story.WasOn(pump, each) && now >= story.OffSince(pump, each) + rack.Limits.PumpRest)
                {
                    return false;
                }
            }

            return false;
        }

        var isTripped = HasTripped(story.Last);
        bool IsTrip(int page) => HasTripped(page) && (story.IsFirstOfItsRun(page) || !HasTripped(page - 1));
        var latches = IsTrip(story.Last) && Latches.TripsOfADay(story, key, IsTrip) >= rack.Limits.MaximumRunsToLatch;
        return new Answer(isTripped, isTripped, latches || Latches.Stands(story, key));
    }

    public static Answer PumpDailyBudget(Chronicle story, Rack rack, string key)
    {
        var (used, began) = (Duration.Zero, 0);
        for (var page = 0; page <= story.Last; page++)
        {
            var now = story.Pages[page];
            if (story.IsFirstOfItsRun(page))
            {
                used = Duration.FromMilliseconds((long)used.TotalMilliseconds);
            }

            used = now.Acknowledged.Contains(key) && used >= rack.Limits.PumpDailyBudget ? Duration.Zero : used;
            if (story.WasOn(rack.Pump.Load, page))
            {
                began = used == Duration.Zero ? page - 1 : began;
                used += now.At.Monotonic - story.Pages[page - 1].At.Monotonic;
            }

            var dayIsOver = story.Ago(began) - story.Ago(page) >= Duration.FromHours(24);
            used = dayIsOver ? Duration.Zero : used;
        }

        var isUsedUp = used >= rack.Limits.PumpDailyBudget;
        return new Answer(isUsedUp, isUsedUp, Latched: false);
    }

    public static Answer PumpRest(Chronicle story, Rack rack)
    {
        var pump = rack.Pump.Load;
        var rests = !story.WasOn(pump, story.Last)
            && story.Now.At.Monotonic < story.OffSince(pump, story.Last) + rack.Limits.PumpRest;
        return new Answer(rests, rests, Latched: false);
    }

    public static Answer NoFill(Chronicle story, Rack rack, string key)
    {
        var pump = rack.Pump.Load;
        var (trips, tripped, latched) = (0, false, false);
        var sights = PlainFill.Sights(story, rack);
        for (var page = 0; page <= story.Last; page++)
        {
            if (story.Pages[page].Released.Contains(key))
            {
                (trips, latched) = (0, false);
            }

            var before = story.IsFirstOfItsRun(page) ? Sight.Unseeable : sights[page - 1];
            tripped &= !story.IsFirstOfItsRun(page);
            if (sights[page] == Sight.NotSeen && before != Sight.NotSeen)
            {
                (tripped, trips) = (true, trips + 1);
                latched |= trips >= rack.Limits.NoFillTripsToLatch;
            }
            else if (sights[page] == Sight.Seen && !story.WasOn(pump, page))
            {
                trips = 0;
            }

            var hasRested = !story.WasOn(pump, page)
                && (latched || story.Pages[page].At.Monotonic >= story.OffSince(pump, page) + rack.Limits.PumpRest);
            tripped &= !hasRested;
        }

        return new Answer(tripped, tripped, latched);
    }

    public static Answer NotDrained(Chronicle story, Rack rack)
    {
        var holdsWater = story.Site.Sensors.Any(sensor => sensor.Rack == rack.Id && sensor.TierNumber is { } tier
            && story.Now.InUse[rack.Id.Index][tier - 1] && story.Now.Believed[sensor.Id.Index] is { } said
            && ((sensor.Kind == SensorKind.TrayFullFloat && said == 1)
                || (sensor.Kind == SensorKind.TrayLevel && said > rack.Limits.NotDrainedAboveMm)));
        var holds = holdsWater && !story.WasOn(rack.Pump.Load, story.Last);
        return new Answer(holds, holds && story.Now.Waits[rack.Id.Index], Latched: false);
    }

    public static Answer FloodHeld(Chronicle story, Rack rack)
    {
        var waits = story.ThisRunBackwards().TakeWhile(page => story.Pages[page].Waits[rack.Id.Index]).ToList();
        var isHeld = waits.Count > 0
            && story.Now.At.Monotonic >= story.Pages[waits[^1]].At.Monotonic + rack.Limits.PumpRest * 2;
        return new Answer(isHeld, isHeld, Latched: false);
    }

    public static Answer FillSlow(Chronicle story, Rack rack)
    {
        var isSlow = story.Now.FillHitItsLimit[rack.Id.Index];
        return new Answer(isSlow, isSlow, Latched: false);
    }

    // From when it read dry, or from a restart, until it has read wet for long enough.
    private static bool MustReadWet(Chronicle story, Rack rack, Func<int, bool> isDry, Func<int, bool> isGood)
    {
        foreach (var page in story.ThisRunBackwards())
        {
            if (isDry(page))
            {
                return true;
            }

            var wet = page;
            while (wet > story.Now.Boot.First && isGood(wet - 1))
            {
                wet--;
            }

            if (isGood(page) && story.Pages[page].At.Monotonic >= story.Pages[wet].At.Monotonic + rack.Limits.LowFloatRestored)
            {
                return false;
            }
        }

        return story.Now.Boot.Remembers;
    }
}
