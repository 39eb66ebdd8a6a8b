using CsCheck;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;
using RackController.Testing;

namespace RackController.Service.Tests.Recording;

/// <summary>Whatever a service lives through, its journal decides it again to the same commands and events, at the same
/// scans.</summary>
public sealed class ReplayOfServiceTests
{
    private static readonly Duration Length = Duration.FromHours(3);

    private static readonly Action<RecordedService>[] acts =
    [
        service => service.Clock.StepWall(Duration.FromHours(-3)),
        service => service.Clock.StepWall(Duration.FromMinutes(50)),
        service => service.Clock.StepWall(Duration.FromMilliseconds(-1)),
        service => service.Clock.Trust(false),
        service => service.Clock.Trust(true),
        service => service.Clock.Oversleep = Duration.FromNanoseconds(1_234_567),
        service => service.Clock.Oversleep = Duration.Zero,
        service => service.Clock.Advance(Duration.FromMilliseconds(400)),
        service => service.Clock.Advance(Duration.FromSeconds(20)),
        service => service.Inputs = new IoOutcome("the chip is gone"),
        service => service.Inputs = IoOutcome.Ok,
        service => service.Outputs = new IoOutcome("the relay board is gone"),
        service => service.Outputs = IoOutcome.Ok,
        service => service.Ask(new FloodNow("Ada", new RackId(0))),
        service => service.Ask(new Stop("Ada", null)),
        service => service.Ask(new Resume("Ben", null)),
        service => service.Ask(new HoldForService("Ben", new RackId(0), Duration.FromMinutes(4))),
        service => service.Ask(new SetTierInUse("Ben", new RackId(0), 1, InUse: false)),
        Restart,
    ];

    private static Gen<Story> Stories { get; } =
        from site in RandomSites.Any
        from found in RandomStarts.Any
        from faults in RandomFaults.Of(site, Length, Length).List[0, 5]
        from happens in Gen.Select(Gen.Double[0, 1], Gen.Int[0, acts.Length - 1].Select(i => acts[i])).List[0, 20]
        select new Story(site, found, faults, [.. happens.OrderBy(act => act.Item1)]);

    [Fact]
    public void AJournalDecidesAgainToTheSame() => Stories.Sample(
        story =>
        {
            using var folder = new TemporaryFolder();
            using var service = new RecordedService(story.Site, folder.File("journal.db"), story.Found);
            var start = service.Clock.Now().Monotonic - MonotonicTime.Zero;
            foreach (var fault in story.Faults)
            {
                service.Inject(fault with { From = fault.From + start, Until = fault.Until + start });
            }

            service.Boot();
            var at = 0.0;
            foreach (var (share, act) in story.Acts)
            {
                service.Run(Length * (share - at));
                at = share;
                act(service);
            }

            service.Run(Length * (1 - at));
            service.End();

            var runs = service.Replay();
            Assert.All(runs, run => Assert.Empty(run.Gaps));
            Assert.All(runs, run => Assert.True(run.DifferenceCount == 0, string.Join(Environment.NewLine, run.Differences)));
            Assert.All(runs, run => Assert.Equal(0, run.OtherWords));
            Assert.Equal(service.CommandsGiven, runs.Sum(run => run.Commands));
        },
        iter: 6);

    private static void Restart(RecordedService service)
    {
        service.End();
        service.Boot();
    }

    private sealed record Story(
        Site Site, PlantStart Found, List<Fault> Faults, List<(double Share, Action<RecordedService> Act)> Acts);
}
