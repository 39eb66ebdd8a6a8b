using NodaTime;
using RackController.Bench;
using RackController.Model;
using RackController.RackFile;
using RackController.Service;

namespace RackController.Page;

/// <summary>The one fit that there is at a time, whoever asked for it. It goes by the rack file as it lies on the disk, as <c>tune</c>
/// does, since that is what it may be written into.</summary>
/// <param name="schedule">Where a draft of the rack file is begun.</param>
internal sealed class TuneDesk(ScheduleDesk schedule)
{
    private readonly Lock gate = new();
    private TuneFit? fit;
    private int begun;

    /// <summary>The last fit; null before the first.</summary>
    public TuneFit? Fit => fit;

    /// <summary>Whether a draft would take the place of another.</summary>
    public bool HasDraft => schedule.Draft is not null;

    /// <summary>Reads the rack file.</summary>
    /// <exception cref="CouldNotRunException">It cannot be read, or no rack can be driven by it: one line that says why.</exception>
    public TunedFile Read()
    {
        try
        {
            var text = schedule.Shelf.Read();
            return RackFileReader.Parse(text, schedule.Shelf.Name).Site is { } site
                ? new TunedFile(text, site)
                : throw new CouldNotRunException("The rack file cannot be run as it stands: see the schedule, and mend it first.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new CouldNotRunException($"The rack file cannot be read: {e.Message}");
        }
    }

    /// <summary>Begins a fit in the place of the one before.</summary>
    /// <param name="file">The rack file.</param>
    /// <param name="rack">A rack of it.</param>
    /// <param name="times">What it is fitted to.</param>
    /// <param name="now">The present time.</param>
    public TuneFit Begin(TunedFile file, Rack rack, TuneTimes times, Instant now)
    {
        lock (gate)
        {
            fit?.GiveUp();
            return fit = TuneFit.Begin(++begun, file.Text, rack, times, now);
        }
    }

    /// <summary>Begins a draft of the rack file with what was fitted, in the place of the draft before. It is tried and put in place like
    /// any other.</summary>
    /// <param name="number">Which fit.</param>
    /// <param name="status">The picture, for the time.</param>
    /// <returns>Why it cannot be done; null when it was.</returns>
    /// <exception cref="IOException">The rack file cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read.</exception>
    public string? Draft(int number, SiteStatus status)
    {
        var last = fit;
        if (last is null || last.Number != number)
        {
            return last is null ? "Nothing was fitted: fit the rack first." : "The rack was fitted anew since: look at that fit first.";
        }

        if (last.Outcome?.Tuned is not { } tuned)
        {
            return last.IsUnderWay ? "The fit has not ended: wait for it."
                : $"There is no fit to draft: {last.Outcome?.Refusal ?? last.Fault}.";
        }

        if (schedule.Shelf.Read() != last.Text)
        {
            return "The rack file was changed since the fit was begun: fit the rack again.";
        }

        if (MeasuredSection.Put(last.Text, tuned.Rack, tuned.Rack.Measured!) is not { } text)
        {
            return $"{MeasuredSection.NoRoomIn(tuned.Rack)}.";
        }

        schedule.Begin(text, status);
        return null;
    }
}

/// <summary>The rack file as it lies on the disk.</summary>
/// <param name="Text">What it says.</param>
/// <param name="Site">The site that it describes.</param>
internal sealed record TunedFile(string Text, Site Site);
