using System.Net;
using System.Text;
using System.Text.Json.Nodes;

namespace RackController.Page.Tests;

/// <summary>What programs read and ask, against the OpenAPI document that describes it: JSON Schema 2020-12, judged by a library.</summary>
public sealed class ApiTests : IAsyncLifetime
{
    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync();

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Fact]
    public async Task TheStatusIsAsDescribed()
    {
        var status = await served.Client.GetStringAsync("/api/status");

        Assert.Equal("", await ComplaintAsync("Status", status));
    }

    [Fact]
    public async Task HowNoticesFareIsAsDescribed() =>
        Assert.Equal("", await ComplaintAsync("Notices", await served.Client.GetStringAsync("/api/notices")));

    [Fact]
    public async Task EveryAddressIsDescribed()
    {
        var document = JsonNode.Parse(await served.Client.GetStringAsync("/api/openapi.json"))!;
        foreach (var path in document["paths"]!.AsObject())
        {
            var answer = path.Value!["get"] is null
                ? await served.Client.PostAsync(path.Key, null)
                : await served.Client.GetAsync(path.Key, HttpCompletionOption.ResponseHeadersRead);
            var isAnswer = answer.Content.Headers.ContentType?.MediaType == "application/json";
            Assert.True(isAnswer || answer.StatusCode != HttpStatusCode.NotFound, path.Key);
        }
    }

    [Fact]
    public async Task WhatIsAskedReachesTheRack()
    {
        Assert.Equal(HttpStatusCode.Accepted, await AskAsync("""{"ask":"rest-tier","rack":"north","tier":2}"""));

        var status = await served.SeeAsync(at => !at.TiersInUse[0][1]);
        Assert.True(status.TiersInUse[0][0]);
    }

    [Theory]
    [InlineData("not json", HttpStatusCode.BadRequest)]
    [InlineData("""{"ask":"flood","rack":"north","force":true}""", HttpStatusCode.BadRequest)]
    [InlineData("""{"ask":"flood","rack":"nowhere"}""", HttpStatusCode.UnprocessableEntity)]
    [InlineData("""{"ask":"stop","rack":"nowhere"}""", HttpStatusCode.UnprocessableEntity)]
    [InlineData("""{"ask":"hold","rack":"north","seconds":-1}""", HttpStatusCode.UnprocessableEntity)]
    [InlineData("""{"ask":"rest-tier","rack":"north","tier":9}""", HttpStatusCode.UnprocessableEntity)]
    [InlineData("""{"ask":"explode"}""", HttpStatusCode.UnprocessableEntity)]
    [InlineData("null", HttpStatusCode.UnprocessableEntity)]
    public async Task WhatCannotBeAskedIsRefusedInOneLine(string body, HttpStatusCode code)
    {
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        using var answer = await served.Client.PostAsync("/api/ask", content);
        var said = await answer.Content.ReadAsStringAsync();

        Assert.Equal(code, answer.StatusCode);
        Assert.Equal("", await ComplaintAsync("Answer", said));
        Assert.DoesNotContain("   at ", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhatHappensIsStreamedAsDescribed()
    {
        using var stream = await served.Client.GetStreamAsync("/api/events");
        using var reader = new StreamReader(stream);
        Assert.Equal(HttpStatusCode.Accepted, await AskAsync("""{"ask":"stop"}"""));

        Assert.Equal("event: happened", await reader.ReadLineAsync());
        var data = await reader.ReadLineAsync();
        Assert.Equal("", await ComplaintAsync("Event", data!["data: ".Length..]));
    }

    private async Task<HttpStatusCode> AskAsync(string body)
    {
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        using var answer = await served.Client.PostAsync("/api/ask", content);
        return answer.StatusCode;
    }

    private Task<string> ComplaintAsync(string schema, string text) => ApiDocument.ComplaintAsync(served.Client, schema, text);
}
