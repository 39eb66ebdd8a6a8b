using NodaTime;
using RackController.Bench;
using RackController.Model;

namespace RackController.Page;

/// <summary>A fit of a rack to its floods that somebody asked for: under way on a thread that yields to everybody, or done.</summary>
internal sealed class TuneFit
{
    private volatile bool isGivenUp;

    private TuneFit(int number, string text, Rack rack, Instant at)
    {
        Number = number;
        Text = text;
        Rack = rack;
        At = at;
    }

    /// <summary>Which fit of this run of the page, from 1.</summary>
    public int Number { get; }

    /// <summary>The rack file that the rack was read from.</summary>
    public string Text { get; }

    /// <summary>The rack, as the file has it.</summary>
    public Rack Rack { get; }

    /// <summary>When it was asked for.</summary>
    public Instant At { get; }

    /// <summary>What came of it; null while it goes on, and where it came to nothing.</summary>
    public TuneOutcome? Outcome { get; private set; }

    /// <summary>Why it came to nothing; null when it did not.</summary>
    public string? Fault { get; private set; }

    /// <summary>Whether it goes on.</summary>
    public bool IsUnderWay => Outcome is null && Fault is null;

    /// <summary>Begins to fit.</summary>
    /// <param name="number">Which fit it is.</param>
    /// <param name="text">The rack file.</param>
    /// <param name="rack">The rack, as the file has it.</param>
    /// <param name="times">What it is fitted to.</param>
    /// <param name="now">The present time.</param>
    public static TuneFit Begin(int number, string text, Rack rack, TuneTimes times, Instant now)
    {
        var fit = new TuneFit(number, text, rack, now);
        new Thread(() => fit.Run(times)) { Name = "fit", IsBackground = true }.Start();
        return fit;
    }

    /// <summary>Gives it up.</summary>
    public void GiveUp() => isGivenUp = true;

    private void Run(TuneTimes times)
    {
        QuietThread.Begin();
        try
        {
            Outcome = RackTuning.Of(Rack, times, GoOnOrEnd);
        }
        catch (OperationCanceledException)
        {
            Fault = "given up";
        }
        catch (Exception e)
        {
            // Nothing is drafted on the strength of a fit that was none, and no fit may end the process that drives the racks.
            Fault = e.Message;
        }
    }

    private void GoOnOrEnd()
    {
        if (isGivenUp)
        {
            throw new OperationCanceledException();
        }
    }
}
