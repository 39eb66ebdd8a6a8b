using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using RackController.Control;

namespace RackController.Page.Tests;

/// <summary>What programs read of the past, and what they ask beyond a flood.</summary>
public sealed class ApiPastTests : IAsyncLifetime
{
    private const string Light = "north/tier 1 light";
    private const string Low = "north/low-float";

    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync(prepare: MadeUpPast.OfDays(9), speed: 8);

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Theory]
    [InlineData("/api/history", "History")]
    [InlineData("/api/history?length=year", "History")]
    [InlineData("/api/history?length=dates&first=tomorrow&last=2026-13-01", "History")]
    [InlineData("/api/past-events?kind=Flood&most=7", "EventPage")]
    [InlineData("/api/alarms", "Alarms")]
    [InlineData("/api/rack-file", "RackFile")]
    public async Task ItIsAsDescribed(string address, string schema) =>
        Assert.Equal("", await ApiDocument.ComplaintAsync(served.Client, schema, await served.Client.GetStringAsync(address)));

    [Fact]
    public async Task FloodsAreAsDescribedAndThoseOfTheJournal()
    {
        var floods = JsonNode.Parse(await served.Client.GetStringAsync("/api/floods"))!.AsArray();

        Assert.NotEmpty(floods);
        Assert.Equal("", await ApiDocument.ComplaintAsync(served.Client, "Flood", floods[0]!.ToJsonString()));
        var csv = await served.Client.GetStringAsync("/floods.csv");
        Assert.Equal(csv.TrimEnd().Split('\n').Length - 1, floods.Count);
    }

    [Theory]
    [InlineData("/api/history?rack=nowhere", "There is no rack `nowhere`")]
    [InlineData("/api/history?length=eon", "There is no length `eon`")]
    [InlineData("/api/history?show=moods", "There is no chart `moods`")]
    public async Task WhatIsNotThereIsNotAnsweredWithSomethingElseInSilence(string address, string complaint)
    {
        var answer = JsonNode.Parse(await served.Client.GetStringAsync(address))!;

        Assert.StartsWith(complaint, answer["complaint"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task ARackIsNamedAsInARequest() =>
        Assert.Null(JsonNode.Parse(await served.Client.GetStringAsync("/api/history?rack=north"))!["complaint"]);

    [Theory]
    [InlineData("/api/past-events?kind=mood")]
    [InlineData("/api/past-events?before=yesterday")]
    [InlineData("/api/past-events?most=0")]
    public async Task APageThatCannotBeIsRefused(string address)
    {
        using var answer = await served.Client.GetAsync(address);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal("", await ApiDocument.ComplaintAsync(served.Client, "Answer", await answer.Content.ReadAsStringAsync()));
    }

    [Fact]
    public async Task WhatIsNoRequestIsToldWithoutNamesOfOurs()
    {
        using var answer = await served.Client.PostAsJsonAsync("/api/ask", new { kind = "flood" });
        var said = await answer.Content.ReadAsStringAsync();

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("look at $.kind", said, StringComparison.Ordinal);
        Assert.DoesNotContain("RackController", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task EventsComePageByPageAndNoneTwice()
    {
        var (seen, address) = (new List<string>(), "/api/past-events?kind=Flood&most=5");
        string? next = address;
        while (next is not null)
        {
            var page = JsonNode.Parse(await served.Client.GetStringAsync(next))!;
            seen.AddRange(page["events"]!.AsArray().Select(happened => happened!.ToJsonString()));
            next = page["before"] is { } before ? $"{address}&before={before}" : null;
        }

        Assert.True(seen.Count > 10);
        Assert.Equal(seen.Count, seen.Distinct().Count());
    }

    [Fact]
    public async Task AnAlarmIsShelvedForATimeAndTheStatusSaysUntilWhen()
    {
        Assert.Equal(HttpStatusCode.Accepted, await AskAsync(new { ask = "out-of-service", alarm = Low }));
        await served.SeeAsync(at => at.Alarms.Any(alarm => alarm.Key == Low && alarm.State == AlarmState.OutOfService));
        Assert.Equal(HttpStatusCode.Accepted, await AskAsync(new { ask = "back-in-service", alarm = Low }));
        await served.SeeAsync(at => !at.Alarms.Any(alarm => alarm.Key == Low));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await AskAsync(new { ask = "shelve", alarm = Low, seconds = 5 }));
        Assert.Equal(HttpStatusCode.Accepted, await AskAsync(new { ask = "shelve", alarm = Low, seconds = 3600 }));
        Assert.Equal("", await ApiDocument.ComplaintAsync(served.Client, "Status", await served.Client.GetStringAsync("/api/status")));
    }

    [Fact]
    public async Task AProofTestIsDoneByRequests()
    {
        Assert.Equal(HttpStatusCode.Accepted, await AskAsync(new { ask = "begin-test", item = Light }));
        for (var step = 1; step <= 2; step++)
        {
            await served.SeeAsync(at => at.ProofTest is { WaitsForRack: false } test && test.Step == step);
            Assert.Equal("", await ApiDocument.ComplaintAsync(served.Client, "Status", await served.Client.GetStringAsync("/api/status")));
            Assert.Equal(HttpStatusCode.Accepted, await AskAsync(new { ask = "answer-test", isSo = true }));
        }

        await served.SeeAsync(at => at.ProofTests.Any(test => test.Item == Light && test.PassedAt is not null));
    }

    [Fact]
    public async Task ARackFileIsDraftedTriedAndPutInPlaceByRequests()
    {
        var before = await File.ReadAllTextAsync(served.RackFile);
        using (var none = await served.Client.GetAsync("/api/rack-file/draft"))
        {
            Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
        }

        Assert.Equal(HttpStatusCode.OK, await PostAsync("/api/rack-file/draft", new { text = before + "\nfoo: bar\n" }));
        var refused = JsonNode.Parse(await served.Client.GetStringAsync("/api/rack-file/draft"))!;
        Assert.False(refused["canRun"]!.GetValue<bool>());
        Assert.Equal(HttpStatusCode.Conflict, await PostAsync("/api/rack-file/apply", new { }));

        Assert.Equal(HttpStatusCode.OK, await PostAsync("/api/rack-file/draft", new { text = before + "\n# by a program\n" }));
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        string draft;
        do
        {
            await Task.Delay(100, patience.Token);
            draft = await served.Client.GetStringAsync("/api/rack-file/draft");
        }
        while (JsonNode.Parse(draft)!["figures"]!.AsArray().Count == 0);

        Assert.Equal("", await ApiDocument.ComplaintAsync(served.Client, "Draft", draft));
        Assert.Equal(HttpStatusCode.Accepted, await PostAsync("/api/rack-file/apply", new { }));
        Assert.EndsWith("# by a program\n", await File.ReadAllTextAsync(served.RackFile), StringComparison.Ordinal);
    }

    private Task<HttpStatusCode> AskAsync(object asked) => PostAsync("/api/ask", asked);

    private async Task<HttpStatusCode> PostAsync(string address, object sent)
    {
        using var answer = await served.Client.PostAsJsonAsync(address, sent);
        return answer.StatusCode;
    }
}
