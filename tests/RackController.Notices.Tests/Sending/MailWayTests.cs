using System.Net;
using RackController.Model;
using SmtpServer.Protocol;

namespace RackController.Notices.Tests;

public sealed class MailWayTests
{
    private static readonly TimeSpan patience = TimeSpan.FromSeconds(20);

    private readonly Letter letter =
        new("b0.5", "mail to grower@home.example", "High, Küche: die Luft ist heiß", "What is, is.\n.\nAnd goes on.\n", Cellar.Noon)
        {
            References = ["a0.5"],
        };

    [Fact]
    public async Task AMessageArrivesWithItsWordsItsNameAndItsThread()
    {
        await using var server = new MailServer();

        Assert.Null((await Way(server.Port).SendAsync(letter, CancellationToken.None)).Fault);

        var came = await server.Came;
        Assert.Equal(letter.Subject, came.Subject);
        Assert.Equal(letter.Body.TrimEnd(), came.TextBody?.ReplaceLineEndings("\n"));
        Assert.Equal("b0.5@rack.example", came.MessageId);
        Assert.Equal("a0.5@rack.example", came.InReplyTo);
        Assert.Equal(["a0.5@rack.example"], came.References);
        Assert.Equal("auto-generated", came.Headers["Auto-Submitted"]);
        Assert.Equal(Cellar.Noon.ToDateTimeOffset(), came.Date);
        Assert.Null(came.HtmlBody);
    }

    [Fact]
    public async Task ARefusalForGoodIsOneAndSaysWhy()
    {
        await using var server = new MailServer();
        var result = await Way(server.Port, to: "nobody@home.example").SendAsync(letter, CancellationToken.None);

        Assert.True(result.IsFinal);
        Assert.Contains("550 no such mailbox", result.Fault, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ARefusalForNowMayGoBetterTheNextTime()
    {
        await using var server = new MailServer { Answer = new SmtpResponse((SmtpReplyCode)451, "try later") };
        var result = await Way(server.Port).SendAsync(letter, CancellationToken.None);

        Assert.False(result.IsFinal);
        Assert.Contains("451 try later", result.Fault, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhereNobodyListensTheFaultSaysSo() =>
        Assert.Contains("cannot be reached", await FaultAsync(Way(Loopback.FreePort())), StringComparison.Ordinal);

    // RFC 2606: nobody's, ever. Without a network the resolver may say as much in other words.
    [Fact]
    public async Task ANameThatNobodyHasIsNamed() => Assert.Contains(
        "nobody.example", await FaultAsync(new MailWay(Plan(25, "grower@home.example") with { Server = "nobody.example" }, patience)),
        StringComparison.Ordinal);

    [Fact]
    public async Task WhoSpeaksOtherwiseIsNoMailServer()
    {
        await using var server = Loopback.Greeting("HTTP/1.1 400 Bad Request\r\n\r\n");
        Assert.Contains("does not speak as a mail server does", await FaultAsync(Way(server.Port)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhoNeverAnswersIsNotWaitedForForLong()
    {
        await using var server = Loopback.Mute();
        var way = new MailWay(Plan(server.Port, "grower@home.example"), TimeSpan.FromMilliseconds(200));
        Assert.Contains("did not answer within", await FaultAsync(way), StringComparison.Ordinal);
    }

    [Fact]
    public async Task ACertificateThatNobodyVouchesForIsRefused()
    {
        await using var server = Loopback.WithOwnCertificate();
        var way = new MailWay(Plan(server.Port, "grower@home.example") with { Security = MailSecurity.Tls }, patience);
        Assert.Contains("no certificate that can be trusted", await FaultAsync(way), StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhereTlsCannotBeBegunNothingIsSentWithoutIt()
    {
        await using var server = new MailServer();
        var way = new MailWay(Plan(server.Port, "grower@home.example") with { Security = MailSecurity.StartTls }, patience);

        Assert.NotNull((await way.SendAsync(letter, CancellationToken.None)).Fault);
    }

    [Fact]
    public async Task WhoEndsItFromOutsideHearsNoFault()
    {
        await using var server = Loopback.Mute();
        using var end = new CancellationTokenSource();
        var sending = Way(server.Port).SendAsync(letter, end.Token);
        await end.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => sending);
    }

    [Fact]
    public async Task WithoutItsPasswordNobodyIsAsked()
    {
        var plan = Plan(Loopback.FreePort(), "grower@home.example") with { SignIn = new MailSignIn("rack", "/etc/not-there") };
        Assert.Contains("/etc/not-there is not there", await FaultAsync(new MailWay(plan, patience)), StringComparison.Ordinal);
    }

    // RFC 4954: 535 is a refusal of the credentials. The letter waits until they are right.
    [Fact]
    public async Task AWrongPasswordLosesNoLetter()
    {
        var secret = Path.GetTempFileName();
        await File.WriteAllTextAsync(secret, "not the password");
        await using var server = Loopback.Conversing(
            "220 here\r\n", "250-here\r\n250 AUTH PLAIN\r\n", "535 5.7.8 wrong\r\n", "221 bye\r\n");
        var plan = Plan(server.Port, "grower@home.example") with { SignIn = new MailSignIn("rack", secret) };

        var fault = await FaultAsync(new MailWay(plan, patience));
        File.Delete(secret);
        Assert.Contains("does not take the name or password of rack", fault, StringComparison.Ordinal);
    }

    private async Task<string> FaultAsync(MailWay way)
    {
        var result = await way.SendAsync(letter, CancellationToken.None);
        Assert.False(result.IsFinal);
        return result.Fault!;
    }

    private static MailWay Way(int port, string to = "grower@home.example") => new(Plan(port, to), patience);

    private static MailPlan Plan(int port, string to) =>
        new(to, "rack@rack.example", $"{IPAddress.Loopback}", port, MailSecurity.None, AlarmPriority.Low);
}
