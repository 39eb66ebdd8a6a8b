using System.CommandLine;
using NodaTime;
using RackController.Model;
using RackController.Service;

namespace RackController.Verbs;

/// <summary><c>upkeep FILE</c>: which works of upkeep are due, and why; with <c>--done WORK --rack NAME</c> puts one down as done, whether
/// or not the racks are driven meanwhile.</summary>
internal static class UpkeepVerb
{
    /// <summary>The verb, ready to be listed.</summary>
    public static Command Create()
    {
        var done = new Option<string?>("--done") { HelpName = "work", Description = "Put a work down as done, with --rack." };
        done.CompletionSources.Add([.. Enum.GetValues<UpkeepWork>().Select(work => work.Key())]);
        var rack = new Option<string?>("--rack") { HelpName = "name", Description = "The rack on which it was done." };
        var note = new Option<string?>("--note") { HelpName = "text", Description = "What there is to say of it." };
        var verb = SiteVerb.Create(
            "upkeep", "List which works of upkeep are due, and why, or put one down as done.",
            "A rack file, such as config/demo-four-tier.yaml.",
            (asked, parsed) => (parsed.GetValue(done), parsed.GetValue(rack)) is ({ } work, { } name)
                ? PutDown(asked, name, work, parsed.GetValue(note) ?? "")
                : List(asked));
        verb.Add(done);
        verb.Add(rack);
        verb.Add(note);
        verb.Validators.Add(result =>
        {
            var isDone = result.GetResult(done) is not null;
            if (isDone != result.GetResult(rack) is not null || (result.GetResult(note) is not null && !isDone))
            {
                result.AddError("--done and --rack go together, and --note only with them: give both");
            }
        });
        return verb;
    }

    private static int List(SiteRequest asked)
    {
        var now = SystemClock.Instance.GetCurrentInstant();
        var isDriven = File.Exists(asked.Folder.Journal);
        var list = isDriven ? Read(asked, now) : UpkeepList.OfNew(asked.Site, now);
        UpkeepTable.Print(asked.Site, list, isDriven ? now : null, Screen.Over(asked.Output));
        return list.Works.Any(work => work.IsDue) || list.Relays.Any(relay => relay.IsWorn) ? ExitCode.AnswerIsNo : ExitCode.AsExpected;
    }

    private static UpkeepList Read(SiteRequest asked, Instant now) => WithBook(asked, book =>
    {
        using var journal = JournalHistory.Open(asked.Folder.Journal);
        return UpkeepList.Read(asked.Site, journal, book.Look().Upkeep, now);
    });

    private static T WithBook<T>(SiteRequest asked, Func<BookDesk, T> use)
    {
        try
        {
            return use(new BookDesk(asked.Folder.Book, asked.Site));
        }
        catch (IOException e)
        {
            throw new CouldNotRunException($"{e.Message}: see that it is the folder of this rack, and that you may write there", e);
        }
    }

    private static int PutDown(SiteRequest asked, string rackName, string workKey, string note)
    {
        var now = new Moment(MonotonicTime.Zero, SystemClock.Instance.GetCurrentInstant(), WallTrusted: true);
        var refused = WithBook(asked, book =>
        {
            var desk = new UpkeepDesk(asked.Site, book);
            return desk.Find(rackName, workKey, out var complaint) is not { } found ? complaint
                : desk.Done(found.Rack, found.Work, note, $"{Environment.UserName} at the terminal", now);
        });
        if (refused is not null)
        {
            throw new CouldNotRunException(refused);
        }

        FolderOwner.Give(asked.Folder.Path, asked.Folder.Book);
        asked.Output.WriteLine($"{workKey} of {rackName} is put down as done");
        return ExitCode.AsExpected;
    }
}
