using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Routing;
using NodaTime;
using NodaTime.Text;
using RackController.Growing;
using RackController.PlanFiles;
using RackController.Service;

namespace RackController.Page;

/// <summary>How batches come into the growing book: one by one, or all those of a plan.</summary>
/// <param name="rack">The rack.</param>
/// <param name="books">The book.</param>
/// <param name="cropsFile">The path of the crops file.</param>
internal sealed class NewBatchRoutes(IServedRack rack, BookDesk books, string cropsFile)
{
    private const string Address = "/batches";

    /// <summary>Puts them on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet(Address + "/new", context => AskAsync(context, null)).For(Role.Operate);
        routes.MapPost(Address + "/new", BeginAsync).For(Role.Operate);
        routes.MapGet(Address + "/plan", context => AskForPlanAsync(context, null)).For(Role.Operate);
        routes.MapPost(Address + "/plan", TakeUpAsync).For(Role.Operate).WithMetadata(PlanBody.Limit);
    }

    private async Task AskAsync(HttpContext context, string? wrong)
    {
        var today = Today(await NowAsync(context).ConfigureAwait(false));
        var (crops, complaints, _) = CropsReader.Read(cropsFile);
        var day = LocalDatePattern.Iso.Format(today);
        var page = new BatchFormPage(
            Frame("Begin a batch"), "Begin a batch", wrong ?? (complaints.IsEmpty ? null : $"{complaints[0]}"),
            [$"Crops are those of {Path.GetFileName(cropsFile)}. Where it stands is put down when it goes into the light."],
            Address + "/new", "Begin it", Address,
            [
                new FormField("crop", "Crop", "select", "") { Options = [.. crops.Select(crop => new Fact(crop.Name, crop.Name))] },
                new FormField("trays", "Insert trays", "number", "1") { Least = "1", Most = "1000", Step = "1", IsRequired = true },
                new FormField("sow", "Sow on", "date", day) { IsRequired = true },
                new FormField("for", "For whom", "text", "") { Most = $"{BookRules.MostText}" },
            ]);
        context.Response.StatusCode = wrong is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity;
        await Answer.WithAsync(context, Slices.BatchForm.Create(page)).ConfigureAwait(false);
    }

    private async Task BeginAsync(HttpContext context)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
        var crops = CropsReader.Read(cropsFile).Crops;
        if (crops.FirstOrDefault(each => each.Name == form["crop"].ToString()) is not { } crop
            || !int.TryParse(form["trays"].ToString(), NumberStyles.None, CultureInfo.InvariantCulture, out var trays)
            || LocalDatePattern.Iso.Parse(form["sow"].ToString()) is not { Success: true, Value: var sow })
        {
            await AskAsync(context, "Something is missing or is no number: look at what you filled in.").ConfigureAwait(false);
            return;
        }

        var now = await NowAsync(context).ConfigureAwait(false);
        try
        {
            var taken = books.Look().Entries.Select(one => one.Entry).OfType<BatchEntry>().Select(entry => entry.Lot);
            var lot = LotCodes.Free(crop.Name, sow, [.. taken]);
            var start = new BatchTakenUp(
                now, Visitor.Of(context).Name, lot, crop.Name, trays, sow, crop.LitStages, [.. CourseOf(crop, sow)],
                sow.PlusDays(crop.FewestDays), BookRules.Cut(form["for"]));
            if (books.Write(start) is { } wrong)
            {
                await AskAsync(context, wrong).ConfigureAwait(false);
                return;
            }

            rack.Record("put into the growing book", $"{start.By}: {lot} {BatchWords.Of(start)}");
            await Answer.SeeOther(context, BatchAddress.Of(lot)).ConfigureAwait(false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            await AskAsync(context, $"Nothing was put down: {e.Message}").ConfigureAwait(false);
        }
    }

    // When each stage begins at the earliest; where, is put down when it does.
    private static IEnumerable<CourseStep> CourseOf(Crop crop, LocalDate sow)
    {
        var day = sow.PlusDays(crop.DarkDays.Least);
        foreach (var (index, stage) in crop.LitStages.Index())
        {
            yield return new CourseStep(day, index, []);
            day = day.PlusDays(stage.Days.Least);
        }
    }

    private async Task AskForPlanAsync(HttpContext context, string? wrong)
    {
        context.Response.StatusCode = wrong is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity;
        await Answer.WithAsync(context, Slices.TakeUp.Create(new TakeUpPage(Frame("Take up a plan"), wrong))).ConfigureAwait(false);
    }

    private async Task TakeUpAsync(HttpContext context)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
        if (form.Files.GetFile("plan") is not { Length: > 0 } sent)
        {
            await AskForPlanAsync(context, "Choose the plan.json of a plan first.").ConfigureAwait(false);
            return;
        }

        using var reader = new StreamReader(sent.OpenReadStream(), Encoding.UTF8);
        var json = await reader.ReadToEndAsync(context.RequestAborted).ConfigureAwait(false);
        var now = await NowAsync(context).ConfigureAwait(false);
        var by = Visitor.Of(context).Name;
        var (taken, wrong) = new PlanTakeUp(books, rack.Site).Take(json, now, by);
        if (wrong is not null)
        {
            await AskForPlanAsync(context, wrong).ConfigureAwait(false);
            return;
        }

        rack.Record("put into the growing book", $"{by} took up a plan: {taken}");
        await Answer.WithAsync(
            context, Slices.Done.Create(new DonePage(Frame("Plan taken up"), "Plan taken up", [taken + "."], null, [Address])))
            .ConfigureAwait(false);
    }

    private async Task<Instant> NowAsync(HttpContext context) => (await rack.LookAsync(context).ConfigureAwait(false)).At.Wall;

    private LocalDate Today(Instant now) => now.InZone(rack.Site.Zone).Date;

    private FrameView Frame(string title) => new(rack.Site.Name, title, "Batches", IsLive: false);
}

/// <summary>The page that asks for a plan.</summary>
/// <param name="Frame">What stands around it.</param>
/// <param name="Wrong">What was wrong with what was sent; null for nothing.</param>
public sealed record TakeUpPage(FrameView Frame, string? Wrong);

/// <summary>How large a plan may be that somebody sends: that of a large place for a year.</summary>
internal sealed class PlanBody : IRequestSizeLimitMetadata
{
    /// <summary>The limit.</summary>
    public static readonly PlanBody Limit = new();

    /// <inheritdoc/>
    public long? MaxRequestBodySize => 8 * 1024 * 1024;
}
