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

    public static Answer SupplyLost(Chronicle story, Circuit circuit, string key)
    {
        var senses = story.Site.Sensors.Where(sensor => sensor.Kind == SensorKind.SupplySense && sensor.Circuit == circuit.Id).ToList();
        var limits = story.Site.Loads.Where(load => load.Circuit == circuit.Id).Select(load => story.Site[load.Rack].Limits)
            .DefaultIfEmpty(InterlockLimits.Default).ToList();
        bool IsLost(int from)
        {
            for (var page = from; page >= 0; page--)
            {
                var said = senses.Select(sense => story.Pages[page].Believed[sense.Id.Index]).ToList();
                if (said.Contains(0) || !said.Contains(null))
                {
                    return said.Contains(0);
                }
            }

            return false;
        }

        var quiet = limits.Max(each => each.SupplyQuietPeriod);
        var isLost = IsLost(story.Last);
        bool WasLost(int page) => page > 0 && IsLost(page - 1);
        var cameBack = story.ThisRunBackwards().Where(page => WasLost(page) && !IsLost(page))
            .Select(page => story.Pages[page].At.Monotonic);
        var sinceThen = story.Now.Boot.Remembers ? cameBack.Append(story.Now.Boot.Start.Monotonic) : cameBack;
        var isQuiet = sinceThen.Any(time => story.Now.At.Monotonic < time + quiet) && story.Now.Conditions.Io.IsOk;

        bool IsTrip(int page) => IsLost(page) && !WasLost(page);
        var latches = IsTrip(story.Last)
            && Latches.TripsOfADay(story, key, IsTrip) >= limits.Min(each => each.SupplyTripsToLatch);
        return new Answer(isLost || isQuiet, isLost, latches || Latches.Stands(story, key));
    }

    public static Answer ServiceHold(Chronicle story, Rack rack) => Plain(HandsLeaveAt(story, rack) is not null);

    public static Answer ServiceHoldEnding(Chronicle story, Rack rack) => Plain(
        HandsLeaveAt(story, rack) is { } end && story.Now.At.Monotonic >= end + -rack.Limits.ServiceHoldWarning);

    public static Answer AirTooHot(Chronicle story, Rack rack, Sensor sensor)
    {
        var (hot, cooled) = (rack.Limits.AirHotC, rack.Limits.AirHotC - rack.Limits.AirHotReturnK);
        var decisive = story.Pages.Select(page => page.Believed[sensor.Id.Index]).LastOrDefault(airC => airC > hot || airC <= cooled);
        return Plain(decisive > hot);
    }

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

    // All that was asked, in order; a restart leaves what was left of a hold.
    private static MonotonicTime? HandsLeaveAt(Chronicle story, Rack rack)
    {
        MonotonicTime? end = null;
        for (var page = 0; page <= story.Last; page++)
        {
            var now = story.Pages[page].At.Monotonic;
            if (story.IsFirstOfItsRun(page) && story.Pages[page].Boot is { SavedAt: { } saved } boot && end is { } before)
            {
                end = boot.Start.Monotonic + Duration.FromMilliseconds((long)(before - saved.Monotonic).TotalMilliseconds);
            }

            foreach (var request in story.Pages[page].Requests)
            {
                if (request is HoldForService hold && hold.Rack == rack.Id)
                {
                    var asked = now + Duration.Min(Duration.Max(hold.Length, Duration.Zero), rack.Limits.ServiceHoldMaximum);
                    end = end > asked ? end : asked;
                }
                else if (request is EndServiceHold ended && ended.Rack == rack.Id)
                {
                    end = null;
                }
            }

            end = now >= end ? null : end;
        }

        return end;
    }

    private static Answer Plain(bool isSo) => new(isSo, isSo, Latched: false);
}
