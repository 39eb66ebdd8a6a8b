using System.Globalization;
using CsCheck;
using RackController.Model;
using RackController.RackFile;
using RackController.Testing;

namespace RackController.Plant.Tests;

/// <summary>In which order trays fill and drain, which the trade knows (common practice, no source) and nothing in the plant says:
/// racks of two to eight equal trays in the default geometry, throttled as a rack file without minor losses is.</summary>
public class FloodOrderTests
{
    private const double FilledShare = 0.9;
    private const double DrainedMm = 3;

    private static Gen<Flood> Floods { get; } =
        from tiers in Gen.Int[2, 8]
        from lpmPerTier in RandomParts.Fine(4, 9)
        from headM in RandomParts.Fine(2.6, 4)
        from lengthMm in RandomParts.Fine(800, 1300)
        from widthMm in RandomParts.Fine(500, 700)
        from weepMm in RandomParts.Fine(7, 10)
        from insertTrays in Gen.Int[0, 5]
        select new Flood(tiers, lpmPerTier * tiers, headM, lengthMm, widthMm, weepMm, insertTrays, null);

    [Fact]
    public void TheBottomTrayFillsFirstAndEachTheLaterTheHigherItStands() => Floods.Sample(flood =>
    {
        var rack = flood.Begin();
        var fullMm = FilledShare * rack.Site.Racks[0].Tiers[0].Tray.StandpipeHeightMm;
        var filled = Times(flood, rack, tier => tier.DepthMm >= fullMm);
        Assert.Equal(filled.Order(), filled);
        Assert.True(filled[0] < filled[^1]);
    });

    [Fact]
    public void TraysThatDrainFreelyAreEmptyWithinSecondsOfEachOtherTheBottomOneLast() => Floods.Sample(flood =>
    {
        var drained = Drained(flood);
        Assert.Equal(drained.Max(), drained[0]);
        Assert.InRange(drained.Max() - drained.Min(), 0, 15);
    });

    [Fact]
    public void WhereTheStackIsAtItsLimitTheBottomTrayDrainsLastByFar() =>
        Floods.Select(RandomParts.Fine(0.2, 0.5)).Sample((flood, share) =>
    {
        // What a weep drains from the height of a standpipe: 0.62 a sqrt(2 g h), L/min for each square millimetre of its bore.
        var freely = flood.WeepMm * flood.WeepMm * flood.Tiers * 0.027;
        var drained = Drained(flood with { StackLpm = share * freely });
        Assert.Equal(drained.OrderDescending(), drained);
        Assert.True(drained[0] - drained[1] > 30);
    });

    private static double[] Drained(Flood flood)
    {
        var rack = flood.Begin();
        rack.To(900);
        rack.Stop();
        return Times(flood, rack, tier => tier.DepthMm < DrainedMm);
    }

    private static double[] Times(Flood flood, TestSite rack, Func<TierTruth, bool> isSo)
    {
        var times = new double[flood.Tiers];
        for (var seconds = rack.Seconds; times.Any(time => time == 0); seconds++)
        {
            Assert.InRange(seconds, 0, 4 * 3600);
            rack.To(seconds);
            for (var tier = 0; tier < times.Length; tier++)
            {
                times[tier] = times[tier] == 0 && isSo(rack.Truth.Tiers[tier]) ? seconds : times[tier];
            }
        }

        return times;
    }

    private sealed record Flood(
        int Tiers, double PumpLpm, double HeadM, double LengthMm, double WidthMm, double WeepMm, int InsertTrays, double? StackLpm)
    {
        public TestSite Begin()
        {
            var rack = new TestSite(Tiers, site: Site());
            rack.Flood();
            return rack;
        }

        private Site Site()
        {
            var result = RackFileReader.Parse(Text(), "a rack of a test");
            Assert.True(result.Site is not null, string.Join('\n', result.Complaints));
            return result.Site;
        }

        private string Capacity => StackLpm is { } lpm
            ? string.Create(CultureInfo.InvariantCulture, $"capacity: {lpm:0.###} L/min")
            : "";

        private string Text() => string.Create(CultureInfo.InvariantCulture, $$"""
            site: test
            zone: Europe/London
            circuits:
              - { name: sockets, voltage: 230 V, breaker: 16 A }
            racks:
              - name: north
                circuit: sockets
                reservoir: { volume: 900 L, depth: 600 mm }
                pump: { rated: { flow: {{PumpLpm:0.###}} L/min, head: {{HeadM}} m }, power: 60 W }
                drain: { {{Capacity}} }
                tray: { length: {{LengthMm}} mm, width: {{WidthMm}} mm, weep: {{WeepMm}} mm, insert-trays: {{InsertTrays}} }
                sensors: { low-float: 60 mm, leak-rope: yes }
                tiers: [{{string.Join(", ", Enumerable.Repeat("{}", Tiers))}}]
                schedule:
                  floods: { at: [08:00], fill: 5 min, soak: 5 min, drain: 4 h }
            """);
    }
}
