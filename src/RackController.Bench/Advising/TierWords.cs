namespace RackController.Bench;

/// <summary>Tiers in words.</summary>
internal static class TierWords
{
    /// <summary>The tiers: <c>tier 2</c>, or <c>tiers 1, 3, 4</c>.</summary>
    public static string List(int[] numbers) =>
        numbers.Length == 1 ? $"tier {numbers[0]}" : $"tiers {string.Join(", ", numbers.Order())}";
}
