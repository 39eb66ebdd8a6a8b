using NodaTime;
using RackController.Model;

namespace RackController.RackFile.Tests.Mappings;

public sealed class UpkeepTests
{
    [Fact]
    public void WithoutItNothingIsSaid() => Assert.Empty(Expect.Site(RackFiles.Small).Racks[0].Upkeep);

    [Fact]
    public void EverythingThatIsWrittenIsRead()
    {
        var rules = Expect.Site(OfSite("""
              screen: 50 floods or 14 d
              flush: never
              reservoir: 10 d
              floats: 30 d
              standpipes: 100 floods
              pump: 1000 floods or 180 d or 200 h of pump
            """)).Racks[0].Upkeep.AsEnumerable();

        Assert.Equal(
            [
                new(UpkeepWork.Screen, new(50, 14, null)),
                new(UpkeepWork.Flush, null),
                new(UpkeepWork.Reservoir, new(null, 10, null)),
                new(UpkeepWork.Floats, new(null, 30, null)),
                new(UpkeepWork.Standpipes, new(100, null, null)),
                new(UpkeepWork.Pump, new(1000, 180, Duration.FromHours(200))),
            ],
            rules);
    }

    [Fact]
    public void WhatARackSaysOfItselfGoesBeforeWhatTheSiteSaysOfAll()
    {
        var text = OfSite("  { screen: 50 floods, flush: 90 d }")
            .Replace("    drip-tray:", "    upkeep: { screen: never, pump: 365 d }\n    drip-tray:", StringComparison.Ordinal);

        Assert.Equal(
            [new(UpkeepWork.Screen, null), new(UpkeepWork.Pump, new(null, 365, null)), new(UpkeepWork.Flush, new(null, 90, null))],
            Expect.Site(text).Racks[0].Upkeep.AsEnumerable());
    }

    [Theory]
    [InlineData("screen: 50", "`screen` is `50`, without a unit", "a number of `floods`, `d` or `h of pump`")]
    [InlineData("screen: floods", "not a whole number of anything", "such as `50 floods or 14 d`")]
    [InlineData("screen: 2.5 d", "with the unknown unit `.5 d`", "write a number of")]
    [InlineData("screen: 14 days", "with the unknown unit `days`", "`never`")]
    [InlineData("screen: 200 h", "with the unknown unit `h`", "`h of pump`")]
    [InlineData("screen: 0 floods", "outside 1 to 100000 floods", "less often is `never`")]
    [InlineData("screen: 3651 d", "outside 1 to 3650 d", "less often is `never`")]
    [InlineData("screen: 50 floods or 60 floods", "which says `60 floods` twice", "write each count once")]
    [InlineData("screen: 50 floods or never", "not a whole number of anything", "write a number of")]
    [InlineData("sieve: 14 d", "upkeep has no key `sieve`", "screen")]
    public void WhatCannotBeMeantIsRefusedInOneLine(string written, string what, string advice) =>
        Expect.Complaint(OfSite($"  {written}"), what, advice);

    private static string OfSite(string upkeep) => $"{RackFiles.Small}\nupkeep:\n{upkeep}\n";
}
