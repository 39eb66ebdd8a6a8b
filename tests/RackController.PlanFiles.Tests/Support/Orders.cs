using NodaTime;
using RackController.Growing;

namespace RackController.PlanFiles.Tests;

/// <summary>An orders file of a test, beside the crops and racks that ship.</summary>
internal static class Orders
{
    public static readonly LocalDate Today = new(2026, 3, 2);

    private const string OneOrder = "dated: [{ customer: inn, crop: pea, weight: 500 g, on: 2026-03-17 }]";

    private const string Head = """
        racks: demo-four-tier.yaml
        work-days: [mon, tue, wed, thu, fri]
        blackout: { trays: 20 }
        """;

    /// <summary>Reads the head that every file has, and what a test puts below it.</summary>
    public static OrdersReading Read(string body, string head = Head, GrowingBook? book = null)
    {
        using var folder = new Folder();
        foreach (var shipped in (string[])["crops.yaml", "demo-four-tier.yaml"])
        {
            File.Copy(Testing.ShippedFiles.PathTo($"config/{shipped}"), Path.Combine(folder.Path, shipped));
        }

        var path = Path.Combine(folder.Path, "orders.yaml");
        File.WriteAllText(path, $"{head}\n{body}\n");
        return OrdersReader.Read(path, null, _ => Today, book);
    }

    /// <summary>What is wrong with a file, each as <c>line:column: what: what to do</c>.</summary>
    public static IReadOnlyList<string> Complaints(string body, string head = Head) =>
        [.. Read(body, head).Complaints.Select(one => $"{one.Line}:{one.Column}: {one.What}: {one.WhatToDo}")];

    /// <summary>A plan of one radish batch that nobody had to search for, so that these tests need no solver.</summary>
    public static Plan Plan(string customer = "Lantern cafe")
    {
        var request = Read(OneOrder).Season!.Request;
        var order = request.Orders[0] with { Customer = customer };
        request = request with { Orders = [order] };
        var batch = Batching.Of(request.Orders, [], request.MarginPercent).Single();
        var timing = BatchTimings.Of(batch, request.Work, request.Today)[0];
        return new Plan
        {
            Request = request,
            Batches = [new PlannedBatch(batch, "PEA-1", timing, [new Stay(0, batch.Trays, timing.Lit, timing.Harvest)])],
            Shortfalls = [new Shortfall(order with { Due = order.Due.PlusDays(1) }, "tiers are full", "1 more tier")],
            Remedy = [new ExtraRoom(false, 1, Today, Today.PlusDays(6), "north/tier 1")],
            Lamps = [new LampSetting(0, timing.Lit, timing.Harvest, 14)],
            Quality = new PlanQuality(6, 6, 0, true),
        };
    }

    /// <summary>What a plan takes when every day takes the same: 3 L, 4 kWh of lamps, 2 kWh of all else, 2.5 A.</summary>
    public static Forecast Forecast(Plan plan, Prices? prices = null)
    {
        var days = NodaTime.Period.DaysBetween(plan.Request.Today, plan.Request.Until) + 1;
        var use = new DayUse([new RackDayUse(3, 1, 50)], 4, 2, [2.5]);
        return Growing.Forecast.Of(
            plan, Read(OneOrder).Season!.Site, ForecastTerms.Usual with { Prices = prices }, [30], [.. Enumerable.Repeat(use, days)]);
    }

    private sealed class Folder : IDisposable
    {
        public string Path { get; } = Directory.CreateTempSubdirectory("rackcontroller-orders-").FullName;

        public void Dispose() => Directory.Delete(Path, recursive: true);
    }
}
