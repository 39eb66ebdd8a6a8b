namespace RackController.Control.Tests.Scanning;

/// <summary>Chance from a seed, so that whatever it made can be made again.</summary>
internal sealed class Dice(int seed)
{
    private readonly Random random = new(seed);

    public bool Chance(int oneIn) => random.Next(oneIn) == 0;

    /// <summary>From one whole number up to and with another.</summary>
    public int Between(int from, int to) => random.Next(from, to + 1);

    public double Between(double from, double to) => from + random.NextDouble() * (to - from);

    public T Of<T>(params ReadOnlySpan<T> these) => these[random.Next(these.Length)];
}
