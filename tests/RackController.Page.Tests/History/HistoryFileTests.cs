using System.Globalization;
using System.Net;
using RackController.Service;

namespace RackController.Page.Tests;

public sealed class HistoryFileTests : IAsyncLifetime
{
    private ServedRack served = null!;

    private static StateFolder Elsewhere(StateFolder folder) => new(Path.Combine(folder.Path, "elsewhere"));

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync(prepare: MadeUpPast.OfDays(2));

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Fact]
    public async Task TheTableHasUnitsInItsHeadAndTimesWithTheirOffset()
    {
        var answer = await served.Client.GetAsync(new Uri("/history.csv?length=6h", UriKind.Relative));
        var rows = (await answer.Content.ReadAsStringAsync()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);

        Assert.Equal("text/csv; charset=utf-8; header=present", answer.Content.Headers.ContentType!.ToString());
        Assert.Contains("north/reservoir level mean (mm)", rows[0].Split(','));
        Assert.Contains("north/pump on (s)", rows[0].Split(','));
        Assert.All(rows, row => Assert.Equal(rows[0].Split(',').Length, row.Split(',').Length));

        // ISO 8601, with the offset that London has (+00:00 or +01:00).
        Assert.All(rows.Skip(1), row => Assert.True(
            DateTimeOffset.TryParseExact(
                row.Split(',')[0], "yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture, DateTimeStyles.None, out _)));
    }

    [Fact]
    public async Task EventsComeAsAPageAndAsAFile()
    {
        var page = await served.Client.GetStringAsync("/events?kind=Flood&of=north");
        var file = await served.Client.GetStringAsync("/events.csv?kind=Flood&of=north");

        Assert.Contains("the time to soak is over", page, StringComparison.Ordinal);
        Assert.StartsWith("time,is the clock trusted,kind,subject,what,because\r\n", file, StringComparison.Ordinal);
        Assert.All(
            file.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Skip(1),
            row => Assert.Contains(",flood,north,", row, StringComparison.Ordinal));
    }

    // The examples of RFC 4180, section 2.
    [Fact]
    public void FieldsAreQuotedAsTheStandardSays()
    {
        Assert.Equal("aaa,\"b\r\nbb\",ccc\r\n", Csv.Line(["aaa", "b\r\nbb", "ccc"]));
        Assert.Equal("aaa,\"b\"\"bb\",ccc\r\n", Csv.Line(["aaa", "b\"bb", "ccc"]));
        Assert.Equal("\"a,a\",b\r\n", Csv.Line(["a,a", "b"]));
    }

    [Fact]
    public async Task AJournalThatIsGoneIsOneLineOnThePageAndTheRackGoesOn()
    {
        // The page looks for the journal where there is none.
        await using var blind = await ServedRack.OfFileAsync(
            prepare: folder => Directory.CreateDirectory(Elsewhere(folder).Path),
            howServed: options => options with { Folder = Elsewhere(options.Folder) });

        var page = await blind.Client.GetStringAsync("/history");
        var data = await blind.Client.GetAsync(new Uri("/history/data", UriKind.Relative));

        Assert.Contains("there is no journal", page, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, data.StatusCode);
        await blind.SeeAsync(status => status.Health.Fault is null);
    }

    [Fact]
    public async Task DatesThatCannotBeReadAreSaidAndTheLastDayIsShown()
    {
        var page = await served.Client.GetStringAsync("/history?length=dates&first=yesterday&last=2026-11-30");

        Assert.Contains("write both as 2026-11-30", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TheLibraryOfChartsIsCompressedAndMayBeKeptForGood()
    {
        using var client = new HttpClient { BaseAddress = served.Address };
        client.DefaultRequestHeaders.AcceptEncoding.ParseAdd("br, gzip");
        var address = ChartLibrary.Address;

        var answer = await client.GetAsync(new Uri(address, UriKind.Relative));

        Assert.Equal("br", Assert.Single(answer.Content.Headers.ContentEncoding));
        Assert.InRange((await answer.Content.ReadAsByteArrayAsync()).Length, 100_000, 450_000);
        Assert.Contains("immutable", answer.Headers.CacheControl!.ToString(), StringComparison.Ordinal);
    }
}
