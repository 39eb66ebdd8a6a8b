using System.Text.Json;
using RackController.Growing;

namespace RackController.PlanFiles.Tests;

public sealed class ForecastPagesTests
{
    private static readonly Plan Plan = Orders.Plan();
    private static readonly Prices Crowns = new("crowns, old", 0.28, 4, 9);

    [Fact]
    public void TheReportSaysWhatItTakesAndCautions()
    {
        var page = PlanHtml.Of(Plan, Orders.Forecast(Plan, Crowns));
        Assert.Contains("<h2>What it takes</h2>", page, StringComparison.Ordinal);
        Assert.Contains("<th scope=\"col\">crowns, old</th>", page, StringComparison.Ordinal);
        Assert.Contains("a structural engineer to say", page, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryDayHasItsBarAndItsRow()
    {
        var forecast = Orders.Forecast(Plan);
        var page = PlanHtml.Of(Plan, forecast);
        foreach (var day in forecast.Days)
        {
            Assert.Contains($"<title>{PlanDates.Day(day.Date)}: 3.0 L</title>", page, StringComparison.Ordinal);
            Assert.Contains($"<td>{PlanDates.Day(day.Date)}</td><td>3.0</td>", page, StringComparison.Ordinal);
        }
    }

    // RFC 4180: a line ends with CR LF, and a cell with a comma stands in quotes.
    [Fact]
    public void TheTableForProgramsHasALineForEachDay()
    {
        var forecast = Orders.Forecast(Plan, Crowns);
        var lines = ForecastCsv.Of(forecast with
        {
            Circuits = [forecast.Circuits[0] with { Name = "wall, \"west\"" }],
        }).Split("\r\n");
        Assert.Equal(forecast.Days.Length + 2, lines.Length);
        Assert.Contains(
            "\"cost (crowns, old)\",cut (trays),alive (trays),cut (g),\"wall, \"\"west\"\" peak (A)\",north reservoir (L),",
            lines[0], StringComparison.Ordinal);
        Assert.StartsWith("2026-03-02,3,0,0,4,6,1.68,0,0,0,2.5,", lines[1], StringComparison.Ordinal);
        Assert.Empty(lines[^1]);
    }

    [Fact]
    public void ProgramsFindDaysRacksCircuitsAndCare()
    {
        var forecast = Orders.Forecast(Plan, Crowns);
        using var json = JsonDocument.Parse(PlanJson.Of(Plan, forecast));
        var told = json.RootElement.GetProperty("forecast");
        Assert.Equal("crowns, old", told.GetProperty("currency").GetString());
        Assert.Equal(forecast.Days.Length, told.GetProperty("days").GetArrayLength());
        Assert.Equal(3, told.GetProperty("days")[0].GetProperty("waterUsedL").GetDouble());
        Assert.Equal(2.5, told.GetProperty("circuits")[0].GetProperty("peakA").GetDouble());
        Assert.Equal(forecast.Racks[0].LastsDays, told.GetProperty("racks")[0].GetProperty("lastsDays").GetInt32());
        Assert.Equal("change", told.GetProperty("reservoirs")[0].GetProperty("do").GetString());
    }

    [Fact]
    public void WithoutPricesThereIsNoColumnOfCosts()
    {
        var forecast = Orders.Forecast(Plan);
        using var json = JsonDocument.Parse(PlanJson.Of(Plan, forecast));
        Assert.Equal(JsonValueKind.Null, json.RootElement.GetProperty("forecast").GetProperty("currency").ValueKind);
        Assert.Contains("all, kWh</th><th scope=\"col\">harvest</th>", PlanHtml.Of(Plan, forecast), StringComparison.Ordinal);
    }
}
