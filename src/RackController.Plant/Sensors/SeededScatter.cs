namespace RackController.Plant;

/// <summary>
/// Random numbers without memory: each is a hash of seed, stream and time, so a sensor that is read often and one that is read
/// seldom scatter alike at the same moment. The hash is the finaliser of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014,
/// from memory).
/// </summary>
internal static class SeededScatter
{
    /// <summary>64 bits that look random.</summary>
    /// <param name="seed">Of the run.</param>
    /// <param name="stream">Which of its streams, such as a sensor.</param>
    /// <param name="moment">Which number of the stream.</param>
    public static ulong Bits(ulong seed, int stream, long moment)
    {
        unchecked
        {
            return Mix(Mix(seed + 0x9E3779B97F4A7C15UL * ((ulong)stream + 1)) + (ulong)moment);
        }
    }

    /// <summary>A number of the normal distribution of mean 0 and standard deviation 1, by Box and Muller (1958, from memory).</summary>
    /// <param name="seed">Of the run.</param>
    /// <param name="stream">Which of its streams.</param>
    /// <param name="moment">Which number of the stream.</param>
    public static double Normal(ulong seed, int stream, long moment)
    {
        var bits = Bits(seed, stream, moment);
        const double Unit = 1.0 / 4294967296;
        var radius = Math.Sqrt(-2 * Math.Log(((bits >> 32) + 1) * Unit));
        return radius * Math.Cos(2 * Math.PI * (bits & 0xFFFFFFFF) * Unit);
    }

    private static ulong Mix(ulong z)
    {
        unchecked
        {
            z += 0x9E3779B97F4A7C15UL;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}
