using System.Text.Json.Nodes;
using NodaTime;
using NodaTime.Text;
using RackController.Growing;

namespace RackController.PlanFiles;

/// <summary>The forecast of a plan as a part of its JSON.</summary>
internal static class ForecastJson
{
    /// <summary>Makes it.</summary>
    /// <param name="forecast">The forecast.</param>
    public static JsonObject Of(Forecast forecast) => new()
    {
        ["currency"] = forecast.Terms.Prices?.Currency,
        ["days"] = new JsonArray([.. forecast.Days.Select(Day)]),
        ["racks"] = new JsonArray([.. forecast.Racks.Select(Rack)]),
        ["circuits"] = new JsonArray([.. forecast.Circuits.Select(Circuit)]),
        ["reservoirs"] = new JsonArray([.. forecast.Care.Select(one => Care(one.Day, one.Rack))]),
    };

    private static JsonObject Day(ForecastDay day) => new()
    {
        ["date"] = Iso(day.Date),
        ["waterUsedL"] = Rounded(day.WaterUsedL),
        ["tapL"] = Rounded(day.TapL),
        ["saltsG"] = Rounded(day.SaltsG),
        ["lightsKWh"] = Rounded(day.LightsKWh),
        ["energyKWh"] = Rounded(day.EnergyKWh),
        ["cost"] = day.Cost is { } cost ? Rounded(cost) : null,
        ["harvest"] = new JsonArray([.. day.Harvest.Select(Harvest)]),
    };

    private static JsonObject Harvest(Harvested one) => new()
    {
        ["crop"] = one.Crop,
        ["cutTrays"] = one.CutTrays,
        ["cutG"] = Rounded(one.CutG),
        ["liveTrays"] = one.LiveTrays,
    };

    private static JsonObject Rack(RackForecast rack) => new()
    {
        ["rack"] = rack.Name,
        ["lastsDays"] = rack.LastsDays,
        ["nextTopUp"] = Iso(rack.NextTopUp),
        ["nextChange"] = Iso(rack.NextChange),
        ["nextFlush"] = Iso(rack.NextFlush),
        ["floor"] = Floor(rack.Floor),
    };

    private static JsonObject Floor(FloorLoad floor) => new()
    {
        ["emptyKg"] = Rounded(floor.EmptyKg),
        ["loadedKg"] = Rounded(floor.LoadedKg),
        ["emptyKPa"] = Rounded(floor.EmptyKPa),
        ["loadedKPa"] = Rounded(floor.LoadedKPa),
        ["perWheelKg"] = Rounded(floor.PerWheelKg),
        ["isGuessed"] = floor.IsGuessed,
    };

    private static JsonObject Circuit(CircuitForecast circuit) => new()
    {
        ["circuit"] = circuit.Name,
        ["limitA"] = Rounded(circuit.LimitA),
        ["peakA"] = Rounded(circuit.PeakA),
        ["on"] = Iso(circuit.On),
    };

    private static JsonObject Care(ReservoirDay day, string rack) => new()
    {
        ["date"] = Iso(day.Date),
        ["rack"] = rack,
        ["do"] = CareWords.Of(day.Care),
    };

    private static double Rounded(double value) => Math.Round(value, 3);

    private static string Iso(LocalDate day) => LocalDatePattern.Iso.Format(day);

    private static string? Iso(LocalDate? day) => day is { } known ? Iso(known) : null;
}
