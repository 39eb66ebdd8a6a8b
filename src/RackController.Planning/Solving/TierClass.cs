using System.Collections.Immutable;
using RackController.Growing;

namespace RackController.Planning;

/// <summary>
/// Tiers that no crop of the plan can tell apart: as many places, and the same stages suit them in the same groups. How many of them
/// are lit is all that counts; which of them is a later question.
/// </summary>
/// <param name="Tiers">Places of the tiers in the plan's space.</param>
/// <param name="Places">Insert trays on each.</param>
/// <param name="Hours">Hours a day that each stage may be lit, by tier and number of the stage; null where the tier does not suit it. They
/// differ with the lamps; who agrees with whom does not.</param>
/// <param name="Groups">The largest groups of stages that agree.</param>
internal sealed record TierClass(
    ImmutableArray<int> Tiers, int Places, ImmutableArray<ImmutableArray<Bounds?>> Hours, ImmutableArray<ImmutableArray<int>> Groups)
{
    /// <summary>Sorts the tiers of a space.</summary>
    /// <param name="space">The space.</param>
    /// <param name="stages">The stages of the plan, by number.</param>
    public static ImmutableArray<TierClass> Of(GrowSpace space, ImmutableArray<LitStage> stages) =>
    [
        .. space.Tiers.Index()
            .Select(tier =>
            {
                var hours = stages.Select(stage => Fit.HoursOn(stage, tier.Item.Kind)).ToImmutableArray();
                return new TierClass([tier.Index], tier.Item.Kind.Places, [hours], Neighbours.Groups(hours));
            })
            .GroupBy(one => one.Signature)
            .Select(alike => alike.First() with
            {
                Tiers = [.. alike.Select(one => one.Tiers[0])],
                Hours = [.. alike.Select(one => one.Hours[0])],
            }),
    ];

    /// <summary>The groups that a stage is in.</summary>
    /// <param name="stage">Its number.</param>
    public ImmutableArray<int> GroupsOf(int stage) =>
        [.. Groups.Index().Where(group => group.Item.Contains(stage)).Select(group => group.Index)];

    private string Signature => $"{Places}:{string.Join('|', Groups.Select(group => string.Join(',', group)))}";
}
