using RackController.Model;
using RackController.Testing;

namespace RackController.Service.Tests;

/// <summary>A page beside the scan, on a simulated rack.</summary>
public sealed class FacesTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly TemporaryFolder folder = new();
    private readonly Site site = Sites.OneRack();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task APageThatFailsIsAnAlarmAndTheRackIsDriven()
    {
        SiteStatus? seen = null;
        var ending = await RunAsync(
            (_, _, _) => throw new IOException("address already in use"),
            async (rack, end) =>
            {
                do
                {
                    seen = await rack.LookAsync(end);
                }
                while (seen.Alarms.All(alarm => alarm.Key != "controller/page"));
            });

        Assert.Equal(new ServiceEnding(null, null), ending);
        var told = seen!.Alarms.Single(alarm => alarm.Key == "controller/page");
        Assert.Contains("address already in use", told.Cause, StringComparison.Ordinal);
        Assert.Null(seen.Health.Fault);
    }

    [Fact]
    public async Task APageThatDoesNotEndIsNotWaitedForLong()
    {
        var forever = new TaskCompletionSource();

        var ending = await RunAsync((_, _, _) => forever.Task, async (rack, end) => await rack.LookAsync(end));

        Assert.Equal(new ServiceEnding(null, null), ending);
    }

    [Fact]
    public async Task ARunThatIsToStartAgainSaysSoAndWhy()
    {
        var ending = await RunAsync(
            async (rack, served, end) =>
            {
                served();
                await rack.LookAsync(end);
                rack.StartAgain("Ada changed the rack file");
            },
            (_, end) => Task.Delay(Timeout.Infinite, end));

        Assert.Equal(new ServiceEnding(null, null, StartAgain: true), ending);
        Assert.Equal(
            "Ada changed the rack file",
            JournalReader.Column(folder.File("journal.db"), "SELECT because FROM events WHERE what = 'stopped'").Single());
    }

    [Fact]
    public async Task WhatAPersonDoesOnThePageIsOnRecord()
    {
        await RunAsync(
            (rack, served, end) =>
            {
                served();
                rack.Record("signed in", "Ada did from a phone");
                return Task.CompletedTask;
            },
            async (rack, end) => await rack.LookAsync(end));

        Assert.Equal(
            "Ada did from a phone",
            JournalReader.Column(folder.File("journal.db"), "SELECT because FROM events WHERE what = 'signed in'").Single());
    }

    private Task<ServiceEnding> RunAsync(PageServing page, Func<IRunningRack, CancellationToken, Task> screen) => RackService.RunAsync(
        site,
        new ServiceOptions
        {
            RackFile = "test.yaml",
            RackFileText = "",
            Folder = new StateFolder(folder.Path),
            Page = page,
            Screen = screen,
        }).WaitAsync(Patience);
}
