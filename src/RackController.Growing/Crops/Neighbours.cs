using System.Collections.Immutable;

namespace RackController.Growing;

/// <summary>
/// Which stages may stand on one tier. They share its water, which is the rack's and suits each of them or they would not be there,
/// and its lamp, which has one length of day: so they agree when some length suits them all. Of stretches of a line that meet two by
/// two, all meet in one point (Helly's theorem in one dimension), so it is enough to look at pairs.
/// </summary>
public static class Neighbours
{
    /// <summary>The largest groups whose members all agree, by index; a stage may be in several, one that does not suit in none.</summary>
    /// <param name="hours">The hours a day that each stage may be lit; null where the tier does not suit it.</param>
    public static ImmutableArray<ImmutableArray<int>> Groups(ImmutableArray<Bounds?> hours)
    {
        // A group is largest just where its last member begins: whoever could join later would have begun earlier.
        var groups = hours.OfType<Bounds>().Select(one => one.Least).Distinct().Order()
            .Select(begin => hours.Index().Where(one => one.Item is { } bounds && bounds.Holds(begin))
                .Select(one => one.Index).ToImmutableArray())
            .ToList();
        return [.. groups.Where((group, index) => !groups.Index().Any(other => Hides(other, group, index)))];
    }

    // Of two that are the same the first is kept.
    private static bool Hides((int Index, ImmutableArray<int> Item) other, ImmutableArray<int> group, int index) =>
        other.Index != index && group.All(member => other.Item.Contains(member))
        && (other.Item.Length > group.Length || other.Index < index);
}
