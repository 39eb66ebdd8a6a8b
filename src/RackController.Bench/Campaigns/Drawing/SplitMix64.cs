using System.Text;

namespace RackController.Bench;

/// <summary>
/// A small generator of numbers that look random: SplitMix64 (Steele, Lea and Flood, Fast splittable pseudorandom number
/// generators, OOPSLA 2014, from memory). Its sequence is its own arithmetic and nobody's library, so a seed that was printed
/// years ago still draws the same cases.
/// </summary>
internal sealed class SplitMix64(ulong seed)
{
    private ulong state = seed;

    /// <summary>A generator that belongs to a name: the same seed and name draw the same, whatever else is drawn.</summary>
    /// <param name="seed">The seed of all.</param>
    /// <param name="name">The name.</param>
    public static SplitMix64 Of(ulong seed, string name)
    {
        // FNV-1a over the bytes of the name, 64 bits (Fowler, Noll and Vo; constants from memory).
        var hash = 0xCBF29CE484222325UL;
        foreach (var letter in Encoding.UTF8.GetBytes(name))
        {
            hash = unchecked((hash ^ letter) * 0x100000001B3UL);
        }

        return new SplitMix64(new SplitMix64(unchecked(seed * 0x9E3779B97F4A7C15UL) ^ hash).Next());
    }

    /// <summary>The next 64 bits.</summary>
    public ulong Next()
    {
        unchecked
        {
            var z = state += 0x9E3779B97F4A7C15UL;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }

    /// <summary>A whole number from 0 up to, but not including, a bound.</summary>
    /// <param name="bound">At least 1.</param>
    public int Below(int bound) => (int)(Next() % (ulong)bound);

    /// <summary>A number from 0 up to, but not including, 1, in steps of 2 to the power of -53.</summary>
    public double Share() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>A number between two, each as likely as another.</summary>
    public double Between(double least, double most) => least + Share() * (most - least);

    /// <summary>A number between two above zero, so that each doubling is as likely as another.</summary>
    public double BetweenByDoublings(double least, double most) => least * Math.Exp(Share() * Math.Log(most / least));
}
