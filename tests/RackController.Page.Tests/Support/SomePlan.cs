using NodaTime;
using RackController.Growing;
using RackController.PlanFiles;
using RackController.Testing;

namespace RackController.Page.Tests;

/// <summary>A plan of one batch for the four-tier demo rack, which nobody had to search for.</summary>
internal static class SomePlan
{
    /// <summary>It as JSON.</summary>
    /// <param name="today">Its first day.</param>
    /// <param name="lot">The lot code of its batch.</param>
    public static string Json(LocalDate today, string lot)
    {
        var folder = Directory.CreateTempSubdirectory("rackcontroller-plan-");
        try
        {
            foreach (var shipped in (string[])["crops.yaml", "demo-four-tier.yaml"])
            {
                File.Copy(ShippedFiles.PathTo($"config/{shipped}"), Path.Combine(folder.FullName, shipped));
            }

            var orders = Path.Combine(folder.FullName, "orders.yaml");
            File.WriteAllText(
                orders,
                "racks: demo-four-tier.yaml\nwork-days: [mon, tue, wed, thu, fri, sat, sun]\nblackout: { trays: 20 }\nmargin: 0 %\n"
                + $"dated: [{{ customer: the inn, crop: pea, trays: 2, on: {today.PlusDays(21):uuuu-MM-dd} }}]\n");
            var season = OrdersReader.Read(orders, today, _ => today).Season!;
            var request = season.Request;
            var batch = Batching.Of(request.Orders, [], request.MarginPercent).Single();
            var timing = BatchTimings.Of(batch, request.Work, today)[0];
            var plan = new Plan
            {
                Request = request,
                Batches = [new PlannedBatch(batch, lot, timing, [new Stay(0, batch.Trays, timing.Lit, timing.Harvest)])],
                Shortfalls = [],
                Remedy = [],
                Lamps = [],
                Quality = new PlanQuality(6, 6, 0, true),
            };
            var days = Enumerable.Repeat(
                new DayUse([new RackDayUse(3, 1, 50)], 4, 2, [2.5]), Period.DaysBetween(request.Today, request.Until) + 1);
            return PlanJson.Of(plan, Forecast.Of(plan, season.Site, season.Forecast, [30], [.. days]));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
