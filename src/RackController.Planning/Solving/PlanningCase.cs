using System.Collections.Immutable;
using NodaTime;
using RackController.Growing;

namespace RackController.Planning;

/// <summary>A batch as the solver sees it: every way in which its days can lie.</summary>
/// <param name="Batch">The batch.</param>
/// <param name="Timings">The ways, at least one.</param>
/// <param name="Stages">The numbers of its stages in the light.</param>
internal sealed record BatchCase(Batch Batch, ImmutableArray<BatchTiming> Timings, ImmutableArray<int> Stages);

/// <summary>Days on end on which nothing is sown, moved or harvested whatever the plan, so that they are all alike.</summary>
/// <param name="From">The first.</param>
/// <param name="Days">How many, from 1.</param>
internal sealed record Span(LocalDate From, int Days);

/// <summary>The tiers of a class that are lit for one group of stages that agree.</summary>
/// <param name="Class">The number of the class.</param>
/// <param name="Group">The number of the group in it.</param>
internal readonly record struct Cell(int Class, int Group);

/// <summary>What is to be planned, in numbers: batches with their ways, tiers by class, days by span.</summary>
internal sealed class PlanningCase
{
    private readonly Dictionary<int, int> profileOfStage;

    private PlanningCase(
        GrowSpace space, ImmutableArray<BatchCase> batches, ImmutableArray<TierClass> classes, ImmutableArray<Span> spans)
    {
        Space = space;
        Batches = batches;
        Classes = classes;
        Spans = spans;
        var cellsOfStages = batches.SelectMany(one => one.Stages).Distinct().ToDictionary(
            stage => stage,
            stage => classes.Index().SelectMany(tiers => tiers.Item.GroupsOf(stage).Select(group => new Cell(tiers.Index, group)))
                .ToImmutableArray());
        var profiles = cellsOfStages.Values.DistinctBy(cells => string.Join(' ', cells)).ToImmutableArray();
        Profiles = profiles;
        profileOfStage = cellsOfStages.ToDictionary(
            one => one.Key, one => profiles.Index().First(profile => profile.Item.SequenceEqual(one.Value)).Index);
    }

    /// <summary>The room.</summary>
    public GrowSpace Space { get; }

    /// <summary>The batches.</summary>
    public ImmutableArray<BatchCase> Batches { get; }

    /// <summary>The tiers.</summary>
    public ImmutableArray<TierClass> Classes { get; }

    /// <summary>The days, without gaps.</summary>
    public ImmutableArray<Span> Spans { get; }

    /// <summary>The ways in which stages differ, as far as room goes: the cells in which a tray can be counted. Stages that can be
    /// counted in the same cells are alike.</summary>
    public ImmutableArray<ImmutableArray<Cell>> Profiles { get; }

    /// <summary>The profile of a stage.</summary>
    /// <param name="stage">Its number.</param>
    public int ProfileOf(int stage) => profileOfStage[stage];

    /// <summary>Sets up a case.</summary>
    /// <param name="request">What is asked for.</param>
    /// <param name="batches">The batches that have at least one way.</param>
    public static PlanningCase Of(PlanRequest request, IEnumerable<(Batch Batch, ImmutableArray<BatchTiming> Timings)> batches)
    {
        var known = batches.ToList();
        var stages = known.SelectMany(one => one.Batch.Crop.LitStages).Distinct().ToImmutableArray();
        var cases = known
            .Select(one => new BatchCase(
                one.Batch, one.Timings, [.. one.Batch.Crop.LitStages.Select(stage => stages.IndexOf(stage))]))
            .ToImmutableArray();
        return new PlanningCase(request.Space, cases, TierClass.Of(request.Space, stages), SpansOf(request.Today, cases));
    }

    /// <summary>The spans from one day to another, by number.</summary>
    /// <param name="from">The first day, on which a span begins, or one before the plan.</param>
    /// <param name="until">The day after the last.</param>
    public IEnumerable<int> SpansWithin(LocalDate from, LocalDate until)
    {
        for (var index = 0; index < Spans.Length; index++)
        {
            if (Spans[index].From >= from && Spans[index].From < until)
            {
                yield return index;
            }
        }
    }

    private static ImmutableArray<Span> SpansOf(LocalDate today, ImmutableArray<BatchCase> cases)
    {
        var days = cases
            .SelectMany(one => one.Timings)
            .SelectMany(timing => timing.StageStarts.Append(timing.Sow).Append(timing.Harvest))
            .Append(today)
            .Where(day => day >= today)
            .Distinct().Order().ToList();
        return [.. days.Zip(days.Skip(1), (from, until) => new Span(from, Period.DaysBetween(from, until)))];
    }
}
