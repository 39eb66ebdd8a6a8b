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
        var fresh = Draft.Begin(text.ReplaceLineEndings("\n"), shelf.Read(), shelf.Name, status.At.Wall);
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
            if (draft is not { Trial: not null } current || current.Before != shelf.Read())
            {
                return "There is no draft that was tried on what is in place now: somebody else has changed the file. Open the schedule "
                    + "anew.";
            }

            shelf.Replace(current.Text, status.At.Wall);
            draft = null;
        }

        rack.Record("rack file changed", $"{by} put a draft in place");
        return null;
    }

    /// <summary>Has the rack driven by what the file says now.</summary>
    /// <param name="by">Who asks.</param>
    public void StartAgain(string by) => rack.StartAgain($"{by} changed the rack file");
}
