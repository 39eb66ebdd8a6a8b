using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>
/// Doubts a measuring sensor whose word stood still to the last bit although something happened that must have moved it. It is
/// looked at once a minute from then on, and believed again when it has said something else a few times in a row.
/// </summary>
internal sealed class ReadingDoubt(SensorId sensor)
{
    private const int MovesToTrust = 3;
    private static readonly Duration period = Duration.FromMinutes(1);
    private double last;
    private int moves;
    private MonotonicTime lookAt;

    /// <summary>Whether the sensor is doubted.</summary>
    public bool IsDoubted { get; private set; }

    /// <summary>The sensor is doubted from the next scan on.</summary>
    /// <param name="facts">What this scan knows.</param>
    /// <param name="words">What it did, as a phrase that can follow its name.</param>
    public void Begin(Facts facts, string words)
    {
        // Whoever doubts goes by a sensor that is still believed.
        IsDoubted = true;
        moves = 0;
        lookAt = facts.Now.Monotonic;
        facts.Doubt(sensor, words);
    }

    /// <summary>Looks whether it moves again.</summary>
    public void Look(Facts facts, Agenda agenda)
    {
        if (!IsDoubted)
        {
            return;
        }

        if (facts.Now.Monotonic >= lookAt)
        {
            Judge(facts);
            lookAt = facts.Now.Monotonic + period;
        }

        // What was doubted or believed anew in this scan counts from the next on.
        agenda.Add(IsDoubted && facts.DoubtAbout(sensor) is not null ? lookAt : facts.Now.Monotonic);
    }

    private void Judge(Facts facts)
    {
        if (!facts.TrySampleDoubted(sensor, lookAt, out var value))
        {
            return;
        }

        moves = value.Equals(last) ? 0 : moves + 1;
        last = value;

        // The first look only takes down where it stands.
        if (moves > MovesToTrust)
        {
            IsDoubted = false;
            facts.Doubt(sensor, null);
        }
    }
}
