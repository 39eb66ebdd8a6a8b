using System.Collections.Immutable;
using CsCheck;
using NodaTime;
using RackController.Model;

namespace RackController.Growing.Tests;

public sealed class ReservoirDaysTests
{
    private const double LowestL = 30;

    private static readonly LocalDate Monday = new(2026, 3, 2);
    private static readonly Reservoir Tank = new(CapacityL: 120, DepthMm: 400, FloorHeightMm: 0, NormalVolumeL: 100, PumpIntakeMm: 30);
    private static readonly ForecastTerms Rarely = ForecastTerms.Usual with { ChangeEveryDays = 365, FlushEveryDays = 365 };

    private static readonly IsoDayOfWeek[] Weekdays =
        [IsoDayOfWeek.Monday, IsoDayOfWeek.Tuesday, IsoDayOfWeek.Wednesday, IsoDayOfWeek.Thursday, IsoDayOfWeek.Friday];

    // 100 L, 10 L a day, a flood lends 40: 100 - 40, 90 - 40, 80 - 40, 70 - 40 are not below 30, and 60 - 40 is.
    [Fact]
    public void AReservoirLastsUntilAFloodWouldDrawItBelowItsLowest() =>
        Assert.Equal(4, ReservoirDays.LastsDays(Tank, LowestL, Alike(14, 10, 40)));

    [Fact]
    public void AReservoirThatOutlastsThePlanHasNoLastDay() => Assert.Null(ReservoirDays.LastsDays(Tank, LowestL, Alike(14, 1, 40)));

    // On Friday morning 60 L are left, too little for that day and the weekend; on Thursday 70 L still carried a flood.
    [Fact]
    public void ItIsToppedUpOnTheLastWorkDayOnWhichThatIsInTime()
    {
        var days = Of(Rarely, Alike(7, 10, 40), Weekdays);
        Assert.Equal(Monday.PlusDays(4), Assert.Single(days, day => day.Care == ReservoirCare.TopUp).Date);
    }

    [Fact]
    public void WhatWouldRunDryOnAWeekendIsToppedUpBeforeIt()
    {
        var days = Of(Rarely, Alike(7, 8, 40), Weekdays);
        Assert.Equal(IsoDayOfWeek.Friday, Assert.Single(days, day => day.Care == ReservoirCare.TopUp).Date.DayOfWeek);
    }

    // Fourteen days after Monday 2 March is Monday 16 March; nobody works on Mondays here, so it is done on the Friday before.
    [Fact]
    public void ASolutionIsChangedOnTheLastWorkDayThatIsNotTooLate()
    {
        var days = Of(ForecastTerms.Usual, Alike(20, 1, 40), IsoDayOfWeek.Tuesday, IsoDayOfWeek.Friday);
        Assert.Equal(new LocalDate(2026, 3, 13), Assert.Single(days, day => day.Care != ReservoirCare.None).Date);
    }

    [Fact]
    public void AFlushTakesOneFillingMoreThanAChange()
    {
        var terms = ForecastTerms.Usual with { FlushEveryDays = 14 };
        var flush = Of(terms, Alike(20, 1, 40), Weekdays).First(day => day.TapL > 0);
        var change = Of(ForecastTerms.Usual, Alike(20, 1, 40), Weekdays).First(day => day.TapL > 0);
        Assert.Equal((ReservoirCare.Flush, ReservoirCare.Change), (flush.Care, change.Care));
        Assert.Equal((200, 100), (flush.TapL, change.TapL));
    }

    // 100 L from 0.3 to 1 mS/cm, at 0.64 g/L for each mS/cm: 44.8 g.
    [Fact]
    public void AChangeTakesTheSaltsFromTheTapsConductivityToTheTarget() => Assert.Equal(
        44.8, Of(ForecastTerms.Usual, Alike(20, 1, 40), Weekdays).First(day => day.Care == ReservoirCare.Change).SaltsG, 9);

    // The last flush counts as done on the first day, so that it is a change and no more.
    [Fact]
    public void ASolutionThatIsLongDueIsChangedOnTheFirstMorning() => Assert.Equal(
        ReservoirCare.Change,
        Of(ForecastTerms.Usual with { Changed = Monday.PlusDays(-30) }, Alike(7, 1, 40), Weekdays)[0].Care);

    // Whatever people do, no water is made: what came from the tap is what was used, what is left over, and what was thrown away.
    [Fact]
    public void WaterFromTheTapAddsUp() => Gen.Select(Gen.Double[0.5, 12], Gen.Int[1, 60]).Sample((dailyL, days) =>
    {
        var all = Of(Rarely, Alike(days, dailyL, 20), Weekdays);
        Assert.Equal(100 + all.Sum(day => day.TapL) - days * dailyL, all[^1].EveningL, 6);
    });

    // Crops take no salts here, so that what vapour leaves behind stays, and the first top-up dilutes it to what the tap brought.
    [Fact]
    public void SaltsThatNobodyTakesAddUp() => Gen.Select(Gen.Double[0.5, 12], Gen.Int[1, 60]).Sample((dailyL, days) =>
    {
        var all = Of(Rarely, Alike(days, dailyL, 20), Weekdays);
        var saltsG = Conductivity.GPerLPerMsPerCm * (100 * 1 + all.Sum(day => day.TapL) * 0.3) + all.Sum(day => day.SaltsG);
        Assert.Equal(saltsG, all[^1].EveningL * all[^1].EveningMsPerCm * Conductivity.GPerLPerMsPerCm, 6);
    });

    private static ImmutableArray<RackDayUse> Alike(int days, double waterL, double lentL) =>
        [.. Enumerable.Repeat(new RackDayUse(waterL, 0, lentL), days)];

    private static ImmutableArray<ReservoirDay> Of(
        ForecastTerms terms, ImmutableArray<RackDayUse> uses, params IsoDayOfWeek[] work) =>
        ReservoirDays.Of(Tank, LowestL, terms, SomeRequest.On(Monday, work), uses);
}
