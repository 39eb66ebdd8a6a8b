using NodaTime;
using RackController.Model;
using RackController.Plant;
using RackController.Testing;

namespace RackController.Bench.Tests.Advising;

public sealed class MediaWordsTests
{
    private static readonly Site Rack = Sites.OneRack().WithRack(rack => rack with
    {
        Tiers = [.. rack.Tiers.Select(tier => tier with { PpfdUmolPerM2S = 200 * tier.Number })],
    });

    [Fact]
    public void WhatTiersGiveOffIsWhatTheSimulatedRackTranspires()
    {
        var run = Rehearsal.UpTo(Rack, new LocalDate(2026, 3, 2).AtStartOfDayInZone(Rack.Zone).ToInstant());
        var beforeL = run.Plant.Racks[0].TranspiredL;
        var end = MonotonicTime.Zero + Duration.FromDays(3);
        while (run.Step(end))
        {
            Assert.True(run.Now.Elapsed <= Duration.FromDays(3));
        }

        var dailyL = run.Plant.Racks[0].TranspiredL - beforeL;
        var told = TierThirst.Of(Rack)[0].Sum(one => one.LitH * one.LitLPerH + (24 - one.LitH) * one.DarkLPerH);
        Assert.InRange(told, 0.98 * dailyL, 1.02 * dailyL);
    }

    [Fact]
    public void TheTierWithTheMostLightDriesFirst() =>
        Assert.StartsWith("by tier 2, which dries first: ", Lines(0.3, 30)[0], StringComparison.Ordinal);

    [Theory]
    [InlineData(0.30, 30, "enough")]
    [InlineData(0.02, 30, "too dry: flood more often, or spread the floods over the lit hours")]
    public void TheScheduleIsJudgedByHowDryItLetsMediaBecome(double depletedShare, int wetMin, string verdict) =>
        Assert.Contains(Lines(depletedShare, wetMin), line => line.StartsWith("as scheduled, 3 a day", StringComparison.Ordinal)
            && line.EndsWith(verdict, StringComparison.Ordinal));

    [Theory]
    [InlineData(60, "within the 60 min that are allowed")]
    [InlineData(15, "more than the 15 min that are allowed: shorten fill or soak by ")]
    public void AFloodThatKeepsRootsWetForTooLongIsToldSo(int wetMin, string verdict) =>
        Assert.Contains(verdict, Lines(0.3, wetMin)[^1], StringComparison.Ordinal);

    [Fact]
    public void NothingIsSaidWhereNothingStands() => Assert.Empty(Lines(0.3, 30, Rack.WithRack(rack => rack with
    {
        Tiers = [.. rack.Tiers.Select(tier => tier with
        {
            Tray = tier.Tray with { Contents = tier.Tray.Contents with { InsertTrays = 0 } },
        })],
    })));

    private static List<string> Lines(double depletedShare, int wetMin, Site? site = null)
    {
        var rack = (site ?? Rack).Racks[0];
        return
        [
            .. MediaWords.Lines(
                rack, FloodSurvey.Of(site ?? Rack, rack), TierThirst.Of(site ?? Rack)[0], depletedShare, Duration.FromMinutes(wetMin)),
        ];
    }
}
