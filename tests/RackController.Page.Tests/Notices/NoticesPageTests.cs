using System.Net;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.RackFile;
using RackController.Service;
using RackController.Testing;

namespace RackController.Page.Tests;

/// <summary>The page of notices, with what the process that sends them would keep.</summary>
public sealed class NoticesPageTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncLifetime
{
    private const string Kept = """
        {
          "trouble": "the journal cannot be read",
          "ways": [
            { "name": "mail to grower@home.example", "lastSuccess": "2026-06-01T11:00:00Z", "waiting": 0 },
            {
              "name": "signs of life to home.example", "fault": "home.example answers 503", "faultAt": "2026-06-01T12:00:00Z",
              "waiting": 0
            }
          ],
          "position": { "number": 7, "wall": "2026-06-01T11:00:00Z" }
        }
        """;

    private ServedRack served = null!;

    public async Task InitializeAsync()
    {
        var path = ShippedFiles.PathTo("config/demo-four-tier.yaml");
        served = await ServedRack.StartAsync(RackFileReader.Read(path).Site! with { Notices = Plan }, path);
    }

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Theory]
    [MemberData(nameof(View.Names), MemberType = typeof(View))]
    public async Task ItHoldsToTheGuidelinesOnEveryScreen(string view)
    {
        KeepsAndLives();
        var page = await chromium.OpenAsync(View.Of(view), new Uri(served.Address, "/notices"));

        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"notices-{view}");
    }

    [Fact]
    public async Task ItSaysHowEveryWayFaresAndWhenItIsQuiet()
    {
        KeepsAndLives();
        var page = await served.Client.GetStringAsync("/notices");

        Assert.Contains("last got through Mon 1 Jun 12:00:00", page, StringComparison.Ordinal);
        Assert.Contains("▲ Mon 1 Jun 13:00:00: home.example answers 503", page, StringComparison.Ordinal);
        Assert.Contains("From 22:00 to 06:00 only what is high or more urgent is told at once", page, StringComparison.Ordinal);
        Assert.Contains("▲ The journal cannot be read.", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhereNoProcessSendsThemItSaysSoAndOffersNoTest()
    {
        var page = await served.Client.GetStringAsync("/notices");

        Assert.Contains("No process sends notices now", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Send a test message", page, StringComparison.Ordinal);
        using var answer = await served.Client.PostAsync("/api/notices/test", null);
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
    }

    [Fact]
    public async Task ATestReachesTheProcessByWayOfTheJournal()
    {
        KeepsAndLives();
        Assert.Contains("Send a test message", await served.Client.GetStringAsync("/notices"), StringComparison.Ordinal);
        using var answer = await served.Client.PostAsync("/api/notices/test", null);
        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        await served.EndAsync();

        using var journal = JournalHistory.Open(served.State.Journal);
        var asked = Assert.Single(journal.EventsBackwards(EventKind.Controller), kept => kept.Event.What == NoticesStatus.TestAsked);
        Assert.Equal(served.Rack.Site.Name, asked.Event.Subject);
        Assert.EndsWith(" asked", asked.Event.Because, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TheAlarmsSayWhereNotEverybodyIsTold() => Assert.Contains(
        "Not everybody is told of alarms who should be", await served.Client.GetStringAsync("/alarms"), StringComparison.Ordinal);

    [Fact]
    public async Task WhereNobodyIsToBeToldItSaysHow()
    {
        await using var other = await ServedRack.OfFileAsync();
        var phone = await chromium.OpenAsync(View.Of("phone-light"), new Uri(other.Address, "/notices"));
        await Judgement.HoldsAsync(phone);
        await Chromium.KeepAsync(phone, "notices-of-nobody");
        Assert.DoesNotContain("Not everybody", await other.Client.GetStringAsync("/alarms"), StringComparison.Ordinal);
        var page = await other.Client.GetStringAsync("/notices");

        Assert.Contains("Nobody is told of alarms while nobody looks", page, StringComparison.Ordinal);
        Assert.Contains("quiet-hours", page, StringComparison.Ordinal);
    }

    private static NoticePlan Plan => new()
    {
        RemindAfter = Duration.FromMinutes(30),
        Quiet = new QuietHours(new LocalTime(22, 0), new LocalTime(6, 0), AlarmPriority.High),
        Mail = [new MailPlan("grower@home.example", "rack@home.example", "mail.home.example", 465, MailSecurity.Tls, AlarmPriority.Low)],
        Alive = new AlivePlan(new Uri("https://home.example/alive"), Duration.FromMinutes(5)),
    };

    private void KeepsAndLives()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(served.State.Notices)!);
        File.WriteAllText(served.State.Notices, Kept);
        Assert.Null(SignOfLife.At(served.State.NoticesAlive).Give());
    }
}
