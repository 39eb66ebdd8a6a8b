using NodaTime;
using RackController.Model;

namespace RackController.RackFile.Tests;

public sealed class ForBatchesSectionTests
{
    private static readonly BatchSchedule asked = new(
        2, [new TierHours(1, Duration.FromHours(14)), new TierHours(2, Duration.FromMinutes(825))]);

    public static TheoryData<string> DemoFiles() => ["demo-four-tier.yaml", "demo-three-racks.yaml", "demo-two-tier.yaml"];

    [Theory]
    [MemberData(nameof(DemoFiles))]
    public void TheRackRunsByItAndTheScheduleStaysAsWritten(string name)
    {
        var text = File.ReadAllText(Files.Config(name));
        var before = Expect.Site(text).Racks[0];

        var changed = Assert.IsType<string>(ForBatchesSection.Put(text, before, asked));

        var after = Expect.Site(changed).Racks[0];
        Assert.Equal(Duration.FromHours(14), after.Schedule.Lights[0]!.Length);
        Assert.Equal(before.Schedule.Lights[0]!.Start, after.Schedule.Lights[0]!.Start);
        Assert.Equal(before.Schedule.Lights.Skip(2), after.Schedule.Lights.Skip(2));
        Assert.Equal(2, after.Schedule.Starts().Length);
        Assert.Equal(before.Schedule.Starts().AsEnumerable(), after.OwnSchedule.Starts());
        Assert.Equal(before.Schedule.Lights.AsEnumerable(), after.OwnSchedule.Lights);
    }

    [Fact]
    public void WhatIsAskedForNoMoreIsTakenOut()
    {
        var text = RackFiles.Small + "\n";
        var once = Assert.IsType<string>(ForBatchesSection.Put(text, Expect.Site(text).Racks[0], asked));
        Assert.Contains(
            """
                for-batches:   # by the growing book, of what stands on the tiers
                  floods: 2
                  tiers:
                    - { tier: 1, for: 14 h }
                    - { tier: 2, for: 825 min }
            """.ReplaceLineEndings("\n"), once, StringComparison.Ordinal);

        var none = Assert.IsType<string>(ForBatchesSection.Put(once, Expect.Site(once).Racks[0], BatchSchedule.None));
        Assert.DoesNotContain("for-batches", none, StringComparison.Ordinal);
        Assert.Null(Expect.Site(none).Racks[0].ScheduleAsWritten);
    }

    [Fact]
    public void ARackWithoutFloodsForItsBatchesRests()
    {
        var changed = ForBatchesSection.Put(RackFiles.Small, Expect.Site(RackFiles.Small).Racks[0], new BatchSchedule(0, []));

        Assert.IsType<NoFloods>(Expect.Site(changed!).Racks[0].Schedule.Floods.Times);
    }

    [Fact]
    public void WhatCannotBeDoneIsNotPutIn() => Assert.Null(ForBatchesSection.Put(
        RackFiles.Small, Expect.Site(RackFiles.Small).Racks[0], new BatchSchedule(null, [new TierHours(9, Duration.FromHours(14))])));

    [Theory]
    [InlineData("tier: 2", "tier: 3", "light is asked for on tier 3, and the rack has 2")]
    [InlineData("tier: 2", "tier: 1", "tier 1 stands here a second time")]
    [InlineData("floods: 3", "floods: 97", "a whole number from 0 to 96")]
    [InlineData("floods: 3", "floods: 60", "cannot end before the next begins")]
    [InlineData("for: 14 h", "for: 25 h", "`for` is `25 h`")]
    public void NonsenseIsRefusedAtItsLine(string old, string replacement, string complaint)
    {
        const string sound = """
                for-batches:
                  floods: 3
                  tiers:
                    - { tier: 1, for: 14 h }
                    - { tier: 2, for: 15 h }

            """;
        Assert.Equal(3, Expect.Site(RackFiles.SmallWith("io: simulated", sound + "io: simulated")).Racks[0].ForBatches.FloodsPerDay);
        Expect.Among(
            RackFiles.SmallWith("io: simulated", sound.Replace(old, replacement, StringComparison.Ordinal) + "io: simulated"), complaint);
    }

    [Theory]
    [InlineData("batches: { schedule: follow, moves: by-date }", true, true)]
    [InlineData("batches: { moves: by-date }", false, true)]
    [InlineData("batches: {}", false, false)]
    [InlineData("", false, false)]
    public void NothingHappensByItselfUnlessItIsWritten(string written, bool follows, bool byDate) => Assert.Equal(
        new BatchPolicy(follows, byDate), Expect.Site(RackFiles.SmallWith("io: simulated", $"io: simulated\n{written}")).Batches);
}
