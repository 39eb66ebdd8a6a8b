using NodaTime;

namespace RackController.Notices.Tests;

public sealed class OutboxTests
{
    private readonly FakeWay way = new();

    private Instant now = Cellar.Noon;

    [Fact]
    public void WhatDoesNotGetThroughIsTriedAgainInOrderAndGivenUpAfterThreeDays()
    {
        way.Answer = SendResult.Failed("nobody answers");
        var outbox = new Outbox(way);
        outbox.Add(Letter("first"), now);
        outbox.Add(Letter("second"), now);
        List<string> lost = [];
        while (now < Cellar.Noon + Duration.FromDays(3.5))
        {
            outbox.SendNext(now, CancellationToken.None);
            if (outbox.Take(now) is { } gone)
            {
                lost.Add($"{gone.Letter.Id}: {gone.Fault}");
            }

            now += Duration.FromMinutes(1);
        }

        Assert.Equal(["first: given up after 3 days; nobody answers", "second: given up after 3 days; nobody answers"], lost);
        Assert.InRange(way.Came.Count(letter => letter.Id == "first"), 70, 80);
        Assert.Equal("nobody answers", outbox.Status.Fault);
    }

    [Fact]
    public void WhatGetsThroughClearsTheFault()
    {
        way.Answer = SendResult.Failed("nobody answers");
        var outbox = new Outbox(way);
        outbox.Add(Letter("first"), now);
        outbox.SendNext(now, CancellationToken.None);
        outbox.Take(now);
        Assert.Equal("nobody answers", outbox.Status.Fault);

        way.Answer = SendResult.Sent;
        now += Duration.FromMinutes(1);
        outbox.SendNext(now, CancellationToken.None);
        outbox.Take(now);

        Assert.Null(outbox.Status.Fault);
        Assert.Equal(now, outbox.Status.LastSuccess);
        Assert.Equal(0, outbox.Status.Waiting);
    }

    [Fact]
    public void ABacklogIsLimitedAndTheOldestGo()
    {
        way.Answer = null;
        var outbox = new Outbox(way);
        outbox.Add(Letter("underway"), now);
        outbox.SendNext(now, CancellationToken.None);
        for (var i = 0; i < Outbox.Most + 20; i++)
        {
            outbox.Add(Letter($"{i}"), now);
        }

        Assert.Equal(Outbox.Most, outbox.Waiting.Count);
        Assert.Equal("underway", outbox.Waiting[0].Id);
        Assert.Equal("21", outbox.Waiting[1].Id);
        Assert.Contains("so much waits", outbox.Status.Fault, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhatIsEndedWhileItIsSentWaitsAsBefore()
    {
        way.Answer = null;
        var outbox = new Outbox(way);
        outbox.Add(Letter("first"), now);
        using var end = new CancellationTokenSource();
        outbox.SendNext(now, end.Token);
        await end.CancelAsync();
        await outbox.EndAsync();
        outbox.Take(now);

        Assert.Equal(Letter("first"), Assert.Single(outbox.Waiting));
        Assert.Null(outbox.Status.Fault);
    }

    private Letter Letter(string id) => new(id, way.Name, "of a test", "of a test", now) { NextTry = now };
}
