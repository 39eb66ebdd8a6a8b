using System.Collections.Immutable;
using NodaTime;
using NodaTime.Text;
using RackController.Growing;

namespace RackController.PlanFiles;

/// <summary>The forecast of a plan as a part of its JSON.</summary>
internal static class ForecastJson
{
    /// <summary>Makes it.</summary>
    /// <param name="forecast">The forecast.</param>
    public static JsonForecast Of(Forecast forecast) => new(
        forecast.Terms.Prices?.Currency,
        [
            .. forecast.Days.Select(day => new JsonDay(
                Iso(day.Date), Rounded(day.WaterUsedL), Rounded(day.TapL), Rounded(day.SaltsG), Rounded(day.LightsKWh),
                Rounded(day.EnergyKWh), day.Cost is { } cost ? Rounded(cost) : null,
                [.. day.Harvest.Select(one => new JsonHarvest(one.Crop, one.CutTrays, Rounded(one.CutG), one.LiveTrays))])),
        ],
        [
            .. forecast.Racks.Select(rack => new JsonReservoir(
                rack.Name, rack.LastsDays, Iso(rack.NextTopUp), Iso(rack.NextChange), Iso(rack.NextFlush),
                new JsonFloor(
                    Rounded(rack.Floor.EmptyKg), Rounded(rack.Floor.LoadedKg), Rounded(rack.Floor.EmptyKPa),
                    Rounded(rack.Floor.LoadedKPa), Rounded(rack.Floor.PerWheelKg), rack.Floor.IsGuessed))),
        ],
        [
            .. forecast.Circuits.Select(circuit =>
                new JsonCircuit(circuit.Name, Rounded(circuit.LimitA), Rounded(circuit.PeakA), Iso(circuit.On))),
        ],
        [.. forecast.Care.Select(one => new JsonCare(Iso(one.Day.Date), one.Rack, CareWords.Of(one.Day.Care)))]);

    private static double Rounded(double value) => Math.Round(value, 3);

    private static string Iso(LocalDate day) => LocalDatePattern.Iso.Format(day);

    private static string? Iso(LocalDate? day) => day is { } known ? Iso(known) : null;
}

internal sealed record JsonForecast(
    string? Currency, ImmutableArray<JsonDay> Days, ImmutableArray<JsonReservoir> Racks, ImmutableArray<JsonCircuit> Circuits,
    ImmutableArray<JsonCare> Reservoirs);

internal sealed record JsonDay(
    string Date, double WaterUsedL, double TapL, double SaltsG, double LightsKWh, double EnergyKWh, double? Cost,
    ImmutableArray<JsonHarvest> Harvest);

internal sealed record JsonHarvest(string Crop, int CutTrays, double CutG, int LiveTrays);

internal sealed record JsonReservoir(
    string Rack, int? LastsDays, string? NextTopUp, string? NextChange, string? NextFlush, JsonFloor Floor);

internal sealed record JsonFloor(
    double EmptyKg, double LoadedKg, double EmptyKPa, double LoadedKPa, double PerWheelKg, bool IsGuessed);

internal sealed record JsonCircuit(string Circuit, double LimitA, double PeakA, string On);

internal sealed record JsonCare(string Date, string Rack, string Do);
