using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>Everything that happened to a site since its controller first took charge, and the plain questions about it. Nothing is kept
/// but the pages: every answer is looked up from the beginning.</summary>
/// <param name="site">The site.</param>
internal sealed class Chronicle(Site site)
{
    private readonly List<Page> pages = [];

    public Site Site { get; } = site;

    public IReadOnlyList<Page> Pages => pages;

    /// <summary>The racks whose loads a latch holds, by its key.</summary>
    public Dictionary<string, HashSet<RackId>> LatchHolds { get; } = [];

    /// <summary>When each proof test was last passed, by the calendar; never later than it is.</summary>
    public Dictionary<string, Instant> PassedAt { get; } = [];

    public Page Now => pages[^1];

    public int Last => pages.Count - 1;

    public void Add(Page page) => pages.Add(page);

    /// <summary>Whether a page was written by a controller that has just started.</summary>
    public bool IsFirstOfItsRun(int page) => pages[page].Boot.First == page;

    /// <summary>The pages of the present run, the latest first.</summary>
    public IEnumerable<int> ThisRunBackwards()
    {
        for (var page = Last; page >= Now.Boot.First; page--)
        {
            yield return page;
        }
    }

    /// <summary>What a row answered at the scan before, also where that was before a restart; nothing before the very first scan.</summary>
    public Answer Before(string key, int page) =>
        page > 0 && pages[page - 1].Answers.TryGetValue(key, out var answer) ? answer : default;

    /// <summary>How long ago a page was written, as far as memory and clocks can tell; whole milliseconds where a restart lies
    /// between.</summary>
    public Duration Ago(int page) => Ago(pages[page].At.Monotonic, pages[page].Boot);

    /// <summary>How long ago the controller first took charge; it may have started anew before its first scan.</summary>
    public Duration InService() => pages[0].Boot.Away + Ago(pages[0].Boot.Start.Monotonic, pages[0].Boot);

    private Duration Ago(MonotonicTime from, Boot run)
    {
        var age = Duration.Zero;
        while (run != Now.Boot)
        {
            var next = NextRun(run);
            age = Duration.FromMilliseconds((long)(age + (next.SavedAt!.Value.Monotonic - from)).TotalMilliseconds) + next.Away;
            (run, from) = (next, next.Start.Monotonic);
        }

        return age + (Now.At.Monotonic - from);
    }

    /// <summary>Whether a load was told on by the scan before a page, which is what that page sees; before the first scan of a run
    /// everything is in its safe state.</summary>
    public bool WasOn(LoadId load, int page) =>
        IsFirstOfItsRun(page) ? Site[load].SafeState == SwitchState.On : pages[page - 1].On[load.Index];

    /// <summary>Whether a circuit was told to be cut by the scan before a page.</summary>
    public bool WasCut(CircuitId circuit, int page) => !IsFirstOfItsRun(page) && pages[page - 1].Cut[circuit.Index];

    /// <summary>Since when a load that is seen on has been on: the scan that told it.</summary>
    public MonotonicTime OnSince(LoadId load, int page)
    {
        var began = page - 1;
        while (WasOn(load, began))
        {
            began--;
        }

        return pages[began].At.Monotonic;
    }

    /// <summary>Since when a load that is seen off is sure to have been off: since it was told, or since outputs that failed work
    /// again, or since the start.</summary>
    public MonotonicTime OffSince(LoadId load, int page)
    {
        for (var each = page; !IsFirstOfItsRun(each); each--)
        {
            if (WasOn(load, each - 1))
            {
                return pages[each - 1].At.Monotonic;
            }

            if (!pages[each].Conditions.Io.IsOk)
            {
                return pages[each].At.Monotonic;
            }
        }

        var first = pages[pages[page].Boot.First];
        return first.Conditions.Io.IsOk ? first.Boot.Start.Monotonic : first.At.Monotonic;
    }

    private Boot NextRun(Boot run) => pages.First(page => page.Boot.First > run.First).Boot;
}
