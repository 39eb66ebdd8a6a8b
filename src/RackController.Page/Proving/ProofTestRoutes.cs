using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NodaTime;
using RackController.Control;
using RackController.Service;

namespace RackController.Page;

/// <summary>Proof tests: which there are, when each is due, and the steps of the one that is under way. While readings are waited for the
/// page looks again by itself; while a person is asked it stands still, so that nothing moves under a finger.</summary>
internal sealed class ProofTestRoutes(IServedRack rack)
{
    private const string Address = "/proof-tests";

    /// <summary>Puts them on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet(Address, ShowAsync).For(Role.View);
        routes.MapGet(Address + "/begin", ShowBeginAsync).For(Role.Operate);
        routes.MapPost(Address + "/begin", BeginAsync).For(Role.Operate);
        routes.MapPost(Address + "/answer", AnswerAsync).For(Role.Operate);
        routes.MapPost(Address + "/abandon", AbandonAsync).For(Role.Operate);
    }

    private async Task ShowAsync(HttpContext context)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        var (site, now) = (rack.Site, status.At.Wall);
        var running = status.ProofTest is { } test
            ? new RunningTestView(
                test, (now + test.Left).InZone(site.Zone).ToString("HH:mm:ss", CultureInfo.InvariantCulture),
                test.Words.Contains("flood", StringComparison.Ordinal) ? FloodAddress(test.Item) : null)
            : null;
        var frame = Frame("Proof tests") with { Again = running is { AsksNow: false } ? new Again(1, Address) : null };
        var page = new ProofTestPage(
            frame, Visitor.Of(context).May(Role.Operate), running,
            [
                .. status.Recent.Where(happened => happened.Kind == EventKind.ProofTest).Take(3).Select(happened => new DueView(
                    PageWords.Clock(happened.At.Wall, now, site.Zone), happened.Subject, happened.What, happened.Because)),
            ],
            [.. status.ProofTests.OrderByDescending(each => each.HasFailed || each.IsOverdue).Select(Row)]);
        await Answer.WithAsync(context, Slices.ProofTests.Create(page)).ConfigureAwait(false);
    }

    private ProofTestView Row(ProofTestStatus test) => new(
        test.Item, test.Kind.InWords(), $"every {test.Interval.TotalDays.ToString("0", CultureInfo.InvariantCulture)} days",
        (test.HasFailed ? "failed: repair it and test it again; " : "")
            + $"last passed: {(test.PassedAt is { } passed ? Day(passed) : "never")}" + (test.HasFailed ? "" : $", due {Day(test.DueAt)}"),
        test.HasFailed || test.IsOverdue);

    private string Day(Instant at) => at.InZone(rack.Site.Zone).ToString("d MMM uuuu", CultureInfo.InvariantCulture);

    private async Task ShowBeginAsync(HttpContext context)
    {
        var item = context.Request.Query["item"].ToString();
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        if (status.ProofTest is not null || status.ProofTests.FirstOrDefault(each => each.Item == item) is not { } test)
        {
            await Answer.SeeOther(context, Address).ConfigureAwait(false);
            return;
        }

        var load = rack.Site.Loads.FirstOrDefault(each => each.Name == item);
        var title = $"Proof test of {item}";
        var page = new ConfirmPage(
            Frame(title), title, ProofTestConsequences.Of(test, load), "Begin", Address + "/begin", [new HiddenField("item", item)]);
        await Answer.WithAsync(context, Slices.Confirm.Create(page)).ConfigureAwait(false);
    }

    private Task BeginAsync(HttpContext context) =>
        AskAsync(context, (form, _, by) => new BeginProofTest(by, form["item"].ToString()));

    // An answer is for the step that was on the page, and not for whichever has come since.
    private Task AnswerAsync(HttpContext context) => AskAsync(context, (form, running, by) =>
        IsOf(running, form) && running is { AsksPerson: true, WaitsForRack: false } && form["step"] == $"{running.Step}"
            ? new AnswerProofTest(by, form["seen"] == "yes")
            : null);

    private Task AbandonAsync(HttpContext context) =>
        AskAsync(context, (form, running, by) => IsOf(running, form) ? new AbandonProofTest(by) : null);

    private static bool IsOf(ProofTestProgress? running, IFormCollection form) => running?.Item == form["item"];

    private async Task AskAsync(HttpContext context, Func<IFormCollection, ProofTestProgress?, string, OperatorRequest?> request)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        var asked = request(form, status.ProofTest, Visitor.Of(context).Name);
        if (asked is not null && !rack.TryAsk(asked))
        {
            await ActRoutes.Busy(context).ConfigureAwait(false);
            return;
        }

        // The next scan takes it, and the picture after that shows what came of it.
        await rack.LookAsync(context).ConfigureAwait(false);
        await Answer.SeeOther(context, Address).ConfigureAwait(false);
    }

    private string? FloodAddress(string item) =>
        rack.Site.Racks.FirstOrDefault(each => item.StartsWith(each.Name + "/", StringComparison.Ordinal)) is { } of
            ? $"/racks/{of.Id.Index}/flood"
            : null;

    private FrameView Frame(string title) => new(rack.Site.Name, title, "Alarms", IsLive: false);
}
