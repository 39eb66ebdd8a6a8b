using NodaTime;
using RackController.Growing;
using RackController.Model;

namespace RackController.Service;

/// <summary>Where works of upkeep are put down as done, and what was put down by mistake is struck.</summary>
/// <param name="site">The site.</param>
/// <param name="book">Its growing book.</param>
public sealed class UpkeepDesk(Site site, BookDesk book)
{
    /// <summary>What the book says.</summary>
    /// <exception cref="IOException">It cannot be read.</exception>
    public GrowingBook Book => book.Look();

    /// <summary>A work of a rack.</summary>
    /// <param name="rackName">The name of the rack, as somebody wrote it.</param>
    /// <param name="workKey">The key of the work, as somebody wrote it.</param>
    /// <param name="complaint">Why there is none, and what to write; empty where there is one.</param>
    public (Rack Rack, UpkeepWork Work)? Find(string rackName, string workKey, out string complaint)
    {
        complaint = "";
        if (site.Racks.FirstOrDefault(each => each.Name == rackName) is not { } rack)
        {
            complaint = $"there is no rack `{rackName}`: {NearestName.Advice(rackName, [.. site.Racks.Select(each => each.Name)])}";
            return null;
        }

        var keys = UpkeepWorks.Of(site, rack).Select(each => each.Key()).ToList();
        if (UpkeepWorks.OfKey(workKey) is { } work && keys.Contains(work.Key()))
        {
            return (rack, work);
        }

        complaint = $"{rack.Name} has no work `{workKey}`: {NearestName.Advice(workKey, keys)}";
        return null;
    }

    /// <summary>When a work was last put down as done; null for never.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="work">The work.</param>
    /// <exception cref="IOException">The book cannot be read.</exception>
    public Instant? LastDone(Rack rack, UpkeepWork work) => Book.Upkeep
        .Where(one => one.Rack == rack.Name && one.Work == work.Key()).Select(one => (Instant?)one.At).Max();

    /// <summary>Puts a work down as done.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="work">The work.</param>
    /// <param name="note">What there is to say of it; empty for nothing.</param>
    /// <param name="by">Who did it.</param>
    /// <param name="now">The time.</param>
    /// <returns>Why not; null where it was put down, and lasts.</returns>
    /// <exception cref="IOException">The book cannot be read or written; nothing was changed.</exception>
    public string? Done(Rack rack, UpkeepWork work, string note, string by, in Moment now) =>
        !now.WallTrusted ? "the clock is not trusted yet, and would put it down under a wrong date: try again once it is"
        : note.Length > BookRules.MostText ? $"a note has at most {BookRules.MostText} letters"
        : book.Write(new UpkeepDone(now.Wall, by, work.Key(), rack.Name, note.Trim()));

    /// <summary>Strikes a work that was put down by mistake: it stays legible and counts no more.</summary>
    /// <param name="number">The number of the entry.</param>
    /// <param name="why">Why, in the person's words.</param>
    /// <param name="by">Who strikes it.</param>
    /// <param name="now">The time.</param>
    /// <returns>Why not; null where it was struck.</returns>
    /// <exception cref="IOException">The book cannot be read or written; nothing was changed.</exception>
    public string? Strike(long number, string why, string by, Instant now) =>
        Book.Entries.FirstOrDefault(one => one.Number == number)?.Entry is not UpkeepDone
            ? $"there is no work of upkeep with number {number}"
        : why.Length > BookRules.MostText ? $"a reason has at most {BookRules.MostText} letters"
        : book.Write(new EntryStruck(now, by, number, why.Trim()));
}
