using System.Net;
using System.Text;
using System.Text.Json.Nodes;

namespace RackController.Page.Tests;

/// <summary>Fits for programs, against the OpenAPI document.</summary>
public sealed class ApiTuneTests : IAsyncLifetime
{
    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync(
        TimedPast.RackFile, prepare: TimedPast.OfFloods([], [1], [], []));

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Fact]
    public async Task FloodsAreToldWithTheTiersThatTookNoPart()
    {
        var floods = JsonNode.Parse(await served.Client.GetStringAsync("/api/tune/floods?rack=sprouts"))!.AsArray();

        Assert.Equal(["[]", "[]", "[1]", "[]"], floods.Select(flood => flood!["valvesShut"]!.ToJsonString()));
        foreach (var flood in floods)
        {
            Assert.Equal("", await ApiDocument.ComplaintAsync(served.Client, "TimedFlood", flood!.ToJsonString()));
        }
    }

    [Fact]
    public async Task TheFloodLogTellsThemTooOnThePageInItsFileAndToPrograms()
    {
        Assert.Contains("valves shut: tier 1", await served.Client.GetStringAsync("/floods"), StringComparison.Ordinal);
        var rows = (await served.Client.GetStringAsync("/floods.csv")).Split("\r\n");
        Assert.Single(rows, row => row.EndsWith(",1,", StringComparison.Ordinal));
        var floods = JsonNode.Parse(await served.Client.GetStringAsync("/api/floods"))!.AsArray();
        Assert.Equal(["[]", "[]", "[1]", "[]"], floods.Select(flood => flood!["valvesShut"]!.ToJsonString()));
    }

    [Fact]
    public async Task AFitIsAsDescribedFromItsBeginningToItsDraft()
    {
        Assert.Equal(HttpStatusCode.NotFound, (await served.Client.GetAsync("/api/tune")).StatusCode);

        var begun = await FitAsync("""{"rack":"sprouts"}""", HttpStatusCode.Accepted);
        Assert.Equal("", await ApiDocument.ComplaintAsync(served.Client, "Tune", begun));
        var fit = await FittedAsync();

        Assert.Equal("", await ApiDocument.ComplaintAsync(served.Client, "Tune", fit.ToJsonString()));
        Assert.Equal((4, null), ((int)fit["floods"]!, fit["refused"]));
        Assert.InRange((double)fit["figures"]!.AsArray().Single(figure => (string?)figure!["of"] == "pump-speed")!["value"]!, 0.92, 0.94);
        Assert.Equal(HttpStatusCode.Conflict, await PostAsync("/api/tune/draft", """{"fit":7}"""));
        Assert.Equal(HttpStatusCode.Accepted, await PostAsync("/api/tune/draft", """{"fit":1}"""));
        var draft = JsonNode.Parse(await served.Client.GetStringAsync("/api/rack-file/draft"))!;
        Assert.True((bool)draft["canRun"]!);
        Assert.DoesNotContain("2025-11-15", (string)draft["text"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TimesByHandAreFitted()
    {
        const string times = """[{"tier":1,"seconds":[146,147,145]},{"tier":2,"seconds":[160,161,159]}]""";

        await FitAsync($$"""{"fills":{{times}}}""", HttpStatusCode.Accepted);

        Assert.Equal(3, (int)(await FittedAsync())["floods"]!);
    }

    [Theory]
    [InlineData("""{"rack":"attic"}""", "there is no rack `attic`")]
    [InlineData("""{"since":"spring"}""", "`spring` is no date")]
    [InlineData("""{"since":"2026-11-01","fills":[{"tier":1,"seconds":[100]}]}""", "`since` chooses among floods on record")]
    [InlineData("""{"fills":[{"tier":0,"seconds":[100]}]}""", "`tier` is 1 for the bottom tier")]
    [InlineData("""{"drains":[null]}""", "`tier` is 1 for the bottom tier")]
    [InlineData("""{"since":"-9998-01-01"}""", "is no date")]
    [InlineData("""{"fills":[{"tier":1,"seconds":[0]}]}""", "`seconds` are times above 0")]
    [InlineData("""{"fills":[{"tier":1,"seconds":[100]},{"tier":1,"seconds":[100]}]}""", "tier 1 stands there twice")]
    [InlineData("""{"since":"2199-01-01"}""", "no flood of sprouts is on record")]
    public async Task NonsenseIsRefusedInALine(string body, string said)
    {
        var answer = await FitAsync(body, HttpStatusCode.UnprocessableEntity);

        Assert.Contains(said, (string)JsonNode.Parse(answer)!["said"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ATierThatTheRackHasNotIsRefusedWithTheFit()
    {
        await FitAsync("""{"fills":[{"tier":9,"seconds":[100,101,102]}]}""", HttpStatusCode.Accepted);

        Assert.StartsWith("there is no tier 9 on sprouts", (string)(await FittedAsync())["refused"]!, StringComparison.Ordinal);
    }

    private async Task<JsonNode> FittedAsync()
    {
        while (true)
        {
            var fit = JsonNode.Parse(await served.Client.GetStringAsync("/api/tune"))!;
            if (!(bool)fit["isUnderWay"]!)
            {
                return fit;
            }

            await Task.Delay(100);
        }
    }

    private async Task<string> FitAsync(string body, HttpStatusCode code)
    {
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        using var answer = await served.Client.PostAsync("/api/tune", content);
        Assert.Equal(code, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync();
    }

    private async Task<HttpStatusCode> PostAsync(string address, string body)
    {
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        using var answer = await served.Client.PostAsync(address, content);
        return answer.StatusCode;
    }
}
