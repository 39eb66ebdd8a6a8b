using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing;

/// <summary>A forecast in words, the same on every face of it.</summary>
public static class ForecastWords
{
    /// <summary>The caution that stands wherever loads on circuits and floors are shown.</summary>
    public const string Caution =
        "What a circuit and a floor may carry is for local codes, a licensed electrician and a structural engineer to say: a rack stands "
        + "on its wheels, and means over a floor are no proof.";

    /// <summary>What it comes to, each with a word in front.</summary>
    /// <param name="forecast">The forecast.</param>
    public static ImmutableArray<(string Label, string Words)> Facts(Forecast forecast)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        var heaviest = forecast.Racks.MaxBy(rack => rack.Floor.LoadedKPa)!;
        var fullest = forecast.Circuits.MaxBy(circuit => circuit.PeakA / circuit.LimitA)!;
        return
        [
            ("takes", Takes(forecast)),
            ("tanks", Tanks(forecast)),
            ("current", $"at most {fullest.PeakA:0.0} A on {fullest.Name}, {100 * fullest.PeakA / fullest.LimitA:0} % of the "
                + $"{fullest.LimitA:0.#} A that it may carry for hours"),
            ("floor", $"{heaviest.Name} loads it most: {Floor(heaviest.Floor)}"),
        ];
    }

    /// <summary>What a rack puts on the floor.</summary>
    /// <param name="floor">The load.</param>
    public static string Floor(FloorLoad floor)
    {
        ArgumentNullException.ThrowIfNull(floor);
        return $"{floor.EmptyKg:0} kg empty, {floor.LoadedKg:0} kg loaded, {floor.LoadedKPa:0.0} kN/m2 ({floor.LoadedPsf:0} psf), "
            + $"{floor.PerWheelKg:0} kg a wheel"
            + (floor.IsMoreThanADwelling ? $"; floors of dwellings are commonly built for {FloorLoad.DwellingKPa:0.0} kN/m2" : "")
            + (floor.IsGuessed ? "; guessed, write `stand:` into the rack file" : "");
    }

    /// <summary>How long a reservoir lasts when nobody comes.</summary>
    /// <param name="rack">The rack.</param>
    public static string Lasts(RackForecast rack)
    {
        ArgumentNullException.ThrowIfNull(rack);
        return rack.LastsDays is { } days ? days == 1 ? "1 day" : $"{days} days" : "longer than the plan";
    }

    /// <summary>A day, or that there is none.</summary>
    /// <param name="day">The day.</param>
    public static string Day(LocalDate? day) => day is { } known ? PlanDates.Day(known) : "-";

    /// <summary>What was assumed, in sentences.</summary>
    /// <param name="terms">The terms.</param>
    public static string Assumed(ForecastTerms terms)
    {
        ArgumentNullException.ThrowIfNull(terms);
        return "Every day was run on the simulated racks with the trays that stand there and the lamps as planned, in a room of 20 °C and "
            + "50 %, as if every tray were full-grown. A tier without trays gives off nothing but what dries from its wet floor, and its "
            + "rack is flooded all the same. "
            + $"Reservoirs are full and fresh on the first morning, mixed to {terms.TargetMsPerCm:0.##} mS/cm with water of "
            + $"{terms.TapMsPerCm:0.##} mS/cm, changed every {terms.ChangeEveryDays} days, flushed every {terms.FlushEveryDays}; "
            + $"a grown tray weighs {terms.TrayKg:0.#} kg. Write what you know better under `forecast:` in the orders file.";
    }

    private static string Takes(Forecast forecast)
    {
        var sum = forecast.Total;
        return $"{sum.TapL:0} L of water from the tap and {sum.SaltsG:0} g of salts, of which crops and air take {sum.WaterUsedL:0} L "
            + $"and the rest goes at changes; {sum.EnergyKWh:0} kWh, {sum.LightsKWh:0} of them for lamps"
            + (forecast.Terms.Prices is { } prices ? $": {sum.Cost:0.00} {prices.Currency}"
                : "; with `prices:` in the orders file, what that costs");
    }

    private static string Tanks(Forecast forecast)
    {
        var first = forecast.Racks.MinBy(rack => rack.LastsDays ?? int.MaxValue)!;
        var next = forecast.Care.GroupBy(one => (one.Day.Date, one.Day.Care)).FirstOrDefault();
        return $"{first.Name}, the first to run low, lasts {Lasts(first)} when full"
            + (next is null ? "" : $"; {CareWords.Of(next.Key.Care)} {string.Join(", ", next.Select(one => one.Rack))} "
                + $"on {PlanDates.Day(next.Key.Date)}");
    }
}
