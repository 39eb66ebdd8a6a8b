namespace RackController.Model;

/// <summary>Some tiers of one rack. Two sets of the same tiers are equal.</summary>
/// <param name="Bits">A bit for each of them: bit 1 for tier 1.</param>
public readonly record struct TierSet(ulong Bits)
{
    /// <summary>No tier.</summary>
    public static TierSet None => default;

    /// <summary>Whether it has none.</summary>
    public bool IsEmpty => Bits == 0;

    /// <summary>The tiers, bottom first.</summary>
    public IEnumerable<int> Numbers
    {
        get
        {
            for (var number = 1; number < 64; number++)
            {
                if (Contains(number))
                {
                    yield return number;
                }
            }
        }
    }

    /// <summary>The set of some tiers.</summary>
    /// <param name="numbers">Their numbers: 1 to 63.</param>
    public static TierSet Of(IEnumerable<int> numbers)
    {
        ArgumentNullException.ThrowIfNull(numbers);
        return new TierSet(numbers.Aggregate(0UL, (bits, number) => bits | 1UL << number));
    }

    /// <summary>Whether a tier is one of them.</summary>
    /// <param name="number">1 at the bottom.</param>
    public bool Contains(int number) => (Bits & 1UL << number) != 0;
}
