using System.Collections.Immutable;
using RackController.Growing;
using RackController.Model;

namespace RackController.Service;

/// <summary>Where the growing book of a site is looked at and written in. From any thread.</summary>
/// <param name="path">The file of the book.</param>
/// <param name="site">The site.</param>
public sealed class BookDesk(string path, Site site)
{
    private readonly BookFile file = new(path);
    private readonly Lock gate = new();
    private (DateTime Main, DateTime Log, long Length) seen;
    private GrowingBook? book;

    /// <summary>The numbers of entries that this program cannot read.</summary>
    public ImmutableArray<long> Unreadable { get; private set; } = [];

    /// <summary>What the book says, another process's entries included.</summary>
    /// <exception cref="IOException">It cannot be read.</exception>
    public GrowingBook Look()
    {
        lock (gate)
        {
            var stamp = Stamp();
            if (book is null || stamp != seen)
            {
                var reading = file.Read();
                (book, Unreadable, seen) = (GrowingBook.Of(reading.Entries), reading.Unreadable, stamp);
            }

            return book;
        }
    }

    /// <summary>Puts an entry down, unless something is wrong with it.</summary>
    /// <param name="entry">The entry.</param>
    /// <returns>What is wrong, a sentence; null where it was put down, and lasts.</returns>
    /// <exception cref="IOException">The book cannot be read or written; nothing was changed.</exception>
    public string? Write(BookEntry entry) => Write([entry]);

    /// <summary>Puts entries down, unless something is wrong with one of them.</summary>
    /// <param name="entries">The entries.</param>
    /// <returns>What is wrong, a sentence; null where all were put down, and last.</returns>
    /// <exception cref="IOException">The book cannot be read or written; nothing was changed.</exception>
    public string? Write(ImmutableArray<BookEntry> entries)
    {
        lock (gate)
        {
            var growing = Look();
            foreach (var entry in entries)
            {
                var today = entry.At.InZone(site.Zone).Date;
                if (BookRules.WhatIsWrong(growing, entry, tier => SiteTiers.PlacesOn(site, tier), today) is { } wrong)
                {
                    return wrong;
                }

                growing = GrowingBook.Of(growing.Entries.Add(new WrittenEntry(long.MaxValue, entry)));
            }

            file.Write(entries);
            book = null;
            return null;
        }
    }

    private (DateTime Main, DateTime Log, long Length) Stamp()
    {
        // Whoever reads leaves a log behind in which nothing stands.
        var log = new FileInfo(path + "-wal");
        var length = log.Exists ? log.Length : 0;
        return (File.GetLastWriteTimeUtc(path), length > 0 ? log.LastWriteTimeUtc : default, length);
    }
}
