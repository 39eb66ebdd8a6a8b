using RackController.Control;

namespace RackController.Bench;

/// <summary>What comes next on the record of a run.</summary>
internal abstract record RecordStep;

/// <summary>The controller takes charge, or is taken up in the middle from what it remembered.</summary>
/// <param name="Page">The page that begins so.</param>
/// <param name="State">What was remembered and told.</param>
internal sealed record TakesCharge(RecordedPage Page, RecordedState State) : RecordStep;

/// <summary>What the controller remembers between two scans.</summary>
/// <param name="Page">The page that begins so.</param>
/// <param name="State">What was remembered and told.</param>
internal sealed record Remembers(RecordedPage Page, RecordedState State) : RecordStep;

/// <summary>A scan that could matter.</summary>
/// <param name="Scan">The scan.</param>
internal sealed record Scans(RecordedScan Scan) : RecordStep;

/// <summary>Something is not on record; nothing follows until the controller is taken up again.</summary>
/// <param name="What">What, in words.</param>
internal sealed record Loses(string What) : RecordStep;

/// <summary>Goes through the record of a run page by page, and says where something is missing.</summary>
internal static class RecordSteps
{
    /// <summary>The steps of a run, in order.</summary>
    public static IEnumerable<RecordStep> Of(RecordedRun run)
    {
        var expected = 0L;
        var isFollowed = false;
        foreach (var body in run.Pages)
        {
            if (!TryRead(body, out var page, out var trouble))
            {
                isFollowed = false;
                yield return new Loses($"a page cannot be read ({trouble})");
                continue;
            }

            if (WhatIsMissing(page, expected, isFollowed) is { } missing)
            {
                isFollowed = false;
                yield return new Loses(missing);
            }

            expected = page.Number + 1;
            if (page.State is { } state)
            {
                yield return isFollowed ? new Remembers(page, state) : new TakesCharge(page, state);
                isFollowed = true;
            }

            foreach (var scan in isFollowed ? page.Scans : [])
            {
                yield return new Scans(scan);
            }
        }
    }

    private static string? WhatIsMissing(RecordedPage page, long expected, bool isFollowed) =>
        page.Kind == PageKind.Resumes ? "a part could not be written"
        : page.Number == expected ? null
        : expected == 0 ? "its beginning is no longer there"
        : isFollowed ? "a part is missing"
        : null;

    private static bool TryRead(byte[] body, out RecordedPage page, out string trouble)
    {
        try
        {
            (page, trouble) = (RecordedPages.Read(body), "");
            return true;
        }
        catch (FormatException e)
        {
            (page, trouble) = (null!, e.Message);
            return false;
        }
    }
}
