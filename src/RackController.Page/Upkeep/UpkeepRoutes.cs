using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RackController.Control;
using RackController.Growing;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>Works of upkeep: what is due and why, what was done, and where it is put down.</summary>
internal sealed class UpkeepRoutes(IServedRack rack, Past past, UpkeepDesk desk)
{
    private const string Address = "/upkeep";

    private readonly UpkeepViewOf views = new(rack.Site);

    /// <summary>Puts them on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet(Address, ShowAsync).For(Role.View);
        routes.MapGet(Address + "/done", ShowDoneAsync).For(Role.Operate);
        routes.MapPost(Address + "/done", DoneAsync).For(Role.Operate);
        routes.MapGet(Address + "/strike", ShowStrikeAsync).For(Role.Operate);
        routes.MapPost(Address + "/strike", StrikeAsync).For(Role.Operate);
    }

    private async Task ShowAsync(HttpContext context)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        GrowingBook? book = null;
        UpkeepList? list = null;
        string? fault = null;
        try
        {
            book = desk.Book;
            list = await past.ReadAsync(
                journal => UpkeepList.Read(rack.Site, journal, book.Upkeep, status.At.Wall), context.RequestAborted).ConfigureAwait(false);
        }
        catch (Exception e) when (e is CouldNotRunException or IOException)
        {
            fault = e.Message;
        }

        var page = views.Page(Frame("Upkeep"), Visitor.Of(context).May(Role.Operate), list, book, fault, status.At.Wall);
        await Answer.WithAsync(context, Slices.Upkeep.Create(page)).ConfigureAwait(false);
    }

    private Task ShowDoneAsync(HttpContext context)
    {
        var query = context.Request.Query;
        return desk.Find(query["rack"].ToString(), query["work"].ToString(), out _) is { } found
            ? OrSaidAsync(context, () => AskDoneAsync(context, found.Rack, found.Work, null))
            : Answer.SeeOther(context, Address);
    }

    private Task AskDoneAsync(HttpContext context, Rack of, UpkeepWork work, string? complaint) =>
        Answer.WithAsync(context, Slices.UpkeepFields.Create(new UpkeepForm(
            Frame($"Done: {UpkeepViewOf.Title(work, of)}"), complaint,
            [work.Advice(), Cautions(work), "From now on it is counted anew. It stays in the growing book under your name."],
            "Note, if there is anything to say", IsFieldRequired: false, "It is done", Address + "/done",
            [new HiddenField("rack", of.Name), new HiddenField("work", work.Key()), new HiddenField("last", Stamp(of, work))])));

    private static string Cautions(UpkeepWork work) => work == UpkeepWork.Pump
        ? $"{HandsInWords.Plug} A pump is opened or lifted out only then. {HandsInWords.Hold}"
        : $"{HandsInWords.Plug} {HandsInWords.Hold}";

    private Task DoneAsync(HttpContext context) => OrSaidAsync(context, async () =>
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
        var status = await rack.LookAsync(context).ConfigureAwait(false);

        // A second tap, or one on a page of yesterday, must not count work that nobody did.
        if (desk.Find(form["rack"].ToString(), form["work"].ToString(), out _) is not { } found
            || form["last"] != Stamp(found.Rack, found.Work))
        {
            await Answer.SeeOther(context, Address).ConfigureAwait(false);
            return;
        }

        var by = Visitor.Of(context).Name;
        if (desk.Done(found.Rack, found.Work, form["text"].ToString(), by, status.At) is { } complaint)
        {
            await AskDoneAsync(context, found.Rack, found.Work, complaint).ConfigureAwait(false);
            return;
        }

        rack.Record($"upkeep done: {UpkeepViewOf.Title(found.Work, found.Rack)}", $"{by} put it down");
        await Answer.SeeOther(context, Address).ConfigureAwait(false);
    });

    private Task ShowStrikeAsync(HttpContext context) => OrSaidAsync(context, () =>
        views.Done(desk.Book).FirstOrDefault(one => Text(one.Number) == context.Request.Query["number"]) is { Struck: null } done
            ? AskStrikeAsync(context, done, null)
            : Answer.SeeOther(context, Address));

    private Task AskStrikeAsync(HttpContext context, UpkeepDoneView done, string? complaint) =>
        Answer.WithAsync(context, Slices.UpkeepFields.Create(new UpkeepForm(
            Frame("Strike what was put down by mistake"), complaint,
            [
                $"{done.What}, {done.At}, by {done.By}.",
                "It stays legible and counts no more: the work is counted on from when it was done before.",
            ],
            "Why it is wrong", IsFieldRequired: true, "Strike it", Address + "/strike", [new HiddenField("number", Text(done.Number))])));

    private Task StrikeAsync(HttpContext context) => OrSaidAsync(context, async () =>
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        if (views.Done(desk.Book).FirstOrDefault(one => Text(one.Number) == form["number"]) is not { Struck: null } done)
        {
            await Answer.SeeOther(context, Address).ConfigureAwait(false);
            return;
        }

        var by = Visitor.Of(context).Name;
        if (desk.Strike(done.Number, form["text"].ToString(), by, status.At.Wall) is { } complaint)
        {
            await AskStrikeAsync(context, done, complaint).ConfigureAwait(false);
            return;
        }

        rack.Record($"upkeep struck: {done.What}, {done.At}", $"{by} put it down by mistake");
        await Answer.SeeOther(context, Address).ConfigureAwait(false);
    });

    private string Stamp(Rack of, UpkeepWork work) => desk.LastDone(of, work) is { } at ? Text(at.ToUnixTimeTicks()) : "never";

    private static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static async Task OrSaidAsync(HttpContext context, Func<Task> answer)
    {
        try
        {
            await answer().ConfigureAwait(false);
        }
        catch (IOException e) when (!context.Response.HasStarted)
        {
            await Answer.SayAsync(
                context, StatusCodes.Status503ServiceUnavailable, $"Nothing was changed: {e.Message}.").ConfigureAwait(false);
        }
    }

    private FrameView Frame(string title) => new(rack.Site.Name, title, "Upkeep", IsLive: false);
}
