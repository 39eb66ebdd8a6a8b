using System.Collections.Immutable;
using NodaTime;
using RackController.Model;

namespace RackController.Growing;

/// <summary>What a plan comes to in water, salts, electricity, money and harvest, day by day, and what it asks of reservoirs, circuits and
/// the floor. It is arithmetic over a plan and a model of the racks, in a room that stays as it is.</summary>
public sealed record Forecast
{
    /// <summary>What was assumed.</summary>
    public required ForecastTerms Terms { get; init; }

    /// <summary>Every day of the plan.</summary>
    public required ImmutableArray<ForecastDay> Days { get; init; }

    /// <summary>Every rack of the site.</summary>
    public required ImmutableArray<RackForecast> Racks { get; init; }

    /// <summary>Every circuit of the site.</summary>
    public required ImmutableArray<CircuitForecast> Circuits { get; init; }

    /// <summary>The days on which somebody does something to a reservoir.</summary>
    public IEnumerable<(string Rack, ReservoirDay Day)> Care =>
        from day in Enumerable.Range(0, Days.Length)
        from rack in Racks
        where rack.Days[day].Care != ReservoirCare.None
        select (rack.Name, rack.Days[day]);

    /// <summary>The sum of all days.</summary>
    public ForecastDay Total => Days[0] with
    {
        WaterUsedL = Days.Sum(day => day.WaterUsedL),
        TapL = Days.Sum(day => day.TapL),
        SaltsG = Days.Sum(day => day.SaltsG),
        LightsKWh = Days.Sum(day => day.LightsKWh),
        OthersKWh = Days.Sum(day => day.OthersKWh),
        Cost = Terms.Prices is null ? null : Days.Sum(day => day.Cost),
        PeakA = [.. Circuits.Select(circuit => circuit.PeakA)],
        Harvest = [.. Harvested.Together(Days.SelectMany(day => day.Harvest))],
    };

    /// <summary>Counts what a plan comes to.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="site">The racks that it was made for.</param>
    /// <param name="terms">What is assumed.</param>
    /// <param name="lowestL">Volume below which a flood is stopped, L, by rack.</param>
    /// <param name="uses">What each day of the plan takes, from the first on.</param>
    public static Forecast Of(
        Plan plan, Site site, ForecastTerms terms, ImmutableArray<double> lowestL, ImmutableArray<DayUse> uses)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(terms);
        var first = plan.Request.Today;
        var racks = site.Racks.Select((rack, index) =>
            RackForecast.Of(rack, lowestL[index], terms, plan.Request, [.. uses.Select(use => use.Racks[index])])).ToImmutableArray();
        return new Forecast
        {
            Terms = terms,
            Racks = racks,
            Days = [.. uses.Select((use, day) => Day(plan, first.PlusDays(day), use, [.. racks.Select(rack => rack.Days[day])], terms))],
            Circuits =
            [
                .. site.Circuits.Select((circuit, index) => new CircuitForecast(
                    circuit.Name, circuit.ContinuousLimitA, uses.Max(use => use.PeakA[index]),
                    first.PlusDays(uses.Index().MaxBy(use => use.Item.PeakA[index]).Index))),
            ],
        };
    }

    private static ForecastDay Day(
        Plan plan, LocalDate date, DayUse use, ImmutableArray<ReservoirDay> reservoirs, ForecastTerms terms)
    {
        var (tapL, saltsG) = (reservoirs.Sum(one => one.TapL), reservoirs.Sum(one => one.SaltsG));
        return new ForecastDay
        {
            Date = date,
            WaterUsedL = use.Racks.Sum(rack => rack.WaterL),
            TapL = tapL,
            SaltsG = saltsG,
            LightsKWh = use.LightsKWh,
            OthersKWh = use.OthersKWh,
            Cost = terms.Prices?.Of(use.LightsKWh + use.OthersKWh, tapL, saltsG),
            PeakA = use.PeakA,
            Harvest = [.. Harvested.On(plan, date)],
        };
    }
}

/// <summary>One day of a forecast.</summary>
public sealed record ForecastDay
{
    /// <summary>The day.</summary>
    public required LocalDate Date { get; init; }

    /// <summary>Transpired and evaporated, L.</summary>
    public required double WaterUsedL { get; init; }

    /// <summary>Let in from the tap to top up, change and flush, L.</summary>
    public required double TapL { get; init; }

    /// <summary>Salts put into reservoirs, g.</summary>
    public required double SaltsG { get; init; }

    /// <summary>What lamps draw, kWh.</summary>
    public required double LightsKWh { get; init; }

    /// <summary>What pumps, aerators, fans and valves draw, kWh.</summary>
    public required double OthersKWh { get; init; }

    /// <summary>All that is drawn, kWh.</summary>
    public double EnergyKWh => LightsKWh + OthersKWh;

    /// <summary>What it costs; null without prices.</summary>
    public required double? Cost { get; init; }

    /// <summary>The most that each circuit carries, A, starting currents left out.</summary>
    public required ImmutableArray<double> PeakA { get; init; }

    /// <summary>What is harvested.</summary>
    public required ImmutableArray<Harvested> Harvest { get; init; }
}

/// <summary>The water and the weight of one rack.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LastsDays">How many whole days a full reservoir lasts when nobody comes; null when it lasts longer than the plan.</param>
/// <param name="Floor">What it puts on the floor.</param>
/// <param name="Days">Its reservoir, day by day.</param>
public sealed record RackForecast(string Name, int? LastsDays, FloorLoad Floor, ImmutableArray<ReservoirDay> Days)
{
    /// <summary>When somebody tops its reservoir up; null when nobody has to within the plan.</summary>
    public LocalDate? NextTopUp => First(ReservoirCare.TopUp);

    /// <summary>When somebody changes its solution, with a flush or without; null when nobody has to within the plan.</summary>
    public LocalDate? NextChange => First(ReservoirCare.Change, ReservoirCare.Flush);

    /// <summary>When somebody flushes it; null when nobody has to within the plan.</summary>
    public LocalDate? NextFlush => First(ReservoirCare.Flush);

    internal static RackForecast Of(
        Rack rack, double lowestL, ForecastTerms terms, PlanRequest request, ImmutableArray<RackDayUse> uses) => new(
        rack.Name, ReservoirDays.LastsDays(rack.Reservoir, lowestL, uses), FloorLoad.Of(rack, terms.TrayKg),
        ReservoirDays.Of(rack.Reservoir, lowestL, terms, request, uses));

    private LocalDate? First(params ReadOnlySpan<ReservoirCare> care)
    {
        foreach (var day in Days)
        {
            if (care.Contains(day.Care))
            {
                return day.Date;
            }
        }

        return null;
    }
}

/// <summary>What a circuit has to carry.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LimitA">What it may carry for hours, A.</param>
/// <param name="PeakA">The most that it carries, A, starting currents left out.</param>
/// <param name="On">The first day on which it does.</param>
public sealed record CircuitForecast(string Name, double LimitA, double PeakA, LocalDate On);
