using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Scanning;

/// <summary>
/// Chooses the scans of a story that could matter by the word of a controller: at <see cref="RackControl.NextChange"/>, and when a
/// contact, a measured value past one of <see cref="RackControl.Levels"/>, a quality, a clock, a condition or a person says something
/// new. What a bench that leaps would scan, and nothing else.
/// </summary>
internal sealed class ScanChooser(RandomStory story)
{
    private readonly Readings last = new(story.Site);
    private readonly Duration?[] lags = new Duration?[story.Site.Sensors.Length];
    private Moment lastNow = story.Now;
    private bool wereConditionsGood;

    /// <summary>Whether this scan could matter, after all the ones before.</summary>
    public bool CouldMatter(RackControl control)
    {
        var now = story.Now;
        var isClockSteady = now.WallTrusted == lastNow.WallTrusted
            && now.Wall - lastNow.Wall == now.Monotonic - lastNow.Monotonic;
        var areConditionsGood = story.Conditions == ScanConditions.Good;
        var couldMatter = !isClockSteady || !areConditionsGood || !wereConditionsGood || story.Requests.Length > 0
            || now.Monotonic >= control.NextChange;
        foreach (var sensor in story.Site.Sensors)
        {
            couldMatter |= SaysSomethingNew(sensor);
        }

        (lastNow, wereConditionsGood) = (now, areConditionsGood);
        last.CopyFrom(story.Readings);
        return couldMatter;
    }

    private bool SaysSomethingNew(Sensor sensor)
    {
        var (before, now) = (last[sensor.Id], story.Readings[sensor.Id]);
        var lagBefore = lags[sensor.Id.Index];
        var lag = before.TakenAt == now.TakenAt ? (Duration?)null : Lag(now);
        lags[sensor.Id.Index] = lag;
        return lag != lagBefore || now.Quality != before.Quality || Passes(sensor, before.Value, now.Value);
    }

    // None while its readings stand still; of a time that is nonsense it is beyond all others.
    private Duration? Lag(in Reading reading) =>
        Math.Abs((decimal)story.Now.Monotonic.Nanoseconds - reading.TakenAt.Nanoseconds) < long.MaxValue
            ? story.Now.Monotonic - reading.TakenAt
            : Duration.MaxValue;

    private bool Passes(Sensor sensor, double before, double now)
    {
        if (before.Equals(now) || sensor.IsContact || double.IsNaN(before) || double.IsNaN(now))
        {
            return !before.Equals(now);
        }

        return story.Levels[sensor.Id].Any(level => before < level != now < level || before > level != now > level);
    }
}
