using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>What a sensor is believed to say, worked out from all that it said.</summary>
internal static class PlainReadings
{
    /// <summary>What one sensor is believed to say at the last scan; null when nobody knows.</summary>
    public static double? Believed(IReadOnlyList<Page> pages, Site site, Sensor sensor)
    {
        var limits = sensor.Rack is { } rack ? site[rack].Limits : InterlockLimits.Default;
        var last = pages.Count - 1;
        var first = last + 1;
        while (first > pages[last].Boot.First && IsBelievable(pages[first - 1], sensor))
        {
            first--;
        }

        if (first > last)
        {
            return null;
        }

        if (sensor.HarmfulValue is not { } harmful)
        {
            var isGoodForLong = pages[last].At.Monotonic >= pages[first].At.Monotonic + limits.ContactReturn;
            return isGoodForLong ? pages[last].Readings[sensor.Id.Index].Value : null;
        }

        // Forward from the first believable sample: the latest stretch that is long enough says what it is.
        double? believed = null;
        var (stretchBegan, samples) = (first, 0);
        for (var i = first; i <= last; i++)
        {
            var isHarmful = IsClosed(pages[i], sensor) == (harmful == 1);
            var isSameStretch = i > first && IsClosed(pages[i], sensor) == IsClosed(pages[i - 1], sensor);
            (stretchBegan, samples) = isSameStretch ? (stretchBegan, samples + 1) : (i, 1);
            if (isHarmful && samples >= limits.SamplesToTrip)
            {
                believed = harmful;
            }
            else if (!isHarmful && pages[i].At.Monotonic >= pages[stretchBegan].At.Monotonic + limits.ContactReturn)
            {
                believed = 1 - harmful;
            }
        }

        return believed;
    }

    private static bool IsClosed(Page page, Sensor sensor) => page.Readings[sensor.Id.Index].Value >= 0.5;

    private static bool IsBelievable(Page page, Sensor sensor)
    {
        var (reading, now) = (page.Readings[sensor.Id.Index], page.At.Monotonic);
        return reading.Quality == ReadingQuality.Good
            && reading.TakenAt <= now && now <= reading.TakenAt + sensor.StaleAfter
            && reading.Value >= sensor.PlausibleMin && reading.Value <= sensor.PlausibleMax;
    }
}
