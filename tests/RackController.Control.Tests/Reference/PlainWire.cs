using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>Whether a load draws current, by a sensor in its own wire, in one run of the controller, page by page. Nobody knows until
/// things have been as they are for a while and a reading was taken since; then one is looked for now and again.</summary>
/// <param name="story">The chronicle.</param>
/// <param name="load">The load.</param>
/// <param name="sensor">The sensor in its wire.</param>
/// <param name="meter">That of its circuit; null where there is none.</param>
internal sealed class PlainWire(Chronicle story, Load load, Sensor sensor, PlainMeter? meter)
{
    private static readonly Duration settles = Duration.FromSeconds(3);
    private readonly double flowingA = 0.5 * load.CurrentA(story.Site[load.Circuit].VoltageV);
    private (bool IsOn, bool IsFlowing, bool IsIoOk)? seen;
    private MonotonicTime settledAt;
    private MonotonicTime nextTry;
    private Flow flow;
    private bool isSure;

    public Load Load { get; } = load;

    /// <summary>Reads the last page.</summary>
    /// <returns>What it knows; null while the sensor says nothing that may be believed.</returns>
    public Flow? Read()
    {
        var now = story.Now.At.Monotonic;
        if (story.Now.Believed[sensor.Id.Index] is not { } amperes)
        {
            seen = null;
            return null;
        }

        var sees = (story.WasOn(Load.Id, story.Last), IsFlowing: amperes > flowingA, story.Now.Conditions.Io.IsOk);
        if (sees != seen)
        {
            seen = sees;
            settledAt = now + (story.Now.Conditions.Io.IsOk ? settles : Duration.FromSeconds(4));
            (flow, isSure, nextTry) = (Flow.Unknown, false, settledAt);
        }

        if (!isSure && now >= nextTry)
        {
            var isOfNow = story.Now.Readings[sensor.Id.Index].TakenAt >= settledAt;
            var isRefuted = sees is { Item1: false, IsFlowing: true } && meter is not null && meter.SpeaksAgainst(Load);
            (flow, isSure) = (!isOfNow ? Flow.Unknown : isRefuted ? Flow.SeemsToFlow : sees.IsFlowing ? Flow.Flows : Flow.Still,
                isOfNow && !isRefuted);
            nextTry = now + settles;
        }

        return Together(sees.Item1);
    }

    // Off: where its circuit thinks otherwise, what was seen while everything was off decides; until then it seems to flow.
    private Flow Together(bool isOn)
    {
        if (isOn || flow is Flow.Unknown or Flow.Flows || meter?.ThinksOf(Load) is not { } thought)
        {
            return flow;
        }

        return flow == Flow.Still && thought.Flow is not (Flow.Flows or Flow.SeemsToFlow) ? Flow.Still
            : thought.IsSeenAlone ? thought.Flow
            : Flow.SeemsToFlow;
    }
}
