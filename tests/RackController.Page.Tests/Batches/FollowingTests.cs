using NodaTime;
using RackController.Growing;
using RackController.RackFile;
using RackController.Service;
using RackController.Testing;

namespace RackController.Page.Tests;

/// <summary>Schedules that follow what stands on the tiers, by the service as it runs.</summary>
public sealed class FollowingTests
{
    [Fact]
    public async Task WhatStandsThereIsWrittenIntoTheRackFileAndAnotherRunTakesOver()
    {
        using var file = new FollowedFile();
        await using var served = await file.StartAsync(state => PutDown(state, file, mostH: 13));

        var ending = await served.EndedAsync();

        Assert.True(ending is { StartAgain: true, Defect: null, SafeStateFault: null });
        var site = RackFileReader.Read(served.RackFile).Site!;
        Assert.Equal(Duration.FromHours(13), site.Racks[0].Schedule.Lights[1]!.Length);
        Assert.Equal(Duration.FromHours(16), site.Racks[0].OwnSchedule.Lights[1]!.Length);
        Assert.Single(Directory.GetFiles(served.Versions));
    }

    [Fact]
    public async Task WhatDoesNotAgreeIsAnAlarmAndNothingIsChanged()
    {
        using var file = new FollowedFile();
        await using var served = await file.StartAsync(state =>
        {
            PutDown(state, file, mostH: 13, lot: "P", trays: 2);
            PutDown(state, file, mostH: 18, lot: "Q", trays: 2, leastH: 17);
        });

        var status = await served.SeeAsync(at => at.Alarms.Any(alarm => alarm.Key == "controller/batches"));

        Assert.Contains(
            "do not agree on hours of light", status.Alarms.Single(alarm => alarm.Key == "controller/batches").Cause,
            StringComparison.Ordinal);
        Assert.False(Directory.Exists(served.Versions));
    }

    [Fact]
    public async Task AFileThatSomebodyChangedByHandIsNotPutInPlaceBehindTheirBack()
    {
        using var file = new FollowedFile();
        await using var served = await file.StartAsync(state =>
        {
            PutDown(state, file, mostH: 13);
            File.AppendAllText(Path.Combine(state.Path, "rack.yaml"), "# by hand\n");
        }, runsBy: file.Text);

        var status = await served.SeeAsync(at => at.Alarms.Any(alarm => alarm.Key == "controller/batches"));

        Assert.Contains(
            "changed by hand", status.Alarms.Single(alarm => alarm.Key == "controller/batches").Cause, StringComparison.Ordinal);
    }

    private static void PutDown(StateFolder state, FollowedFile file, double mostH, string lot = "P", int trays = 4, double leastH = 12)
    {
        var now = SystemClock.Instance.GetCurrentInstant();
        var today = now.InZone(file.Site.Zone).Date;
        var needs = new LitStage
        {
            Name = "light",
            Days = new(5, 9),
            DailyLightMolPerM2D = new(0, 100),
            PpfdUmolPerM2S = new(50, 1000),
            PhotoperiodH = new(leastH, mostH),
            Floods = [new(null, new(1, 12))],
        };
        Assert.Null(new BookDesk(state.Book, file.Site).Write(
        [
            new BatchTakenUp(now, "Ada", lot, "radish", trays, today, [needs], [], today.PlusDays(8), ""),
            new BatchSown(now, "Ada", lot, today, ""),
            new BatchMoved(now, "Ada", lot, today, 0, [new StandsOn("north/tier 2", trays)]),
        ]));
    }

    /// <summary>The four-tier demo rack, whose schedule follows.</summary>
    private sealed class FollowedFile : IDisposable
    {
        private readonly string path = Path.GetTempFileName();

        public FollowedFile()
        {
            Text = File.ReadAllText(ShippedFiles.PathTo("config/demo-four-tier.yaml")) + "\nbatches: { schedule: follow }\n";
            File.WriteAllText(path, Text);
            Site = RackFileReader.Read(path).Site!;
        }

        public string Text { get; }

        public Model.Site Site { get; }

        public Task<ServedRack> StartAsync(Action<StateFolder> prepare, string? runsBy = null) =>
            ServedRack.StartAsync(Site, path, prepare: prepare, runsBy: runsBy);

        public void Dispose() => File.Delete(path);
    }
}
