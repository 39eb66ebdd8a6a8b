using System.Runtime.Versioning;
using NodaTime;
using RackController.Model;

namespace RackController.Notices.Tests;

[SupportedOSPlatform("linux")]
public sealed class WebhookWayTests : IDisposable
{
    private readonly string secret = Path.GetTempFileName();
    private readonly WebClient client = new(TimeProvider.System, TimeSpan.FromSeconds(20));

    private readonly Letter letter = new("b0.5", "webhook", "of a test", """{"type":"rack.test"}""", Cellar.Noon);

    public WebhookWayTests()
    {
        File.SetUnixFileMode(secret, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        File.WriteAllText(secret, "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw\n");
    }

    public void Dispose()
    {
        client.Dispose();
        File.Delete(secret);
    }

    [Fact]
    public async Task ARequestIsPostedWithItsNameItsTimeAndItsSignature()
    {
        await using var server = Loopback.Saying("HTTP/1.1 204 No Content\r\n\r\n");

        Assert.Null((await Way(server.Port).SendAsync(letter, CancellationToken.None)).Fault);

        var heard = await server.Heard;
        Assert.StartsWith("POST /hook HTTP/1.1\r\n", heard, StringComparison.Ordinal);
        Assert.EndsWith("\r\n\r\n" + letter.Body, heard, StringComparison.Ordinal);
        Assert.Contains("webhook-id: b0.5\r\n", heard, StringComparison.Ordinal);
        Assert.Contains("\r\nContent-Type: application/json\r\n", heard, StringComparison.Ordinal);
        var sent = long.Parse(Header(heard, "webhook-timestamp"));
        Assert.InRange(DateTimeOffset.UtcNow.ToUnixTimeSeconds() - sent, 0, 60);
        var key = WebhookSignature.KeyOf("whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw")!;
        Assert.Equal(WebhookSignature.Of(key, "b0.5", sent, letter.Body), Header(heard, "webhook-signature"));
    }

    [Theory]
    [InlineData(400, true)]
    [InlineData(301, true)]
    [InlineData(410, true)]
    [InlineData(408, false)]
    [InlineData(425, false)]
    [InlineData(429, false)]
    [InlineData(500, false)]
    [InlineData(503, false)]
    public async Task WhetherItIsTriedAgainFollowsFromTheAnswer(int code, bool isFinal)
    {
        await using var server = Loopback.Saying($"HTTP/1.1 {code} Said\r\nLocation: /elsewhere\r\nContent-Length: 0\r\n\r\n");
        var result = await Way(server.Port).SendAsync(letter, CancellationToken.None);

        Assert.Equal(isFinal, result.IsFinal);
        Assert.Contains($"answers {code} Said", result.Fault, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhoAsksToBeLeftAloneIsHeard()
    {
        await using var server = Loopback.Saying("HTTP/1.1 429 Too Many\r\nRetry-After: 120\r\nContent-Length: 0\r\n\r\n");

        Assert.Equal(Duration.FromMinutes(2), (await Way(server.Port).SendAsync(letter, CancellationToken.None)).RetryAfter);
    }

    [Fact]
    public async Task WhereNobodyListensTheFaultSaysSo() =>
        Assert.Contains("cannot be reached", await FaultAsync(Way(Loopback.FreePort())), StringComparison.Ordinal);

    [Fact]
    public async Task WhoSpeaksOtherwiseIsNoWebServer()
    {
        await using var server = Loopback.Greeting("220 a mail server\r\n");
        Assert.Contains("does not answer as a web server does", await FaultAsync(Way(server.Port)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhoNeverAnswersIsNotWaitedForForLong()
    {
        await using var server = Loopback.Mute();
        using var hasty = new WebClient(TimeProvider.System, TimeSpan.FromMilliseconds(200));
        Assert.Contains("did not answer within", await FaultAsync(Way(server.Port, hasty)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task ACertificateThatNobodyVouchesForIsRefused()
    {
        await using var server = Loopback.WithOwnCertificate();
        var fault = await FaultAsync(Way(server.Port, scheme: "https"));
        Assert.Contains("no certificate that can be trusted", fault, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhatIsNoSecretSignsNothing()
    {
        await File.WriteAllTextAsync(secret, "four damp socks");
        Assert.Contains("holds no secret", await FaultAsync(Way(Loopback.FreePort())), StringComparison.Ordinal);
    }

    private async Task<string> FaultAsync(WebhookWay way)
    {
        var result = await way.SendAsync(letter, CancellationToken.None);
        Assert.False(result.IsFinal);
        return result.Fault!;
    }

    private static string Header(string request, string name) =>
        request.Split("\r\n").Single(line => line.StartsWith(name + ": ", StringComparison.OrdinalIgnoreCase))[(name.Length + 2)..];

    private WebhookWay Way(int port, WebClient? by = null, string scheme = "http") => new(
        new WebhookPlan(new Uri($"{scheme}://127.0.0.1:{port}/hook"), secret, AlarmPriority.Low), by ?? client, TimeProvider.System);
}
