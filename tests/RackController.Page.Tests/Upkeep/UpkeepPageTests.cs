using System.Collections.Immutable;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using NodaTime;
using RackController.Control;
using RackController.Growing;
using RackController.Service;

namespace RackController.Page.Tests;

/// <summary>Upkeep in a browser and for programs, after 30 days in which nobody did any.</summary>
public sealed class UpkeepPageTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncLifetime
{
    private const string Screen = "north: rinse the screen";

    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync(prepare: MadeUpPast.OfDays(30), speed: 8);

    public async Task DisposeAsync() => await served.DisposeAsync();

    private GrowingBook Book => new BookDesk(served.State.Book, served.Rack.Site).Look();

    [Theory]
    [MemberData(nameof(View.Names), MemberType = typeof(View))]
    public async Task ItHoldsToTheGuidelinesOnEveryScreen(string view)
    {
        var page = await OpenAsync(View.Of(view));
        await page.GetByText("Life of the relays").ClickAsync();
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"upkeep-{view}");

        await page.GetByRole(AriaRole.Link, new() { Name = $"{Screen} is done" }).ClickAsync();
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"upkeep-done-{view}");
        await page.GetByRole(AriaRole.Button, new() { Name = "It is done" }).ClickAsync();
        await Judgement.HoldsAsync(page);

        await page.GetByRole(AriaRole.Link, new() { NameRegex = new($"^Strike {Screen}") }).ClickAsync();
        await Judgement.HoldsAsync(page);
    }

    [Fact]
    public async Task ItFitsAScreenOf320Pixels() => await Judgement.HoldsAsync(await OpenAsync(View.Phone with { Width = 320 }));

    // Without scripts, from the first page on.
    [Fact]
    public async Task WhatIsDueSaysWhyAndIsPutDownWithANote()
    {
        await served.SeeAsync(at => !at.DueUpkeep.IsEmpty);
        var page = await chromium.OpenAsync(View.Phone, served.Address, withScript: false);
        await page.GetByRole(AriaRole.Link, new() { NameRegex = new("works of upkeep are due") }).ClickAsync();

        // Late in the evening the thirtieth day is not over.
        await Assertions.Expect(page.GetByText(new Regex("(29|30) of 14 days, 9[0-9] of 50 floods, since the record began")))
            .ToBeVisibleAsync();

        await page.GetByRole(AriaRole.Link, new() { Name = $"{Screen} is done" }).ClickAsync();
        await page.GetByLabel("Note, if there is anything to say").FillAsync("roots <b>again</b>");
        await page.GetByRole(AriaRole.Button, new() { Name = "It is done" }).ClickAsync();

        await Assertions.Expect(page.GetByText("roots <b>again</b>")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByText("0 of 50 floods, 0 of 14 days, since")).ToBeVisibleAsync();
        Assert.Equal(("north", "screen"), (Book.Upkeep[0].Rack, Book.Upkeep[0].Work));
        await OnRecordAsync("upkeep done: north: rinse the screen");
    }

    [Fact]
    public async Task ASecondTapCountsNothingAndWhatWasPutDownByMistakeIsStruck()
    {
        using var guest = new Guest(served.Address);
        (string, string)[] tap = [("rack", "north"), ("work", "flush"), ("last", "never"), ("text", "")];
        (await guest.PostAsync("/upkeep/done", tap)).Dispose();
        (await guest.PostAsync("/upkeep/done", tap)).Dispose();
        Assert.Single(Book.Upkeep);

        using (var unreasoned = await guest.PostAsync("/upkeep/strike", ("number", "1"), ("text", "")))
        {
            Assert.Contains("Say why it was wrong", await unreasoned.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        (await guest.PostAsync("/upkeep/strike", ("number", "1"), ("text", "the wrong rack"))).Dispose();
        Assert.Empty(Book.Upkeep);
        Assert.Contains("the wrong rack", await served.Client.GetStringAsync("/upkeep"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/upkeep/done?rack=nowhere&work=screen")]
    [InlineData("/upkeep/done?rack=north&work=sweep")]
    [InlineData("/upkeep/strike?number=7")]
    [InlineData("/upkeep/strike")]
    public async Task WhatIsNotThereLeadsBack(string address)
    {
        using var answer = await served.Client.GetAsync(address);

        Assert.Equal((HttpStatusCode.SeeOther, "/upkeep"), (answer.StatusCode, answer.Headers.Location?.ToString()));
    }

    [Fact]
    public async Task ProgramsReadTheSameAndPutDownToo()
    {
        var before = await served.Client.GetStringAsync("/api/upkeep");
        Assert.Equal("", await ApiDocument.ComplaintAsync(served.Client, "Upkeep", before));
        Assert.True(ScreenIn(before)["isDue"]!.GetValue<bool>());

        using var put = await served.Client.PostAsJsonAsync(
            "/api/upkeep/done", new { rack = "north", work = "screen", note = "by a robot" });
        Assert.Equal(HttpStatusCode.OK, put.StatusCode);
        var after = await served.Client.GetStringAsync("/api/upkeep");
        Assert.Equal("", await ApiDocument.ComplaintAsync(served.Client, "Upkeep", after));
        Assert.False(ScreenIn(after)["isDue"]!.GetValue<bool>());
    }

    [Theory]
    [InlineData("""{ "rack": "norht", "work": "screen" }""", HttpStatusCode.UnprocessableEntity, "did you mean `north`?")]
    [InlineData("""{ "rack": "north" }""", HttpStatusCode.UnprocessableEntity, "north has no work ``")]
    [InlineData("""{ "rack": 7 }""", HttpStatusCode.BadRequest, "openapi.json")]
    public async Task WhatCannotBePutDownIsSaidInOneLine(string asked, HttpStatusCode code, string said)
    {
        using var content = new StringContent(asked, System.Text.Encoding.UTF8, "application/json");
        using var answer = await served.Client.PostAsync("/api/upkeep/done", content);

        Assert.Equal(code, answer.StatusCode);
        var answered = JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
        Assert.Contains(said, answered["said"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Empty(Book.Upkeep);
    }

    [Fact]
    public async Task ARelayThatIsWornIsDueTooAndLeadsToItsAlarm()
    {
        await using var worn = await ServedRack.OfFileAsync(prepare: folder =>
        {
            using var journal = JournalFile.Open(folder.Journal);
            var counts = new Dictionary<string, long> { ["north/pump/relay-worn/operations"] = 100_000 };
            var memory = new ControlMemory(SystemClock.Instance.GetCurrentInstant(), true, counts.ToImmutableSortedDictionary());
            journal.WriteLasting([new JournalEntry([], memory)], [], journal.Run);
        });

        var page = await worn.Client.GetStringAsync("/upkeep");

        Assert.Contains("north/pump: change its relay", page, StringComparison.Ordinal);
        Assert.Contains("▲ it has switched 100000 times of 100000", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Nothing is due.", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ABookThatCannotBeReadIsSaidAndTheRackIsDriven()
    {
        File.WriteAllText(served.State.Book, new string('x', 4096));

        Assert.Contains("▲ ", await served.Client.GetStringAsync("/upkeep"), StringComparison.Ordinal);
        using var answer = await served.Client.GetAsync("/api/upkeep");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        await served.SeeAsync(at => at.Alarms.Any(alarm => alarm.Key == "controller/upkeep"));
    }

    // The journal is written beside the scan.
    private async Task OnRecordAsync(string what)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        while (!(await served.Client.GetStringAsync("/api/past-events?kind=Controller", patience.Token))
            .Contains(what, StringComparison.Ordinal))
        {
            // Whoever asks without a pause is turned away.
            await Task.Delay(200, patience.Token);
        }
    }

    private static JsonNode ScreenIn(string answer) =>
        JsonNode.Parse(answer)!["works"]!.AsArray().Single(work => work!["work"]!.GetValue<string>() == "screen")!;

    private Task<IPage> OpenAsync(View view) => chromium.OpenAsync(view, new Uri(served.Address, "/upkeep"));
}
