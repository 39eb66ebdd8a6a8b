using System.Collections.Immutable;
using NodaTime;
using RackController.Bench;
using RackController.Control;
using RackController.Model;
using RackController.Plant;
using RackController.RackFile;
using RackController.Testing;

namespace RackController.Service.Tests;

/// <summary>From a flood to a fit on the demo rack that times its own floods: the service's own scan loop and journal on the simulated
/// rack, which is otherwise than it is written.</summary>
public sealed class FloodsOnRecordTests
{
    private const string Ada = "Ada";

    private static readonly Site site = RackFileReader.Read(ShippedFiles.PathTo("config/demo-full-floats.yaml")).Site!;
    private static readonly Rack rack = site.Racks[0];
    private static readonly Duration cycle = Duration.FromMinutes(50);

    [Fact]
    public void FloodsOnRecordSayWhichTiersTookPartAndHowTheRackReallyIs()
    {
        var floods = FloodsOf(TierSet.None, TierSet.None, TierSet.Of([3]), TierSet.Of([2, 3]), TierSet.None);

        // The schedule may flood between them.
        var resting = floods.Select(flood => flood.Run.Resting).ToList();
        Assert.Equal<TierSet>(
            [TierSet.None, TierSet.Of([3]), TierSet.Of([2, 3]), TierSet.None],
            resting.Where((tiers, at) => at == 0 || tiers != resting[at - 1]));
        Assert.All(floods, flood => Assert.All(
            FloodTiming.Of(rack, flood.Run, [.. flood.Times.Select(time => time.Mark)]).Zip(flood.Times),
            time => Assert.InRange(time.Second.AfterS, time.First!.Value - 3, time.First.Value + 3)));
        var tuned = RackTuning.Of(rack, TuneTimes.OnRecord(floods, site.Zone)).Tuned!.Rack.Measured!;
        AssertHolds(rack.Measured!.PumpSpeed.Value, tuned.PumpSpeed);
        Assert.All(rack.Measured.Tiers, tier => AssertHolds(tier.Weep!.Value, tuned.Tier(tier.Number)!.Weep!));
    }

    private static void AssertHolds(double really, MeasuredFigure told) =>
        Assert.InRange(really, told.Value - told.Within, told.Value + told.Within);

    /// <summary>Floods the rack again and again, with these tiers out of use, and reads its journal.</summary>
    private static ImmutableArray<TimedFlood> FloodsOf(params TierSet[] resting)
    {
        using var folder = new TemporaryFolder();
        using (var service = new RecordedService(site, folder.File("journal.db"), PlantStart.Default))
        {
            service.Boot();
            service.Run(Duration.FromMinutes(5));
            foreach (var atRest in resting)
            {
                foreach (var tier in rack.Tiers)
                {
                    service.Ask(new SetTierInUse(Ada, rack.Id, tier.Number, InUse: !atRest.Contains(tier.Number)));
                }

                service.Ask(new FloodNow(Ada, rack.Id));
                service.Run(cycle);
            }

            service.End();
        }

        using var journal = JournalHistory.Open(folder.File("journal.db"));
        return new FloodTimings(site, rack).Newest(journal, since: null);
    }
}
