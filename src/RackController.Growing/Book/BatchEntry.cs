using System.Collections.Immutable;
using NodaTime;

namespace RackController.Growing;

/// <summary>An entry about one batch.</summary>
/// <param name="At">When it was put down.</param>
/// <param name="By">Who put it down.</param>
/// <param name="Lot">The lot code of the batch.</param>
public abstract record BatchEntry(Instant At, string By, string Lot) : BookEntry(At, By);

/// <summary>A batch is to be grown. It carries what its crop needs, so that the book tells what it grew by whatever becomes of the crops
/// file.</summary>
/// <param name="At">When it was put down.</param>
/// <param name="By">Who put it down.</param>
/// <param name="Lot">Its lot code.</param>
/// <param name="Crop">What is grown.</param>
/// <param name="Trays">How many insert trays, from 1.</param>
/// <param name="Sow">The day on which it is to be sown.</param>
/// <param name="Stages">Its stages in the light, at least one.</param>
/// <param name="Course">When it is to stand where, by day.</param>
/// <param name="Harvest">The day on which it is to be harvested.</param>
/// <param name="For">For whom, in words; empty where nobody ordered it.</param>
public sealed record BatchTakenUp(
    Instant At, string By, string Lot, string Crop, int Trays, LocalDate Sow, ImmutableArray<LitStage> Stages,
    ImmutableArray<CourseStep> Course, LocalDate Harvest, string For) : BatchEntry(At, By, Lot)
{
    /// <summary>Whether it is of a plan, and the next plan may leave it out; otherwise a person began it by hand.</summary>
    public bool IsOfPlan { get; init; }
}

/// <summary>A batch that grows already is to stand elsewhere, or to be harvested on another day, by a later plan.</summary>
/// <param name="At">When it was put down.</param>
/// <param name="By">Who put it down.</param>
/// <param name="Lot">Its lot code.</param>
/// <param name="Course">When it is to stand where, by day.</param>
/// <param name="Harvest">The day on which it is to be harvested.</param>
/// <param name="For">For whom, in words; empty where nobody ordered it.</param>
public sealed record BatchReplanned(
    Instant At, string By, string Lot, ImmutableArray<CourseStep> Course, LocalDate Harvest, string For) : BatchEntry(At, By, Lot);

/// <summary>A batch was sown.</summary>
/// <param name="At">When it was put down.</param>
/// <param name="By">Who put it down.</param>
/// <param name="Lot">Its lot code.</param>
/// <param name="Day">The day.</param>
/// <param name="SeedLot">The lot of the seed, as its bag names it; empty where nobody says.</param>
public sealed record BatchSown(Instant At, string By, string Lot, LocalDate Day, string SeedLot) : BatchEntry(At, By, Lot);

/// <summary>A batch was carried into the light, to other tiers, or came to another stage where it stands.</summary>
/// <param name="At">When it was put down.</param>
/// <param name="By">Who put it down.</param>
/// <param name="Lot">Its lot code.</param>
/// <param name="Day">The day.</param>
/// <param name="Stage">The stage in the light, from 0.</param>
/// <param name="Places">Where all of its trays stand then.</param>
public sealed record BatchMoved(Instant At, string By, string Lot, LocalDate Day, int Stage, ImmutableArray<StandsOn> Places)
    : BatchEntry(At, By, Lot);

/// <summary>Trays of a batch were cut or handed over.</summary>
/// <param name="At">When it was put down.</param>
/// <param name="By">Who put it down.</param>
/// <param name="Lot">Its lot code.</param>
/// <param name="Day">The day.</param>
/// <param name="Trays">How many trays, from 1.</param>
/// <param name="WeightG">What was cut, g; 0 for live trays.</param>
/// <param name="To">To whom it goes, in words; empty where nobody says.</param>
public sealed record BatchHarvested(Instant At, string By, string Lot, LocalDate Day, int Trays, double WeightG, string To)
    : BatchEntry(At, By, Lot)
{
    /// <summary>Where the trays stood; empty where nobody says: then those at the end of its places are taken to be gone.</summary>
    public ImmutableArray<StandsOn> From { get; init; } = [];
}

/// <summary>Trays of a batch were thrown away.</summary>
/// <param name="At">When it was put down.</param>
/// <param name="By">Who put it down.</param>
/// <param name="Lot">Its lot code.</param>
/// <param name="Day">The day.</param>
/// <param name="Trays">How many trays, from 1.</param>
/// <param name="Why">Why, in the person's words.</param>
public sealed record BatchDiscarded(Instant At, string By, string Lot, LocalDate Day, int Trays, string Why) : BatchEntry(At, By, Lot)
{
    /// <summary>Where the trays stood; empty where nobody says: then those at the end of its places are taken to be gone.</summary>
    public ImmutableArray<StandsOn> From { get; init; } = [];
}

/// <summary>Something to remember of a batch.</summary>
/// <param name="At">When it was put down.</param>
/// <param name="By">Who put it down.</param>
/// <param name="Lot">Its lot code.</param>
/// <param name="Text">The note.</param>
public sealed record BatchNoted(Instant At, string By, string Lot, string Text) : BatchEntry(At, By, Lot);

/// <summary>When a batch is to stand where in the light.</summary>
/// <param name="Day">The first day.</param>
/// <param name="Stage">The stage in the light, from 0.</param>
/// <param name="Places">Where its trays stand from then on; empty while nobody has said where.</param>
public sealed record CourseStep(LocalDate Day, int Stage, ImmutableArray<StandsOn> Places);

/// <summary>Trays on a tier.</summary>
/// <param name="Tier">The name of the tier with its rack: <c>north/tier 2</c>.</param>
/// <param name="Trays">How many, from 1.</param>
public sealed record StandsOn(string Tier, int Trays);
