using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing;

/// <summary>Where a batch is in its life.</summary>
public enum BatchPhase
{
    /// <summary>It is to be sown.</summary>
    Planned,

    /// <summary>It is sown and stands in the dark.</summary>
    InTheDark,

    /// <summary>It stands on tiers in the light.</summary>
    InTheLight,

    /// <summary>All of its trays were harvested or thrown away.</summary>
    Gone,
}

/// <summary>A batch as the growing book tells of it.</summary>
public sealed record BookedBatch
{
    /// <summary>What is to be grown.</summary>
    public required BatchTakenUp Start { get; init; }

    /// <summary>Its sowing; null while it is not sown.</summary>
    public BatchSown? Sown { get; init; }

    /// <summary>When it was carried where, in the order of days.</summary>
    public ImmutableArray<BatchMoved> Moves { get; init; } = [];

    /// <summary>What was harvested of it.</summary>
    public ImmutableArray<BatchHarvested> Harvests { get; init; } = [];

    /// <summary>What was thrown away of it.</summary>
    public ImmutableArray<BatchDiscarded> Discards { get; init; } = [];

    /// <summary>What people noted of it.</summary>
    public ImmutableArray<BatchNoted> Notes { get; init; } = [];

    /// <summary>Its lot code.</summary>
    public string Lot => Start.Lot;

    /// <summary>How many of its trays are there still.</summary>
    public int TraysLeft => TraysOn(LocalDate.MaxIsoValue);

    /// <summary>What was cut of it in all, g.</summary>
    public double HarvestedG => Harvests.Sum(one => one.WeightG);

    /// <summary>The day on which the last of it was gone; null while some of it is there.</summary>
    public LocalDate? GoneOn => TraysLeft > 0
        ? null
        : Harvests.Select(one => one.Day).Concat(Discards.Select(one => one.Day)).Max();

    /// <summary>Its phase on a day.</summary>
    /// <param name="day">The day.</param>
    /// <param name="byDate">Whether it goes into the light and from tier to tier by the day that was planned for it; otherwise only when
    /// somebody says that it did.</param>
    public BatchPhase PhaseOn(LocalDate day, bool byDate) =>
        GoneOn is { } gone && day >= gone ? BatchPhase.Gone
        : Sown is null || day < Sown.Day ? BatchPhase.Planned
        : StepOn(day, byDate) is null ? BatchPhase.InTheDark
        : BatchPhase.InTheLight;

    /// <summary>Where it stands in the light on a day; null where it does not. Trays that are gone are taken from the end.</summary>
    /// <param name="day">The day.</param>
    /// <param name="byDate">Whether it moves by the day that was planned.</param>
    public CourseStep? PlacesOn(LocalDate day, bool byDate) =>
        PhaseOn(day, byDate) == BatchPhase.InTheLight ? WithoutWhatIsGone(StepOn(day, byDate)!, day) : null;

    /// <summary>The next step of its course that is still to come or to be confirmed; null where there is none.</summary>
    /// <param name="day">The day.</param>
    /// <param name="byDate">Whether it moves by the day that was planned.</param>
    public CourseStep? NextStep(LocalDate day, bool byDate)
    {
        var done = Moves.IsEmpty ? -1 : Moves[^1].Stage;
        return Start.Course.FirstOrDefault(step => !IsWhereItStands(step) && (
            byDate && !step.Places.IsEmpty ? step.Day > day && step.Day > LastMove : IsAhead(step, done)));
    }

    private LocalDate LastMove => Moves.IsEmpty ? LocalDate.MinIsoValue : Moves[^1].Day;

    private bool IsWhereItStands(CourseStep step) =>
        !Moves.IsEmpty && Moves[^1].Stage == step.Stage && Moves[^1].Places.SequenceEqual(step.Places);

    // A move at once to the places of a later step makes the earlier ones void; one that only repeats a stage elsewhere does not.
    private bool IsAhead(CourseStep step, int stageDone) =>
        step.Stage > stageDone || (step.Stage == stageDone && step.Day > LastMove);

    private CourseStep? StepOn(LocalDate day, bool byDate)
    {
        var told = Moves.LastOrDefault(move => move.Day <= day);
        var planned = byDate && Sown is { } sown && sown.Day <= day ? PlannedOn(day) : null;
        return planned is not null && (told is null || planned.Day > told.Day) ? planned
            : told is null ? null
            : new CourseStep(told.Day, told.Stage, told.Places);
    }

    private CourseStep? PlannedOn(LocalDate day) => Start.Course.LastOrDefault(step => step.Day <= day && !step.Places.IsEmpty);

    private CourseStep WithoutWhatIsGone(CourseStep step, LocalDate day)
    {
        var left = step.Places.ToDictionary(place => place.Tier, place => place.Trays);
        var over = left.Values.Sum() - TraysOn(day);
        var told = Harvests.Where(one => one.Day >= step.Day && one.Day <= day).SelectMany(one => one.From)
            .Concat(Discards.Where(one => one.Day >= step.Day && one.Day <= day).SelectMany(one => one.From));
        foreach (var gone in told.Concat(step.Places.Reverse()).Where(gone => left.ContainsKey(gone.Tier)))
        {
            var taken = Math.Clamp(over, 0, Math.Min(gone.Trays, left[gone.Tier]));
            left[gone.Tier] -= taken;
            over -= taken;
        }

        return step with
        {
            Places = [.. step.Places.Select(place => place with { Trays = left[place.Tier] }).Where(place => place.Trays > 0)],
        };
    }

    private int TraysOn(LocalDate day) => Start.Trays - Harvests.Where(one => one.Day <= day).Sum(one => one.Trays)
        - Discards.Where(one => one.Day <= day).Sum(one => one.Trays);
}
