using RackController.Service;

namespace RackController.Page;

/// <summary>The one draft of the rack file that there is at a time, whoever works at it: begun, tried, put in place or thrown
/// away.</summary>
/// <param name="rack">The rack.</param>
/// <param name="shelf">The file and its earlier versions.</param>
internal sealed class ScheduleDesk(IServedRack rack, RackFileShelf shelf)
{
    private readonly Lock gate = new();
    private Draft? draft;

    /// <summary>The file and its earlier versions.</summary>
    public RackFileShelf Shelf => shelf;

    /// <summary>The draft; null while there is none.</summary>
    public Draft? Draft => draft;

    /// <summary>Judges a text and begins its trial, in the place of the draft before.</summary>
    /// <param name="text">The text.</param>
    /// <param name="status">The picture, for the time.</param>
    /// <exception cref="IOException">The file in use cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read.</exception>
    public Draft Begin(string text, SiteStatus status)
    {
        var fresh = Draft.Begin(text.ReplaceLineEndings("\n"), shelf.Read(), shelf.Name, status.At);
        lock (gate)
        {
            draft?.GiveUp();
            draft = fresh;
        }

        return fresh;
    }

    /// <summary>Throws the draft away.</summary>
    public void Discard()
    {
        lock (gate)
        {
            draft?.GiveUp();
            draft = null;
        }
    }

    /// <summary>Puts the draft in the place of the file. The rack goes over to it with <see cref="StartAgain"/>.</summary>
    /// <param name="by">Who asks.</param>
    /// <param name="status">The picture, for the time.</param>
    /// <returns>Why it cannot be done; null when it was.</returns>
    /// <exception cref="IOException">The file cannot be written; it stays as it was.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written; it stays as it was.</exception>
    public string? Apply(string by, SiteStatus status)
    {
        lock (gate)
        {
            if (WhatIsWrongWith(draft) is { } wrong)
            {
                return wrong;
            }

            shelf.Replace(draft!.Text, status.At.Wall);
            draft = null;
        }

        rack.Record("rack file changed", $"{by} put a draft in place");
        return null;
    }

    private string? WhatIsWrongWith(Draft? current) =>
        current is null ? "There is no draft: write one first."
        : current.Site is null ? "No rack can be driven by the draft: mend what is named first."
        : current.TrialFault is { } fault ? $"The trial of the draft came to nothing ({fault}): have it judged and tried again."
        : current.Trial is null ? "The trial of the draft has not ended: wait for it."
        : current.Before != shelf.Read() ? "Somebody has changed the file since the draft was begun: open the schedule anew."
        : null;

    /// <summary>Has the rack driven by what the file says now.</summary>
    /// <param name="by">Who asks.</param>
    public void StartAgain(string by) => rack.StartAgain($"{by} changed the rack file");
}
