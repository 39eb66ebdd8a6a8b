using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.RackFile;
using RackController.Service;
using RackController.Testing;

namespace RackController.Page.Tests;

/// <summary>Writes into a journal a past that never was: days of a rack that floods three times a day, warms up under its lights, and
/// had an alarm now and then.</summary>
internal static class MadeUpPast
{
    /// <summary>What prepares a folder with days of it, for the site of the demo.</summary>
    /// <param name="days">How many days before now.</param>
    public static Action<StateFolder> OfDays(int days) =>
        folder => Write(RackFileReader.Read(ShippedFiles.PathTo("config/demo-four-tier.yaml")).Site!, folder, days);

    private static void Write(Site site, StateFolder folder, int days)
    {
        var now = SystemClock.Instance.GetCurrentInstant();
        using var file = JournalFile.Open(folder.Journal);
        var today = now.InZone(site.Zone).Date;
        file.WriteDays([.. Enumerable.Range(1, 200).SelectMany(back => DayOf(site, today.PlusDays(-back)))]);
        for (var day = days; day > 0; day--)
        {
            var begin = now - Duration.FromDays(day);
            ControlEvent[] events = [.. EventsOf(site, begin, day).OrderBy(happened => happened.At.Wall)];
            file.WriteLasting([new JournalEntry(events, null)], [], file.Run);
            file.WriteQuietly(null, [.. SamplesOf(site, begin)], [], file.Run);
        }
    }

    private static IEnumerable<ControlEvent> EventsOf(Site site, Instant begin, int day)
    {
        ControlEvent At(double minutes, EventKind kind, string subject, string what, string because) =>
            new(new Moment(MonotonicTime.Zero, begin + Duration.FromMinutes(minutes), true), kind, subject, what, because);

        foreach (var rack in site.Racks)
        {
            var pump = site[rack.Pump.Load].Name;
            foreach (var hour in (double[])[2, 8, 14])
            {
                var m = hour * 60;
                yield return At(m, EventKind.Flood, rack.Name, FloodEvent.Due, "the schedule says so");
                yield return At(m + 0.05, EventKind.Load, pump, "on", "a flood");
                yield return At(m + 0.1, EventKind.Flood, rack.Name, FloodEvent.Filling, "the pump runs");
                yield return At(m + 5.1, EventKind.Flood, rack.Name, FloodEvent.Soaking, "the time to fill is over");
                yield return At(m + 10.1, EventKind.Flood, rack.Name, FloodEvent.Draining, "the time to soak is over");
                yield return At(m + 10.1, EventKind.Load, pump, "off", "the trays drain");
                yield return At(m + 30.1, EventKind.Flood, rack.Name, FloodEvent.Drained, "the trays have had their time to drain");
            }

            foreach (var light in rack.Tiers.Where(tier => tier.Light is not null).Select(tier => site[tier.Light!.Value].Name))
            {
                yield return At(60, EventKind.Load, light, "on", "the photoperiod");
                yield return At(1020, EventKind.Load, light, "off", "the dark period");
            }
        }

        if (day % 3 == 0)
        {
            var key = $"{site.Racks[0].Name}/air-too-hot";
            yield return At(600, EventKind.Alarm, key, AlarmState.Unacknowledged.InWords(), "the air is 31 °C, above 30 °C");
            yield return At(640, EventKind.Alarm, key, AlarmState.ReturnedUnacknowledged.InWords(), "the air is below 29 °C again");
            yield return At(700, EventKind.Alarm, key, AlarmState.Normal.InWords(), "somebody acknowledged it");
        }
    }

    private static IEnumerable<DaySum> DayOf(Site site, LocalDate day)
    {
        var wave = Math.Sin(day.DayOfYear / 365.0 * 2 * Math.PI);
        foreach (var load in site.Loads)
        {
            yield return new DaySum(day, load.Name, DayFigure.HoursOn, 8 + wave, 8 + wave, 8 + wave);
            yield return new DaySum(day, load.Name, DayFigure.EnergyKWh, 1 + wave / 2, 1 + wave / 2, 1 + wave / 2);
            if (load.Kind == LoadKind.Light)
            {
                yield return new DaySum(day, load.Name, DayFigure.LightMolPerM2, 10 + wave, 10 + wave, 10 + wave);
            }
        }

        foreach (var rack in site.Racks)
        {
            yield return new DaySum(day, rack.Name, DayFigure.Floods, 3, 3, 3);
        }

        foreach (var sensor in site.Sensors.Where(sensor => !sensor.IsContact))
        {
            yield return new DaySum(day, sensor.Name, DayFigure.Measured, 18 + 2 * wave, 20 + 2 * wave, 24 + 2 * wave);
        }
    }

    private static IEnumerable<Sample> SamplesOf(Site site, Instant begin)
    {
        for (var minute = 0; minute < 1440; minute++)
        {
            var wave = Math.Sin(minute / 1440.0 * 2 * Math.PI);
            foreach (var sensor in site.Sensors.Where(sensor => !sensor.IsContact))
            {
                var middle = (Math.Max(sensor.PlausibleMin, 0) + Math.Min(sensor.PlausibleMax, 50)) / 2;
                var drawn = sensor.Kind == SensorKind.ReservoirLevel && minute % 360 is > 120 and < 136 ? 200 : 0;
                var value = sensor.Kind == SensorKind.ReservoirLevel ? 420 - drawn : middle * (1 + 0.1 * wave);
                yield return new Sample(begin + Duration.FromMinutes(minute), sensor.Name, value);
            }
        }
    }
}
