using NodaTime;
using RackController.Model;

namespace RackController.Service;

/// <summary>
/// Which readings are worth keeping for trends: a contact when it changes, a measured value once a minute, and both when
/// they become worthless or good again. It spares the SD card.
/// </summary>
internal sealed class SampleThinning(Site site)
{
    /// <summary>How often a measured value is kept.</summary>
    public static readonly Duration MeasuredEvery = Duration.FromMinutes(1);

    private readonly double?[] kept = new double?[site.Sensors.Length];
    private readonly MonotonicTime[] dueAt = new MonotonicTime[site.Sensors.Length];

    /// <summary>Puts into the queue what is worth keeping.</summary>
    public void Offer(in Moment now, Readings readings, JournalQueue queue)
    {
        foreach (var sensor in site.Sensors)
        {
            var reading = readings[sensor.Id];
            double? value = reading.Quality == ReadingQuality.Good ? reading.Value : null;
            ref var last = ref kept[sensor.Id.Index];
            ref var due = ref dueAt[sensor.Id.Index];
            var firstTime = due == MonotonicTime.Zero;
            var changed = sensor.IsContact ? value != last : value.HasValue != last.HasValue;
            if (firstTime || changed || (!sensor.IsContact && now.Monotonic >= due))
            {
                last = value;
                due = now.Monotonic + MeasuredEvery;
                queue.Add(new Sample(now.Wall, sensor.Name, value));
            }
        }
    }
}
