using System.Net;
using System.Net.Http.Json;
using NodaTime;

namespace RackController.Page.Tests;

/// <summary>The growing book for programs.</summary>
public sealed class ApiBatchesTests : IAsyncLifetime
{
    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync();

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Fact]
    public async Task APlanIsTakenUpAndItsBatchIsFollowedToItsHarvest()
    {
        var today = SystemClock.Instance.GetCurrentInstant().InZone(served.Rack.Site.Zone).Date;
        Assert.Equal(HttpStatusCode.Created, await PostAsync("/api/batches/plan", new StringContent(SomePlan.Json(today, "PEA-1"))));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await PostAsync("/api/batches/plan", new StringContent("{}")));

        Assert.Equal(HttpStatusCode.Created, await PutDownAsync(new { what = "sown", lot = "PEA-1", seedLot = "bag 17" }));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await PutDownAsync(new { what = "sown", lot = "PEA-1" }));
        Assert.Equal(
            HttpStatusCode.Created,
            await PutDownAsync(
                new { what = "moved", lot = "PEA-1", stage = 0, places = new[] { new { tier = "north/tier 4", trays = 2 } } }));
        await SeeAsync("/api/batches", "Batches", "in-the-light");
        Assert.Equal(HttpStatusCode.Created, await PutDownAsync(new { what = "noted", lot = "PEA-1", text = "even" }));
        Assert.Equal(HttpStatusCode.Created, await PutDownAsync(new { what = "harvested", lot = "PEA-1", trays = 1, weightG = 200.5 }));
        Assert.Equal(HttpStatusCode.Created, await PutDownAsync(new { what = "discarded", lot = "PEA-1", trays = 1, text = "mould" }));
        Assert.Equal(HttpStatusCode.Created, await PutDownAsync(new { what = "struck", lot = "PEA-1", number = 4, text = "it was not" }));

        await SeeAsync("/api/batches", "Batches", "gone");
        await SeeAsync("/api/batches/one?lot=PEA-1", "BatchRecord", "it was not");
    }

    [Theory]
    [InlineData("""{ "what": "sung", "lot": "PEA-1" }""", HttpStatusCode.UnprocessableEntity)]
    [InlineData("""{ "lot": "PEA-1" }""", HttpStatusCode.UnprocessableEntity)]
    [InlineData("""{ "what": "sown", "lot": "PEA-9" }""", HttpStatusCode.UnprocessableEntity)]
    [InlineData("""{ "what": "sown", "lot": "PEA-1", "day": "soon" }""", HttpStatusCode.UnprocessableEntity)]
    [InlineData("""{ "what": "moved", "lot": "PEA-1", "places": [{ "trays": 1 }] }""", HttpStatusCode.UnprocessableEntity)]
    [InlineData("""{ "what": "moved", "lot": "PEA-1", "places": [null] }""", HttpStatusCode.UnprocessableEntity)]
    [InlineData("""{ "what": "sown", "lot": 7 }""", HttpStatusCode.BadRequest)]
    [InlineData("""{ "what": "sown", "slot": "PEA-1" }""", HttpStatusCode.BadRequest)]
    public async Task NonsenseIsRefusedAndNothingIsPutDown(string text, HttpStatusCode answer)
    {
        Assert.Equal(answer, await PostAsync("/api/batches/entries", new StringContent(text)));
        Assert.False(File.Exists(served.State.Book));
    }

    [Fact]
    public async Task WithoutABatchOfThatNameThereIsNoRecord()
    {
        using var none = await served.Client.GetAsync("/api/batches/one?lot=PEA-9");
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    private async Task SeeAsync(string address, string schema, string told)
    {
        var text = await served.Client.GetStringAsync(address);
        Assert.Empty(await ApiDocument.ComplaintAsync(served.Client, schema, text));
        Assert.Contains(told, text, StringComparison.Ordinal);
    }

    private Task<HttpStatusCode> PutDownAsync(object entry) => PostAsync("/api/batches/entries", JsonContent.Create(entry));

    private async Task<HttpStatusCode> PostAsync(string address, HttpContent content)
    {
        using (content)
        {
            using var answer = await served.Client.PostAsync(address, content);
            return answer.StatusCode;
        }
    }
}
