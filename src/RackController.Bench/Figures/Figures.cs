using System.Collections.Immutable;

namespace RackController.Bench;

/// <summary>How fast, how frugal and how exact the bench is on this machine, measured in one process one after the other, so
/// that the figures can be held against each other.</summary>
public sealed record Figures
{
    private const int DaysInAYear = 365;
    private const int Years = 10;
    private const int Racks = 64;

    /// <summary>A year of the five-tier rack.</summary>
    public required TimedRun Year { get; init; }

    /// <summary>Ten years of it.</summary>
    public required TimedRun Decade { get; init; }

    /// <summary>Memory after each year of the ten, the first first.</summary>
    public required ImmutableArray<MemoryUse> Memory { get; init; }

    /// <summary>A day of the five-tier rack.</summary>
    public required TimedRun Day { get; init; }

    /// <summary>A day of sixty-four such racks on sixteen circuits.</summary>
    public required TimedRun SixtyFourDay { get; init; }

    /// <summary>One scan of one rack.</summary>
    public required ScanCost Scan { get; init; }

    /// <summary>One scan of the sixty-four.</summary>
    public required ScanCost SixtyFourScan { get; init; }

    /// <summary>What steps of the simulated rack cost and allocate.</summary>
    public required StepCost Step { get; init; }

    /// <summary>How far a flood cycle is from one that is solved far more finely, by the tolerance of the integration.</summary>
    public required ImmutableArray<Accuracy> Accuracies { get; init; }

    /// <summary>Measures everything. Takes a quarter of a minute or so.</summary>
    /// <param name="progress">Told what is being measured.</param>
    public static Figures Measure(Action<string> progress)
    {
        ArgumentNullException.ThrowIfNull(progress);
        var one = FigureSites.Of(racks: 1);
        var many = FigureSites.Of(Racks);
        progress("warming up");
        TimedRun.Of(FigureRuns.OfDays(one, 30));

        progress("a year of the five-tier rack");
        var year = TimedRun.FastestOf(rounds: 3, FigureRuns.OfDays(one, DaysInAYear));
        progress("a day of one rack, and of sixty-four");
        var day = TimedRun.FastestOf(rounds: 20, FigureRuns.OfDays(one, 1));
        var manyDay = TimedRun.FastestOf(rounds: 5, FigureRuns.OfDays(many, 1));
        progress("scans and steps");
        var (scan, manyScan, step) = (ScanCost.Of(one), ScanCost.Of(many), StepCost.Of(one));
        progress("accuracy");
        var accuracies = FloodAccuracy.AtSeveralTolerances(one);
        progress("ten years");
        var memory = ImmutableArray.CreateBuilder<MemoryUse>();
        var decade = TimedRun.Of(
            FigureRuns.OfDays(one, Years * DaysInAYear),
            done =>
            {
                if (done >= (memory.Count + 1.0) / Years)
                {
                    memory.Add(MemoryUse.Now());
                }
            });
        return new Figures
        {
            Year = year,
            Decade = decade,
            Memory = memory.ToImmutable(),
            Day = day,
            SixtyFourDay = manyDay,
            Scan = scan,
            SixtyFourScan = manyScan,
            Step = step,
            Accuracies = accuracies,
        };
    }
}
