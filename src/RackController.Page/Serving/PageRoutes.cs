using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using RackController.Service;

namespace RackController.Page;

/// <summary>Every address of the page, and what each asks of whoever calls it.</summary>
internal static class PageRoutes
{
    /// <summary>Puts them on the map.</summary>
    public static void Map(IEndpointRouteBuilder routes, PageOptions options, AccessParts access, ServedAt served, CancellationToken end)
    {
        var rack = access.Rack;
        var books = new BookDesk(options.Folder.Book, rack.Site);
        var views = new NowViewOf(rack.Site, options.Speed, books);
        PageFiles.Map(routes);
        routes.MapGet("/", context => NowAsync(context, rack, views)).For(Role.View);
        routes.MapGet("/live", new LiveStream(new Broadcast(rack, views), end).ServeAsync).For(Role.View).Lasting();
        ActRoutes.Map(routes, rack);
        new ProofTestRoutes(rack).Map(routes);
        var desk = new ScheduleDesk(rack, new RackFileShelf(options.RackFile, options.Folder.RackFileVersions));
        new ScheduleRoutes(rack, desk).Map(routes);
        var past = new Past(options.Folder.Journal);
        new BatchRoutes(rack, books, past, desk).Map(routes);
        new NewBatchRoutes(rack, books, options.CropsFile).Map(routes);
        new HistoryRoutes(rack, past).Map(routes);
        new EventRoutes(rack, past).Map(routes);
        new FloodRoutes(rack, past).Map(routes);
        var tuning = new TuneDesk(desk);
        new TuneRoutes(rack, tuning, past).Map(routes);
        var notices = new NoticesView(rack.Site, options.Folder);
        new AlarmDeskRoutes(rack, past, notices).Map(routes);
        new NoticesRoutes(rack, notices).Map(routes);
        var upkeep = new UpkeepDesk(rack.Site, books);
        new UpkeepRoutes(rack, past, upkeep).Map(routes);
        new ApiUpkeepRoutes(rack, past, upkeep).Map(routes);
        ApiRoutes.Map(routes, rack, end);
        new ApiPastRoutes(rack, past).Map(routes);
        new ApiRackFileRoutes(rack, desk).Map(routes);
        new ApiBatchRoutes(rack, books, past).Map(routes);
        new ApiTuneRoutes(rack, tuning, past).Map(routes);
        Health.Map(routes, rack);
        Metrics.Map(routes, rack);
        new SignInRoutes(access).Map(routes);
        new AccountRoutes(access).Map(routes);
        new PeopleRoutes(access, served).Map(routes);
    }

    private static async Task NowAsync(HttpContext context, IServedRack rack, NowViewOf views)
    {
        var view = views.View(await rack.LookAsync(context).ConfigureAwait(false));
        var regions = await NowRegions.RenderAsync(view).ConfigureAwait(false);
        var page = new NowPage(new FrameView(rack.Site.Name, "Now", "Now", IsLive: true), regions);
        await Answer.WithAsync(context, Slices.Now.Create(page)).ConfigureAwait(false);
    }
}
