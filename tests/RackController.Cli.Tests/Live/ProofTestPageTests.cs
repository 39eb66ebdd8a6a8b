using NodaTime;
using RackController.Control;
using RackController.Live;
using RackController.Model;
using RackController.Service;

namespace RackController.Cli.Tests.Live;

public sealed class ProofTestPageTests
{
    private static readonly Site site = Pictures.DemoSite("demo-four-tier.yaml");
    private static readonly SiteStatus calm = Pictures.Calm(site);

    [Theory]
    [InlineData(80, 24, 0)]
    [InlineData(80, 10, 15)]
    [InlineData(160, 60, 14)]
    public void TheChosenTestIsInSightAndTheKeysAreTheLastLine(int width, int height, int chosen)
    {
        var lines = Page(calm, chosen, width, height);
        Assert.True(lines.Count <= height);
        Assert.Contains(lines, line => line.StartsWith($"> {calm.ProofTests[chosen].Item}", StringComparison.Ordinal));
        Assert.StartsWith("J next", lines[^1], StringComparison.Ordinal);
        Assert.All(lines, line => Assert.True(line.Length <= width + 2, line));
    }

    [Fact]
    public void WhatIsOverdueOrFailedCarriesASign()
    {
        var status = calm with
        {
            ProofTests = [calm.ProofTests[0] with { IsOverdue = true }, calm.ProofTests[1] with { HasFailed = true }],
        };
        Assert.Equal(2, Page(status, 0, 100, 24).Count(line => line.Contains("! due", StringComparison.Ordinal)));
        Assert.Contains(Page(status, 0, 100, 24), line => line.Contains(" failed ", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(true, true, "waits for the rack to be so: 13 s left")]
    [InlineData(true, false, "say what you see: 13 s left")]
    [InlineData(false, false, "the readings must show it: 13 s left")]
    public void AStepSaysWhatToDoAndCountsDown(bool asksPerson, bool waits, string words)
    {
        var lines = Page(
            calm with
            {
                ProofTest = new ProofTestProgress("north/pump", 2, 2, "does the pump run?", asksPerson, waits, Duration.FromSeconds(12.4)),
            },
            0, 80, 24);
        Assert.Contains("north/pump, step 2 of 2", lines);
        Assert.Contains("does the pump run?", lines);
        Assert.Contains(words, lines);
        Assert.Equal(asksPerson && !waits, lines[^1].Contains("Y it is so", StringComparison.Ordinal));
    }

    [Fact]
    public void AlarmsStayInSight() => Assert.Contains(
        Page(calm with { Alarms = [Pictures.Alarm("north/high-water", AlarmPriority.Critical, AlarmState.Latched)] }, 0, 80, 24),
        line => line.StartsWith("!!!! north/high-water", StringComparison.Ordinal));

    private static List<string> Page(SiteStatus status, int chosen, int width, int height) =>
    [
        .. ProofTestPage.Lines(site, status, chosen, ProofTestPage.Legend(status.ProofTest), width, height)
            .Select(line => string.Concat(line.Render(200).Select(segment => segment.Text)).TrimEnd()),
    ];
}
