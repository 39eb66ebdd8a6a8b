using System.Collections.Immutable;
using RackController.Control;
using RackController.Model;
using RackController.RackFile;

namespace RackController.Bench;

/// <summary>What one more sensor, contactor or wired part would change.</summary>
/// <param name="Part">Which.</param>
/// <param name="Cuts">Failures that end in a hazard now, or that only the pump's own wire stops, and would not with it.</param>
/// <param name="TellsOf">Failures by which a crop goes short unnoticed now, and of which somebody would be told.</param>
/// <param name="Rows">Rows of the cause-and-effect table that it would bring.</param>
public sealed record PartGain(MissingPart Part, int Cuts, int TellsOf, ImmutableArray<string> Rows);

/// <summary>
/// Every single failure of the catalogue, once at each of its places and in mid-fill, tried on a site as it is; and what went wrong
/// then, tried again with each part that the site lacks.
/// </summary>
public sealed record PartGains
{
    private const ulong Seed = 1;

    /// <summary>How many failures were tried.</summary>
    public required int Tried { get; init; }

    /// <summary>How many of them end in a hazard, or are stopped by what is in the pump's own wire alone.</summary>
    public required int Hazards { get; init; }

    /// <summary>By how many of them a crop goes short and nobody is told.</summary>
    public required int Unnoticed { get; init; }

    /// <summary>What each missing part would change.</summary>
    public required ImmutableArray<PartGain> Gains { get; init; }

    /// <summary>Tries them.</summary>
    /// <param name="site">The site.</param>
    public static PartGains Of(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        var days = FaultFreeDays.Of(site);
        var drawing = new CaseDrawing(site, days, Seed);
        ImmutableArray<CampaignCase> cases =
            [.. FaultInstance.AllOf(site).Select(instance => Draw(drawing, instance)).OfType<CampaignCase>()];
        var asItIs = RunAll(site, days, cases);
        return new PartGains
        {
            Tried = cases.Length,
            Hazards = asItIs.Count(IsHarm),
            Unnoticed = asItIs.Count(outcome => outcome.Class == FailureClass.Silent),
            Gains = [.. MissingParts.Of(site).Select(part => Gain(site, part, asItIs))],
        };
    }

    // A rack that is never flooded is struck while it is lit.
    private static CampaignCase? Draw(CaseDrawing drawing, FaultInstance instance) =>
        drawing.Draw(CasePhase.Filling, instance, null) ?? drawing.Draw(CasePhase.Idle, instance, null);

    private static PartGain Gain(Site site, MissingPart part, ImmutableArray<CaseOutcome> asItIs)
    {
        ImmutableArray<CaseOutcome> wrong = [.. asItIs.Where(one => IsHarm(one) || one.Class == FailureClass.Silent)];
        var fitted = RunAll(part.Fitted, FaultFreeDays.Of(part.Fitted), [.. wrong.Select(outcome => outcome.Case)]);
        var pairs = wrong.Zip(fitted, (before, after) => (Before: before, After: after)).ToList();
        return new PartGain(
            part,
            pairs.Count(pair => IsLeft(part, pair.Before) && !IsLeft(part, pair.After)),
            pairs.Count(pair => pair.Before.Class == FailureClass.Silent && pair.After.Class != FailureClass.Silent && !IsHarm(pair.After)),
            RowsBrought(site, part.Fitted));
    }

    // A wired part is there to be the last that stands between a failure and harm; any other is there to act before one has to.
    private static bool IsLeft(MissingPart part, CaseOutcome outcome) =>
        part.IsWired ? outcome.Class == FailureClass.Hazard : IsHarm(outcome);

    private static bool IsHarm(CaseOutcome outcome) => outcome.Class == FailureClass.Hazard || !outcome.Prevented.IsEmpty;

    private static ImmutableArray<string> RowsBrought(Site site, Site fitted) =>
    [
        .. from pair in CauseAndEffectTable.At(site).Zip(CauseAndEffectTable.At(fitted))
           where pair.Second.Lacking.Length < pair.First.Lacking.Length
           select pair.First.Row.Id,
    ];

    private static ImmutableArray<CaseOutcome> RunAll(Site site, FaultFreeDays days, ImmutableArray<CampaignCase> cases)
    {
        var outcomes = new CaseOutcome[cases.Length];
        var next = -1;
        Workers.Run(() =>
        {
            var index = Interlocked.Increment(ref next);
            if (index >= outcomes.Length)
            {
                return false;
            }

            outcomes[index] = CaseRun.Run(site, days, cases[index]);
            return true;
        });
        return [.. outcomes];
    }
}
