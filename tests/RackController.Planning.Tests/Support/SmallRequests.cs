using System.Collections.Immutable;
using CsCheck;
using NodaTime;
using RackController.Growing;

namespace RackController.Planning.Tests;

/// <summary>Random requests that a person could check by hand: one or two kinds of tier, a few crops, a few orders.</summary>
internal static class SmallRequests
{
    public static readonly LocalDate Today = new(2026, 3, 2);

    private static readonly IsoDayOfWeek[] week = [.. Enum.GetValues<IsoDayOfWeek>().Where(day => day != IsoDayOfWeek.None)];

    private static readonly Gen<TierKind> kinds =
        from places in Gen.Int[1, 4]
        from ppfd in Gen.Int[0, 2].Select(lamp => 120.0 + (60 * lamp))
        from floods in Gen.Int[1, 3]
        select new TierKind(places, ppfd, floods, "coir");

    private static Gen<WholeBounds> Days(int least, int most, int spread) =>
        from days in Gen.Int[least, most]
        from more in Gen.Int[0, spread]
        select new WholeBounds(days, days + more);

    private static readonly Gen<LitStage> stages =
        from days in Days(2, 4, 2)
        from molPerM2D in Gen.Int[5, 12]
        from width in Gen.Int[1, 6]
        from floods in Days(1, 2, 2)
        select new LitStage
        {
            Name = "light",
            Days = days,
            DailyLightMolPerM2D = new Bounds(molPerM2D, molPerM2D + width),
            PpfdUmolPerM2S = new Bounds(100, 250),
            PhotoperiodH = new Bounds(10, 18),
            Floods = [new MediaFloods(null, floods)],
        };

    private static Gen<Crop> Crops(string name) =>
        from dark in Days(0, 2, 1)
        from stage in stages.Array[1, 2]
        from isSoaked in Gen.Bool
        from keepsDays in Gen.Int[0, 2]
        select new Crop
        {
            Name = name,
            Kind = CropKind.Microgreen,
            Soak = Duration.FromHours(isSoaked ? 8 : 0),
            DarkDays = dark,
            LitStages = [.. stage],
            SeedGPerTray = 20,
            YieldGPerTray = 100,
            KeepsDays = keepsDays,
            AirC = new Bounds(18, 24),
        };

    private static Gen<Order> Orders(ImmutableArray<Crop> crops) =>
        from crop in Gen.Int[0, crops.Length - 1]
        from day in Gen.Int[3, 14]
        from trays in Gen.Int[1, 3]
        from isLive in Gen.Bool
        from line in Gen.Int[1, 99]
        select new Order("inn", crops[crop], isLive ? new LiveTrays(trays) : new CutWeight(trays * 90), Today.PlusDays(day), line);

    /// <summary>Requests of at most so many orders and tiers.</summary>
    public static Gen<PlanRequest> Of(int mostOrders, int mostTiers) =>
        from tiers in kinds.Array[1, 2].SelectMany(some => Gen.Int[0, some.Length - 1].Select(pick => some[pick]).Array[1, mostTiers])
        from crops in Gen.Select(Crops("radish"), Crops("pea"), Crops("kale"))
        from orders in Orders([crops.Item1, crops.Item2, crops.Item3]).Array[1, mostOrders]
        from darkTrays in Gen.Int[2, 8]
        from restDay in Gen.Int[0, 7]
        select new PlanRequest
        {
            Site = "cellar",
            Zone = DateTimeZone.Utc,
            Space = new GrowSpace([.. tiers.Select((kind, index) => new GrowTier("north", index + 1, kind, 16))], darkTrays),
            Today = Today,
            Until = Today.PlusDays(14),
            Work = new WorkDays([.. week.Where(day => (int)day != restDay)]),
            MarginPercent = 0,
            Orders = [.. orders.Distinct()],
            Growing = [],
        };
}
