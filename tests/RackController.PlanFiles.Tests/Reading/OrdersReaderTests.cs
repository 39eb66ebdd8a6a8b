using CsCheck;
using NodaTime;
using RackController.Testing;

namespace RackController.PlanFiles.Tests;

public sealed class OrdersReaderTests
{
    private const string OneOrder = "dated: [{ customer: inn, crop: radish, weight: 300 g, on: 2026-03-20 }]";

    [Fact]
    public void TheDemoIsRight()
    {
        var read = OrdersReader.Read(ShippedFiles.PathTo("config/demo-orders.yaml"), null, _ => Orders.Today);
        Assert.Empty(read.Complaints);
        Assert.NotNull(read.Season);
    }

    [Fact]
    public void WhatTheFileDoesNotSayIsTheOrdinary()
    {
        var request = Orders.Read(OneOrder).Season!.Request;
        Assert.Equal(Orders.Today, request.Today);
        Assert.Equal(Orders.Today.PlusDays(83), request.Until);
        Assert.Equal(10, request.MarginPercent);
    }

    [Fact]
    public void AStandingOrderIsADeliveryOnEachOfItsWeekdays()
    {
        var request = Orders.Read(
            "standing: [{ customer: inn, crop: radish, weight: 300 g, on: [tue, fri], from: 2026-03-10, until: 2026-03-20 }]")
            .Season!.Request;
        Assert.Equal(
            [new LocalDate(2026, 3, 10), new(2026, 3, 13), new(2026, 3, 17), new(2026, 3, 20)], request.Orders.Select(order => order.Due));
    }

    [Fact]
    public void TheGrowersOwnValueOverridesOneAndLeavesTheOthers()
    {
        var shipped = Orders.Read(OneOrder).Season!.Request.Orders[0].Crop;
        var own = Orders.Read($"{OneOrder}\nown-crops: [{{ name: radish, yield: 320 g }}]").Season!.Request.Orders[0].Crop;
        Assert.Equal(320, own.YieldGPerTray);
        Assert.Equal(shipped with { YieldGPerTray = 320 }, own with { LitStages = shipped.LitStages });
    }

    [Theory]
    [InlineData("dated: [{ customer: inn, crop: radich, weight: 300 g, on: 2026-03-20 }]",
        "there is no crop `radich`: did you mean `radish`?")]
    [InlineData("dated: [{ customer: inn, crop: radish, on: 2026-03-20 }]", "an order without an amount: write `trays:`")]
    [InlineData("dated: [{ customer: inn, crop: radish, trays: 1, weight: 3 g, on: 2026-03-20 }]", "an order of both trays and a weight")]
    [InlineData("dated: [{ customer: inn, crop: tomato, weight: 300 g, on: 2026-03-20 }]", "tomato is sold by the tray only")]
    [InlineData("dated: [{ customer: inn, crop: radish, weight: 300 g, on: 2026-02-30 }]",
        "`on` is `2026-02-30`, not a date of the calendar")]
    [InlineData("dated: [{ customer: inn, crop: radish, weight: 300, on: 2026-03-20 }]", "`weight` is `300`, without a unit")]
    [InlineData("margin: 10 %", "nothing is ordered")]
    [InlineData(OneOrder + "\nown-crops: [{ name: moss, yield: 9 g }]", "the crop `moss` lacks `kind`, `soak`, `dark`")]
    [InlineData(OneOrder + "\nown-crops: [{ name: radish, dark: 3 to 2 d }]", "`dark` is `3 to 2 d`, from more to less")]
    [InlineData(OneOrder + "\nown-crops: [{ name: radish, dark: 2 to 3 }]", "`dark` is `2 to 3`, without a unit")]
    [InlineData(OneOrder + "\nown-crops: [{ name: radish, air: 18 to 24 W }]", "`air` is `18 to 24 W`, which is a power")]
    [InlineData(OneOrder + "\ngrowing: [{ crop: pea, trays: 4, sown: 2026-01-05 }]",
        "pea sown on 2026-01-05 has no day left to be harvested on")]
    [InlineData(OneOrder + "\ngrowing: [{ crop: pea, trays: 4, sown: 2026-02-27, tier: north/teir 2 }]", "there is no tier `north/teir 2`")]
    [InlineData(OneOrder + "\ngrowing: [{ crop: pea, trays: 9, sown: 2026-02-25, lit: 2026-03-01, tier: north/tier 2 }]",
        "9 trays on `north/tier 2`, which holds 4: say where the others stand")]
    [InlineData(OneOrder + "\ngrowing: [{ crop: pea, trays: 3, sown: 2026-02-25, lit: 2026-03-01 }]",
        "trays in the light without a tier: write on which `tier:` they stand")]
    [InlineData(OneOrder + "\ngrowing: [{ crop: pea, trays: 3, sown: 2026-02-25, tier: north/tier 2 }]",
        "trays in the dark on a tier: write since when they are `lit:`")]
    [InlineData(OneOrder + "\ngrowing: [{ crop: pea, trays: 3, sown: 2026-03-03 }]",
        "`sown` is after the plan's first day, 2026-03-02")]
    [InlineData(OneOrder + "\ngrowing: [{ crop: pea, trays: 3, sown: 2026-02-27, lit: 2026-03-03, tier: north/tier 2 }]",
        "`lit` is after the plan's first day, 2026-03-02")]
    [InlineData(OneOrder + "\ngrowing: [{ crop: pea, trays: 3, sown: 2026-02-26, lit: 2026-02-20, tier: north/tier 2 }]",
        "`lit` is before `sown`")]
    [InlineData(OneOrder + "\nuntil: 2026-02-01", "the plan would go from 2026-03-02 until 2026-02-01")]
    [InlineData(OneOrder + "\ncrops: nowhere.yaml", "the crops file `nowhere.yaml` cannot be used")]
    public void AMistakeIsNamed(string body, string complaint) =>
        Assert.Contains(Orders.Complaints(body), one => one.Contains(complaint, StringComparison.Ordinal));

    // Four places on a tier: three trays and three more overflow it with the second line.
    [Fact]
    public void LinesThatShareATierAreCountedTogetherAndTheOneThatOverflowsItIsNamed() => Assert.StartsWith(
        "7:69: 6 trays on `north/tier 2`, which holds 4",
        Orders.Complaints(
            $"{OneOrder}\ngrowing:\n  - {{ crop: pea, trays: 3, sown: 2026-02-25, lit: 2026-03-01, tier: north/tier 2 }}\n"
            + "  - { crop: pea, trays: 3, sown: 2026-02-26, lit: 2026-03-01, tier: north/tier 2 }").Single(),
        StringComparison.Ordinal);

    [Theory]
    [InlineData("from: 2026-06-30")]
    [InlineData("until: 2026-02-20")]
    public void AStandingOrderOutsideThePlanIsWarnedOfAndLeftOut(string when)
    {
        var read = Orders.Read($"standing: [{{ customer: inn, crop: radish, weight: 300 g, on: [tue], {when} }}]");
        Assert.Empty(read.Season!.Request.Orders);
        Assert.Equal(
            "no delivery of this standing order is within the plan, which goes from 2026-03-02 until 2026-05-24",
            read.Complaints.Single().What);
    }

    [Fact]
    public void ADayThatIsNoWeekdayIsNamedByTheKeyOfTheFile() => Assert.Contains(
        ": `work-days` is `funday`",
        Orders.Complaints(OneOrder, "racks: demo-four-tier.yaml\nwork-days: [mon, funday]\nblackout: { trays: 20 }").Single(),
        StringComparison.Ordinal);

    [Fact]
    public void AMistakeHasItsPlace() => Assert.StartsWith(
        "5:11: ",
        Orders.Complaints("dated:\n  - crop: radich\n    customer: inn\n    weight: 300 g\n    on: 2026-03-20").Single(),
        StringComparison.Ordinal);

    [Fact]
    public void ARackFileInItsPlaceIsNamedAndNotPickedToPieces() => Assert.Equal(
        "this is no orders file",
        OrdersReader.Read(ShippedFiles.PathTo("config/demo-four-tier.yaml"), null, _ => Orders.Today).Complaints.Single().What);

    [Fact]
    public void OrdersInThePlaceOfARackFileAreNamedAndNotPickedToPieces() => Assert.Equal(
        "this is an orders file, and a rack file belongs here",
        RackFile.RackFileReader.Read(ShippedFiles.PathTo("config/demo-orders.yaml")).Complaints.Single().What);

    [Fact]
    public void AFileThatIsNotThereIsSaidToBeMissing()
    {
        var read = OrdersReader.Read("nowhere/orders.yaml", null, _ => Orders.Today);
        Assert.False(read.CouldBeRead);
        Assert.Equal("there is no such file", read.Complaints.Single().What);
    }

    // Whatever a person may have written, the answer is complaints: the demo with a piece of it cut out, doubled or replaced.
    [Fact]
    public void NoDamagedFileEndsInAnException()
    {
        var text = File.ReadAllText(ShippedFiles.PathTo("config/demo-orders.yaml"))
            .Replace("demo-three-racks", "demo-four-tier", StringComparison.Ordinal);
        string[] pieces = ["", "-", ": ", "[", "}", "9999999999999", "to", "2026-13-01", "\"", "\n  ", "&a", "é"];
        Gen.Select(Gen.Int[0, text.Length - 40], Gen.Int[0, 39], Gen.Int[0, pieces.Length - 1]).Sample((at, length, piece) =>
        {
            var read = Orders.Read("", text[..at] + pieces[piece] + text[(at + length)..]);
            Assert.True(read.Season is not null || read.Complaints.Length > 0);
        }, iter: 300, threads: 1);
    }
}
