using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NodaTime.Text;
using RackController.Bench;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>Fits a rack to its floods, as <c>tune</c> does: to those on record, or to times by hand. What comes of it becomes a draft of
/// the rack file; nothing is written here.</summary>
internal sealed class TuneRoutes(IServedRack rack, TuneDesk desk, Past past)
{
    private const string Address = "/tune";
    private const string FitAddress = Address + "/fit";

    /// <summary>Puts them on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet(Address, ShowAsync).For(Role.View);
        routes.MapPost(FitAddress, FitAsync).For(Role.Operate);
        routes.MapGet(FitAddress, ShowFitAsync).For(Role.View);
        routes.MapPost(Address + "/draft", DraftAsync).For(Role.Configure);
    }

    private Task ShowAsync(HttpContext context)
    {
        var query = context.Request.Query;
        return ShowAsync(context, query["rack"].ToString(), query["since"].ToString(), null, null);
    }

    private async Task ShowAsync(HttpContext context, string named, string since, IFormCollection? form, string? complaint)
    {
        TunePage page;
        try
        {
            var file = desk.Read();
            var asked = TuneAsked.Of(file.Site, named, since);
            page = Page(context, file.Site, asked) with
            {
                Complaint = complaint ?? asked.Complaint,
                Recorded = await RecordedAsync(context, file.Site, asked).ConfigureAwait(false),
                ByHand = HandRow.Of(asked.Rack, form),
            };
        }
        catch (CouldNotRunException e)
        {
            page = new TunePage(Frame("Fit to floods"), e.Message, [], 0, "", null, RecordedFloods.None, [], null, null, null);
        }

        context.Response.StatusCode = complaint is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity;
        await Answer.WithAsync(context, Slices.Tune.Create(page)).ConfigureAwait(false);
    }

    private TunePage Page(HttpContext context, Site site, TuneAsked asked)
    {
        var of = asked.Rack;
        var last = desk.Fit;
        return new TunePage(
            Frame("Fit to floods"), null, [.. site.Racks.Select(each => each.Name)], of.Id.Index,
            asked.Since is { } day ? LocalDatePattern.Iso.Format(day) : "", null, RecordedFloods.None, [],
            of.Measured is { } measured
                ? $"{of.Name} was fitted to {measured.Floods} floods, the last of {measured.On:uuuu-MM-dd}. A fit anew takes its place."
                : null,
            Visitor.Of(context).May(Role.Operate) && IsDriven(of) ? $"/racks/{of.Id.Index}/flood" : null,
            last is null ? null : $"{last.Rack.Name}, {PageWords.Date(last.At, site.Zone)}");
    }

    // A rack that was written into the file since the start cannot be flooded before the next one.
    private bool IsDriven(Rack of) => of.Id.Index < rack.Site.Racks.Length && rack.Site.Racks[of.Id.Index].Name == of.Name;

    private async Task<RecordedFloods> RecordedAsync(HttpContext context, Site site, TuneAsked asked)
    {
        try
        {
            return TimedFloodTable.Of(site, asked.Rack, await FloodsAsync(context, site, asked).ConfigureAwait(false));
        }
        catch (CouldNotRunException e)
        {
            return RecordedFloods.None with { Fault = e.Message };
        }
    }

    private Task<ImmutableArray<TimedFlood>> FloodsAsync(HttpContext context, Site site, TuneAsked asked) => past.ReadAsync(
        journal => new FloodTimings(site, asked.Rack).Newest(journal, asked.From(site.Zone)), context.RequestAborted);

    private async Task FitAsync(HttpContext context)
    {
        if (await FormReading.ReadAsync(context).ConfigureAwait(false) is not { } form)
        {
            return;
        }

        var (named, since) = (form["rack"].ToString(), form["since"].ToString());
        string? complaint;
        try
        {
            complaint = await BeginAsync(context, named, since, form).ConfigureAwait(false);
        }
        catch (CouldNotRunException e)
        {
            complaint = e.Message;
        }

        await (complaint is null ? Answer.SeeOther(context, FitAddress) : ShowAsync(context, named, since, form, complaint))
            .ConfigureAwait(false);
    }

    /// <summary>Begins a fit; what is wrong with what was asked, null when nothing is.</summary>
    private async Task<string?> BeginAsync(HttpContext context, string named, string since, IFormCollection form)
    {
        var file = desk.Read();
        var asked = TuneAsked.Of(file.Site, named, since);
        if (asked.Complaint is { } wrong)
        {
            return wrong;
        }

        var now = (await rack.LookAsync(context).ConfigureAwait(false)).At.Wall;
        TuneTimes times;
        if (form["by"] == "hand")
        {
            var rows = HandRow.Of(asked.Rack, form);
            if (!rows.All(row => row.IsFillRight && row.IsDrainRight))
            {
                return "Some times cannot be read: write minutes and seconds with commas between them, such as 3:10, 3:14, 3:09.";
            }

            times = TuneTimes.ByHand(
                asked.Rack, HandRow.Times(rows, row => row.Fill), HandRow.Times(rows, row => row.Drain), now.InZone(file.Site.Zone).Date);
        }
        else
        {
            var floods = await FloodsAsync(context, file.Site, asked).ConfigureAwait(false);
            if (floods.IsEmpty)
            {
                return $"No flood of {asked.Rack.Name} is on record with times: write them by hand.";
            }

            times = TuneTimes.OnRecord(floods, file.Site.Zone);
        }

        desk.Begin(file, asked.Rack, times, now);
        return null;
    }

    private async Task ShowFitAsync(HttpContext context)
    {
        if (desk.Fit is not { } fit)
        {
            await Answer.SeeOther(context, Address).ConfigureAwait(false);
            return;
        }

        var frame = Frame("Fit") with { Again = fit.IsUnderWay ? new Again(1, FitAddress) : null };
        var page = new TuneFitPage(
            frame, fit.Number, fit.Rack.Name, fit.Rack.Id.Index, fit.IsUnderWay, fit.Outcome?.Refusal ?? fit.Fault,
            fit.Outcome?.Tuned is { } tuned ? TunedWords.Of(tuned, rack.Site.Units, fit.Rack.Measured) : null,
            Visitor.Of(context).May(Role.Configure), [.. Consequences()]);
        await Answer.WithAsync(context, Slices.TuneFit.Create(page)).ConfigureAwait(false);
    }

    private IEnumerable<string> Consequences()
    {
        yield return "The figures go into the rack file as a section `measured` of this rack; every other line stays as it is.";
        yield return "It is a draft: a week of it is tried, and nothing changes before it is put in place.";
        yield return "The bench, a day ahead and the trial follow it, and floods are held against it for drift. No interlock follows it.";
        if (desk.HasDraft)
        {
            yield return "The draft that there is now is thrown away.";
        }
    }

    private async Task DraftAsync(HttpContext context)
    {
        if (await FormReading.ReadAsync(context).ConfigureAwait(false) is not { } form)
        {
            return;
        }

        _ = int.TryParse(form["fit"], NumberStyles.None, CultureInfo.InvariantCulture, out var number);
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        string? refused;
        try
        {
            refused = desk.Draft(number, status);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            refused = $"The rack file cannot be read: {e.Message}";
        }

        await (refused is null
            ? Answer.SeeOther(context, "/schedule/draft")
            : Answer.SayAsync(context, StatusCodes.Status409Conflict, refused)).ConfigureAwait(false);
    }

    private FrameView Frame(string title) => new(rack.Site.Name, title, "Floods", IsLive: false);
}
