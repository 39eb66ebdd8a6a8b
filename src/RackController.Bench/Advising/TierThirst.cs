using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>What the crop of a tier gives off, by a simulated day with full-grown trays in every place.</summary>
/// <param name="Tier">The tier.</param>
/// <param name="LitLPerH">While lit, L/h; 0 where it never is.</param>
/// <param name="DarkLPerH">In the dark, L/h; 0 where it never is.</param>
/// <param name="LitH">How long it was lit, h.</param>
/// <param name="DriestShare">How much of their water the media still had at the driest, 0 to 1.</param>
public sealed record TierThirst(Tier Tier, double LitLPerH, double DarkLPerH, double LitH, double DriestShare)
{
    // Any ordinary date: no clock changes on a site's second of March.
    private static readonly LocalDate ordinary = new(2026, 3, 2);
    private static readonly Duration look = Duration.FromMinutes(10);

    /// <summary>The thirst of every tier of a site, rack by rack, bottom first.</summary>
    /// <param name="site">The site as its rack file has it.</param>
    public static ImmutableArray<ImmutableArray<TierThirst>> Of(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        var run = Rehearsal.UpTo(site, ordinary.AtStartOfDayInZone(site.Zone).ToInstant());
        var end = run.Now.Elapsed + Duration.FromDays(1);
        var sums = site.Racks.Select(rack => rack.Tiers.Select(_ => new Sums()).ToArray()).ToArray();
        do
        {
            run.Now.LookAgainBy(run.Now.Elapsed + look);
            foreach (var (rack, tier, sum) in Every(site, sums))
            {
                sum.Look(run.Plant.Racks[rack.Id.Index].Tiers[tier.Number - 1], run.Now.Elapsed);
            }
        }
        while (run.Step(MonotonicTime.Zero + end));

        return [.. site.Racks.Select(rack => rack.Tiers.Select(tier =>
            sums[rack.Id.Index][tier.Number - 1].Close(tier, end)).ToImmutableArray())];
    }

    private static IEnumerable<(Rack Rack, Tier Tier, Sums Sum)> Every(Site site, Sums[][] sums) =>
        site.Racks.SelectMany(rack => rack.Tiers.Select(tier => (rack, tier, sums[rack.Id.Index][tier.Number - 1])));

    // What is given off changes slowly but where a lamp goes on or off, and there everybody looks: each look holds until the next.
    private sealed class Sums
    {
        private const double MlPerL = 1000;

        private Duration since;
        private double rateLPerH;
        private double litL;
        private double darkL;
        private double litH;
        private double darkH;
        private double leastMediaL = double.PositiveInfinity;
        private bool isLit;
        private bool isUnderWay;

        public void Look(TierTruth tier, Duration now)
        {
            Add(now);
            isUnderWay = true;
            rateLPerH = tier.TranspirationMlPerH / MlPerL;
            isLit = tier.PpfdUmolPerM2S > 0;
            leastMediaL = Math.Min(leastMediaL, tier.MediaWaterL);
        }

        public TierThirst Close(Tier tier, Duration end)
        {
            Add(end);
            var heldL = MediaWords.HeldL(tier);
            return new TierThirst(
                tier, litH > 0 ? litL / litH : 0, darkH > 0 ? darkL / darkH : 0, litH, heldL > 0 ? leastMediaL / heldL : 1);
        }

        private void Add(Duration now)
        {
            var hours = isUnderWay ? (now - since).TotalHours : 0;
            since = now;
            (litL, litH) = isLit ? (litL + hours * rateLPerH, litH + hours) : (litL, litH);
            (darkL, darkH) = isLit ? (darkL, darkH) : (darkL + hours * rateLPerH, darkH + hours);
        }
    }
}
