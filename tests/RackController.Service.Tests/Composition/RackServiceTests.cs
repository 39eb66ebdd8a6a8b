using RackController.Control;
using RackController.Model;
using RackController.Testing;

namespace RackController.Service.Tests;

/// <summary>The whole service on the simulated rack, from start to stop.</summary>
public sealed class RackServiceTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly TemporaryFolder folder = new();
    private readonly Site site = Sites.OneRack();

    [Fact]
    public async Task ItRunsUntilItIsToldToEndAndEveryLoadIsSafe()
    {
        SiteStatus? seen = null;
        var ending = await Run(async (rack, end) =>
        {
            do
            {
                seen = await rack.LookAsync(end);
            }
            while (seen.Health.Scans < 50);
        });

        Assert.Equal(new ServiceEnding(null, null), ending);
        Assert.Equal(site.Loads.Length, seen?.Loads.Length);
        var events = JournalReader.Column(Journal, "SELECT what FROM events WHERE kind = 'Controller' ORDER BY id");
        Assert.Equal("started", events[0]);
        Assert.Equal("stopped", events[^1]);
    }

    [Fact]
    public async Task ASecondControllerOfTheSameRackIsRefused()
    {
        CouldNotRunException? refusal = null;
        await Run(async (_, _) => refusal = await Assert.ThrowsAsync<CouldNotRunException>(() => Run((_, _) => Task.CompletedTask)));

        Assert.Contains($"process {Environment.ProcessId} ", refusal?.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhatPeopleAskForReachesControlAndTheJournal()
    {
        await Run(async (rack, end) =>
        {
            Assert.True(rack.TryAsk(new Stop("somebody", null)));
            while ((await rack.LookAsync(end)).Recent.All(happened => happened.Kind != EventKind.Request))
            {
            }
        });

        Assert.NotEmpty(JournalReader.Column(Journal, "SELECT id FROM events WHERE kind = 'Request'"));
    }

    [Fact]
    public async Task ARestartTakesUpTheInterlockMemory()
    {
        await Run(LookOnce);

        await Run(LookOnce);

        Assert.Contains("taken up again", Log(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task ACorruptJournalIsSaidInAlarmAndLogAndTheRackIsDriven()
    {
        File.WriteAllText(Journal, "scribble");
        SiteStatus? seen = null;

        var ending = await Run(async (rack, end) => seen = await rack.LookAsync(end));

        Assert.Equal(new ServiceEnding(null, null), ending);
        Assert.Contains(seen!.Alarms, alarm => alarm.Key == "controller/journal-set-aside");
        Assert.Contains("-corrupt.db", Log(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task AStateFolderThatCannotBeWrittenIsAnAlarmAndTheRackIsDriven()
    {
        File.WriteAllText(folder.File("in-the-way"), "");
        SiteStatus? seen = null;

        var ending = await RackService.RunAsync(site, Options(async (rack, end) => seen = await rack.LookAsync(end)) with
        {
            Folder = new StateFolder(folder.File("in-the-way/state")),
        }).WaitAsync(Patience);

        Assert.Equal(new ServiceEnding(null, null), ending);
        Assert.Contains(seen!.Alarms, alarm => alarm.Key == "controller/journal");
        Assert.Contains(seen.Alarms, alarm => alarm.Key == "controller/lock");
    }

    [FullDiskFact]
    public async Task ADiskThatFillsUpKeepsNoRunFromEndingAsItShould()
    {
        using var disk = new TinyDisk(folder.Path, kibibytes: 256);

        var ending = await RackService.RunAsync(site, Options(FillAsync) with { Folder = new StateFolder(disk.Path) }).WaitAsync(Patience);

        Assert.Equal(new ServiceEnding(null, null), ending);

        async Task FillAsync(IRunningRack rack, CancellationToken end)
        {
            await rack.LookAsync(end);
            disk.Fill();
            Assert.True(rack.TryAsk(new Stop("somebody", null)));
            while ((await rack.LookAsync(end)).Recent.All(happened => happened.Kind != EventKind.Request))
            {
            }
        }
    }

    [Fact]
    public async Task AScreenThatFailsEndsTheServiceWithEveryLoadSafe()
    {
        var ending = await Run((_, _) => throw new InvalidOperationException("no terminal after all"));

        Assert.Null(ending.SafeStateFault);
        Assert.Contains("no terminal after all", ending.Defect, StringComparison.Ordinal);
    }

    public void Dispose() => folder.Dispose();

    private string Journal => new StateFolder(folder.Path).Journal;

    private static async Task LookOnce(IRunningRack rack, CancellationToken end) => await rack.LookAsync(end);

    private Task<ServiceEnding> Run(Func<IRunningRack, CancellationToken, Task> screen) =>
        RackService.RunAsync(site, Options(screen)).WaitAsync(Patience);

    private ServiceOptions Options(Func<IRunningRack, CancellationToken, Task> screen) => new()
    {
        RackFile = "made up",
        RackFileText = "made up",
        Folder = new StateFolder(folder.Path),
        Speed = 100,
        Screen = screen,
    };

    private string Log() => string.Concat(Directory.GetFiles(folder.File("log")).Select(File.ReadAllText));
}
