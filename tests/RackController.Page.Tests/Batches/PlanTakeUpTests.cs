using NodaTime;
using RackController.Growing;
using RackController.Model;
using RackController.RackFile;
using RackController.Service;
using RackController.Testing;

namespace RackController.Page.Tests;

public sealed class PlanTakeUpTests : IDisposable
{
    private static readonly Site site = RackFileReader.Read(ShippedFiles.PathTo("config/demo-four-tier.yaml")).Site!;
    private static readonly Instant now = Instant.FromUtc(2026, 3, 2, 9, 0);
    private static readonly LocalDate today = new(2026, 3, 2);

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("rackcontroller-take-up-");

    private BookDesk Book => new(Path.Combine(folder.FullName, "book.db"), site);

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void TheSamePlanASecondTimeChangesNothing()
    {
        Assert.Equal(("1 batch new", null), Take(SomePlan.Json(today, "PEA-1")));
        var entries = Book.Look().Entries.Length;

        Assert.Equal(("1 batch as planned before", null), Take(SomePlan.Json(today, "PEA-1")));
        Assert.Equal(entries, Book.Look().Entries.Length);
    }

    [Fact]
    public void ABatchThatIsNotSownIsReplacedByWhatTheNextPlanSaysOfIt()
    {
        Take(SomePlan.Json(today, "PEA-1"));

        Assert.Equal(("1 batch new; 1 batch struck (PEA-1)", null), Take(Later(SomePlan.Json(today, "PEA-1"))));

        Assert.Equal(today.PlusDays(24), Assert.Single(Book.Look().Batches).Start.Harvest);
    }

    [Fact]
    public void ABatchThatGrowsIsSetToItsNewDays()
    {
        Take(SomePlan.Json(today, "PEA-1"));
        Assert.Null(Book.Write(new BatchSown(now, "Ada", "PEA-1", today, "bag 17")));

        Assert.Equal(("1 batch growing, with other days or places", null), Take(Later(SomePlan.Json(today, "PEA-1"))));

        var batch = Assert.Single(Book.Look().Batches);
        Assert.Equal((today.PlusDays(24), "bag 17"), (batch.Start.Harvest, batch.Sown!.SeedLot));
    }

    [Fact]
    public void ABatchThatAPersonBeganIsNotTakenBackByAPlan()
    {
        Take(SomePlan.Json(today, "PEA-1"));
        var begun = Book.Look().Batches[0].Start with { Lot = "KAL-1", Crop = "kale", IsOfPlan = false };
        Assert.Null(Book.Write(begun));

        Take(SomePlan.Json(today, "PEA-2"));

        Assert.Equal(["KAL-1", "PEA-2"], Book.Look().Batches.Select(batch => batch.Lot));
    }

    [Fact]
    public void APlanOfAnotherPlaceIsRefused()
    {
        var (_, wrong) = Take(SomePlan.Json(today, "PEA-1").Replace(site.Name, "Quite another place", StringComparison.Ordinal));

        Assert.Equal($"This plan is of Quite another place, and these are the racks of {site.Name}.", wrong);
        Assert.Empty(Book.Look().Entries);
    }

    private (string Taken, string? Wrong) Take(string json) => new PlanTakeUp(Book, site).Take(json, now, "Ada");

    // The harvest of the one batch comes three days later than it was planned to.
    private static string Later(string json)
    {
        var before = "\"harvest\": \"" + json.Split("\"harvest\": \"")[1].Split('"')[0] + "\"";
        return json.Replace(before, $"\"harvest\": \"{today.PlusDays(24):uuuu-MM-dd}\"", StringComparison.Ordinal);
    }
}
