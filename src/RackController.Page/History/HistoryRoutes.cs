using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RackController.Service;

namespace RackController.Page;

/// <summary>The past of the racks: charts, their numbers, and files of them.</summary>
internal sealed class HistoryRoutes(IServedRack rack, Past past)
{
    /// <summary>Puts them on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/history", ShowAsync).For(Role.View);
        routes.MapGet("/history/data", DataAsync).For(Role.View);
        routes.MapGet("/history.csv", FileAsync).For(Role.View);
        routes.MapGet(ChartLibrary.Address, ChartLibrary.WriteAsync).ForAnyone();
    }

    private async Task ShowAsync(HttpContext context)
    {
        var asked = await AskedAsync(context).ConfigureAwait(false);
        var unwritten = rack.UnwrittenSamples();
        PastOfRack? found = null;
        string? fault = null;
        try
        {
            found = await past.ReadAsync(journal => HistoryView.Read(journal, rack.Site, asked, unwritten), context.RequestAborted)
                .ConfigureAwait(false);
        }
        catch (CouldNotRunException e)
        {
            fault = e.Message;
        }

        var frame = new FrameView(rack.Site.Name, "History", "History", IsLive: false);
        var page = HistoryView.Page(frame, rack.Site, asked, found, fault);
        await Answer.WithAsync(context, Slices.History.Create(page)).ConfigureAwait(false);
    }

    private Task DataAsync(HttpContext context) => ReadAsync(context, (asked, found) =>
        ApiAnswers.WriteAsync(context, json => ChartData.Write(json, found, asked.Span, rack.Site)));

    private Task FileAsync(HttpContext context) => ReadAsync(context, (asked, found) =>
        Csv.WriteAsync(context, "history.csv", HistoryFile.Rows(found, asked.Span, rack.Site)));

    private async Task ReadAsync(HttpContext context, Func<HistoryAsked, PastOfRack, Task> answer)
    {
        var asked = await AskedAsync(context).ConfigureAwait(false);
        var unwritten = rack.UnwrittenSamples();
        PastOfRack found;
        try
        {
            found = await past.ReadAsync(journal => PastOfRack.Read(journal, rack.Site, asked, unwritten), context.RequestAborted)
                .ConfigureAwait(false);
        }
        catch (CouldNotRunException e)
        {
            await Answer.SayAsync(context, StatusCodes.Status503ServiceUnavailable, e.Message).ConfigureAwait(false);
            return;
        }

        await answer(asked, found).ConfigureAwait(false);
    }

    private async Task<HistoryAsked> AskedAsync(HttpContext context)
    {
        var status = await rack.LookAsync(context).ConfigureAwait(false);
        return HistoryAsked.Of(context.Request.Query, rack.Site, status.At.Wall);
    }
}
