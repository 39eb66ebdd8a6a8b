using NodaTime;
using RackController.Model;

namespace RackController.RackFile.Tests;

public sealed class MeasuredSectionTests
{
    private static readonly MeasuredRack measured = new(
        new LocalDate(2026, 11, 30), 6, new MeasuredFigure(0.871, 0.012), new MeasuredFigure(8, 3.7), new MeasuredFigure(0.9, 0.1),
        [
            new MeasuredTier(1, new MeasuredFigure(0.95, 0.04), null),
            new MeasuredTier(2, new MeasuredFigure(0.7, 0.03), new MeasuredFigure(0.8, 0.01)),
        ]);

    public static TheoryData<string> DemoFiles() =>
        ["demo-first-rack.yaml", "demo-four-tier.yaml", "demo-three-racks.yaml", "demo-two-tier.yaml"];

    [Theory]
    [MemberData(nameof(DemoFiles))]
    public void EveryOtherLineOfAShippedFileStaysAsItIs(string name)
    {
        var text = File.ReadAllText(Files.Config(name));
        foreach (var rack in Expect.Site(text).Racks)
        {
            var changed = Put(text, rack, measured);

            AssertMeasured(measured, Expect.Site(changed).Racks[rack.Id.Index].Measured);
            Assert.Equal(text, Without(changed, text));
        }
    }

    [Fact]
    public void ItStandsAtTheEndOfItsRackAndAnotherTakesItsPlace()
    {
        var text = RackFiles.Small + "\n\n# the end\n";
        var once = Put(text, Expect.Site(text).Racks[0], measured with { Tiers = [], ScreenLossK = null, Standpipe = null });

        Assert.Contains(
            """
                wired: { float-cutout: 25 mm }

                measured:   # by `tune`, of timed floods; the bench follows it, no interlock does
                  on: 2026-11-30
                  floods: 6
                  pump-speed: 0.871 +/- 0.012
            io: simulated

            # the end

            """.ReplaceLineEndings("\n"), once, StringComparison.Ordinal);

        var twice = Put(once, Expect.Site(once).Racks[0], measured);
        Assert.Equal(Put(text, Expect.Site(text).Racks[0], measured), twice);
        Assert.Equal(twice, Put(twice, Expect.Site(twice).Racks[0], measured));
    }

    [Theory]
    [InlineData("\r\n")]
    [InlineData("\n")]
    public void EndsOfLinesStayWhatTheyAre(string end)
    {
        // The rack ends the file, and its last line has no end.
        var lines = RackFiles.Small.Split('\n').Where(line => line != "io: simulated").Prepend("io: simulated").ToList();
        var text = string.Join(end, lines);

        var changed = Put(text, Expect.Site(text).Racks[0], measured);

        Assert.StartsWith(text + end, changed, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', changed.Replace(end, "", StringComparison.Ordinal));
        AssertMeasured(measured, Expect.Site(changed).Racks[0].Measured);
    }

    [Fact]
    public void WhereItStandsFirstInItsRackTheRackStaysAListItem()
    {
        var text = RackFiles.SmallWith(
            "  - name: north\n",
            "  - measured: { on: 2026-01-01, floods: 3,\n        pump-speed: 1 +/- 0.1 }   # old\n    # a remark\n    name: north\n");

        var changed = Put(text, Expect.Site(text).Racks[0], measured);

        Assert.Contains("  - measured:   # by", changed, StringComparison.Ordinal);
        Assert.Contains("    # a remark\n    name: north\n", changed, StringComparison.Ordinal);
        Assert.DoesNotContain("2026-01-01", changed, StringComparison.Ordinal);
    }

    [Fact]
    public void ARackInBracesTakesNoLines()
    {
        var braces = """
            site: test cellar
            zone: America/New_York
            circuits: [{ name: sockets, voltage: 120 V, breaker: 15 A }]
            racks: [{ name: north, reservoir: { volume: 160 L, depth: 400 mm },
              pump: { rated: { flow: 30 L/min, head: 2.5 m }, power: 45 W },
              tiers: [{ light: { power: 80 W, ppfd: 180 umol/m2/s } }], schedule: { lights: { on: 06:00, for: 16 h } } }]
            io: simulated
            """;

        Assert.Null(MeasuredSection.Put(braces, Expect.Site(braces).Racks[0], measured));
    }

    [Theory]
    [InlineData("pump-speed: 0.87 +/- 0.02", "pump-speed: 0.2 +/- 0.02", "`pump-speed` is `0.2 +/- 0.02`, out of range")]
    [InlineData("pump-speed: 0.87 +/- 0.02", "pump-speed: 0.87", "`pump-speed` is `0.87`, not a figure with its interval")]
    [InlineData("pump-speed: 0.87 +/- 0.02", "pump-speed: 0.87 +/- 0.9", "which is to know nothing of it")]
    [InlineData("floods: 6", "floods: 2", "a whole number from 3 to 1000")]
    [InlineData("on: 2026-11-30", "on: 30 November", "not a date")]
    [InlineData("tier: 2", "tier: 3", "tier 3 was measured, and the rack has 2")]
    [InlineData("tier: 2", "tier: 1", "tier 1 stands here a second time")]
    public void NonsenseIsRefusedAtItsLine(string old, string replacement, string complaint)
    {
        const string sound = """
                measured:
                  on: 2026-11-30
                  floods: 6
                  pump-speed: 0.87 +/- 0.02
                  tiers:
                    - { tier: 1, weep: 0.95 +/- 0.04 }
                    - { tier: 2, weep: 0.7 +/- 0.03 }

            """;
        Assert.NotNull(Expect.Site(RackFiles.SmallWith("io: simulated", sound + "io: simulated")).Racks[0].Measured);
        Expect.Complaint(
            RackFiles.SmallWith("io: simulated", sound.Replace(old, replacement, StringComparison.Ordinal) + "io: simulated"), complaint);
    }

    private static string Put(string text, Rack rack, MeasuredRack what) => Assert.IsType<string>(MeasuredSection.Put(text, rack, what));

    /// <summary>A text without what stands between its beginning and its end as another has them.</summary>
    private static string Without(string changed, string text)
    {
        var begin = text.Zip(changed).TakeWhile(pair => pair.First == pair.Second).Count();
        return changed[..begin] + changed[(changed.Length - text.Length + begin)..];
    }

    private static void AssertMeasured(MeasuredRack expected, MeasuredRack? read)
    {
        Assert.NotNull(read);
        Assert.Equal(expected with { Tiers = read.Tiers }, read);
        Assert.Equal(expected.Tiers.ToArray(), read.Tiers.ToArray());
    }
}
