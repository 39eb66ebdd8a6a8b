using System.Collections.Immutable;
using NodaTime;
using RackController.Bench;
using RackController.Model;
using RackController.RackFile;

namespace RackController.Page;

/// <summary>A rack file that somebody thinks of putting in place: judged at once, and tried on the simulated racks in the background
/// beside the one that is in use.</summary>
internal sealed class Draft
{
    private volatile bool isGivenUp;
    private double share;

    private Draft(string before, string text, RackFileResult read)
    {
        Before = before;
        Text = text;
        Complaints = read.Complaints;
        Site = read.Site;
    }

    /// <summary>The text that it would replace.</summary>
    public string Before { get; }

    /// <summary>The text.</summary>
    public string Text { get; }

    /// <summary>What is wrong with it, and what would be wiser otherwise.</summary>
    public ImmutableArray<Complaint> Complaints { get; }

    /// <summary>The site that it describes; null where it cannot be run.</summary>
    public Site? Site { get; }

    /// <summary>The share of the trial that is done: 0 to 1.</summary>
    public double Progress => Volatile.Read(ref share);

    /// <summary>The trial; null while it goes on, and where it cannot be run.</summary>
    public Trial? Trial { get; private set; }

    /// <summary>Why the trial came to nothing; null when it did not.</summary>
    public string? TrialFault { get; private set; }

    /// <summary>Judges a text, and begins its trial where it can be run.</summary>
    /// <param name="text">The text.</param>
    /// <param name="before">The text that is in use.</param>
    /// <param name="file">What complaints call the file.</param>
    /// <param name="at">The present time; days to come are refused only where the wall clock can be trusted.</param>
    public static Draft Begin(string text, string before, string file, Moment at)
    {
        var now = at.Wall;
        var draft = new Draft(
            before, text, RackFileReader.Parse(text, file, at.WallTrusted ? zone => now.InZone(zone).Date : null));
        if (draft.Site is { } site)
        {
            var today = RackFileReader.Parse(before, file).Site;
            new Thread(() => draft.Try(today, site, now)) { Name = "trial", IsBackground = true }.Start();
        }

        return draft;
    }

    /// <summary>Gives the trial up.</summary>
    public void GiveUp() => isGivenUp = true;

    private void Try(Site? today, Site site, Instant now)
    {
        QuietThread.Begin();
        try
        {
            var half = today is null ? 0.0 : 0.5;
            var asItIs = today is null ? null : WeekAhead.Of(today, now, done => Tell(done * half));
            Trial = new Trial(asItIs, WeekAhead.Of(site, now, done => Tell(half + (done * (1 - half)))));
        }
        catch (OperationCanceledException)
        {
            TrialFault = "given up";
        }
        catch (Exception e)
        {
            // Nothing is applied on the strength of a trial that was none, and no trial may end the process that drives the racks.
            TrialFault = e.Message;
        }
    }

    private void Tell(double done)
    {
        if (isGivenUp)
        {
            throw new OperationCanceledException();
        }

        Volatile.Write(ref share, done);
    }
}

/// <summary>What a week comes to, as it is and as it would be.</summary>
/// <param name="AsItIs">With the rack file in use; null where that cannot be run.</param>
/// <param name="AsDrafted">With the draft.</param>
internal sealed record Trial(WeekAhead? AsItIs, WeekAhead AsDrafted);
