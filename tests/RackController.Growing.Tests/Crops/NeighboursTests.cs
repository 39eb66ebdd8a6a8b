using System.Collections.Immutable;
using CsCheck;

namespace RackController.Growing.Tests;

public sealed class NeighboursTests
{
    [Fact]
    public void WhoeverOverlapsWithBothNeighboursIsInBothGroups() => Assert.Equal(
        ["0 1", "1 2"],
        Words([new Bounds(10, 12), new Bounds(11, 15), new Bounds(14, 18)]));

    [Fact]
    public void WhomTheTierDoesNotSuitIsInNoGroup() => Assert.Equal(["1"], Words([null, new Bounds(11, 15)]));

    // Helly's theorem in one dimension, held against trying every set.
    [Fact]
    public void AGroupIsEveryLargestSetThatOneLengthOfDaySuits() =>
        Gen.Select(Gen.Int[0, 9], Gen.Int[0, 4]).Array[1, 6].Sample(pairs =>
        {
            var hours = pairs.Select(pair => (Bounds?)new Bounds(pair.Item1, pair.Item1 + pair.Item2)).ToImmutableArray();
            var agreeing = Enumerable.Range(1, (1 << hours.Length) - 1)
                .Where(set => Enumerable.Range(0, 14).Any(hour => Members(set, hours.Length).All(one => hours[one]!.Value.Holds(hour))))
                .ToList();
            var largest = agreeing.Where(set => agreeing.All(other => other == set || (other & set) != set))
                .Select(set => string.Join(' ', Members(set, hours.Length)));
            Assert.Equal(largest.Order(StringComparer.Ordinal), Words(hours).Order(StringComparer.Ordinal));
        });

    private static IEnumerable<int> Members(int set, int count) => Enumerable.Range(0, count).Where(one => (set >> one & 1) == 1);

    private static IEnumerable<string> Words(ImmutableArray<Bounds?> hours) =>
        Neighbours.Groups(hours).Select(group => string.Join(' ', group));
}
