using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>The rows that know by current what relays and loads really do, each as one plain question to the chronicle.</summary>
internal static class CurrentRowsPlain
{
    public static Answer RelayWelded(Chronicle story, Load load, Sensor sensor, string key)
    {
        var flowsThoughOff = Flows(story, load, sensor) == true && !story.WasOn(load.Id, story.Last);
        var latches = flowsThoughOff && story.Now.Conditions.Io.IsOk;
        return new Answer(flowsThoughOff, flowsThoughOff, latches || Latches.Stands(story, key));
    }

    public static Answer LoadDead(Chronicle story, Load load, Sensor sensor)
    {
        var isDead = Flows(story, load, sensor) == false && story.WasOn(load.Id, story.Last);
        return new Answer(isDead, isDead, Latched: false);
    }

    // Nobody knows until things have been as they are for a while and a reading was taken since; then one is looked for
    // now and again.
    private static bool? Flows(Chronicle story, Load load, Sensor sensor)
    {
        var settles = Duration.FromSeconds(3);
        var flowingA = 0.3 * load.PowerW / (story.Site[load.Circuit].VoltageV * load.PowerFactor);
        var (believed, seen) = ((bool?)null, (IsOn: false, IsFlowing: false, IsIoOk: false));
        var (settledAt, nextTry) = (story.Now.Boot.Start.Monotonic, story.Now.Boot.Start.Monotonic);
        foreach (var page in story.ThisRunBackwards().Reverse())
        {
            var now = story.Pages[page].At.Monotonic;
            if (story.Pages[page].Believed[sensor.Id.Index] is not { } amperes)
            {
                (believed, settledAt, nextTry) = (null, now, now);
                continue;
            }

            var sees = (story.WasOn(load.Id, page), amperes > flowingA, story.Pages[page].Conditions.Io.IsOk);
            if (sees != seen)
            {
                seen = sees;
                settledAt = now + (seen.IsIoOk ? settles : Duration.FromMinutes(1));
                (believed, nextTry) = (null, settledAt);
            }

            if (believed is null && now >= nextTry)
            {
                believed = story.Pages[page].Readings[sensor.Id.Index].TakenAt >= settledAt ? seen.IsFlowing : null;
                nextTry = now + settles;
            }
        }

        return believed;
    }
}
