namespace RackController.Crash;

/// <summary>What a dying disk or a power cut does to the end of a file that was being written.</summary>
internal static class Damage
{
    private const int LongestTailBytes = 64 * 1024;

    /// <summary>Damages the tail of a journal's database or of its write-ahead log.</summary>
    /// <param name="folder">The folder of the journal.</param>
    /// <param name="random">Draws where and how.</param>
    /// <returns>What was done, in words.</returns>
    public static string ToTail(string folder, Random random)
    {
        var log = Path.Combine(folder, "journal.db-wal");
        var path = random.Next(3) > 0 && File.Exists(log) ? log : Path.Combine(folder, "journal.db");
        using var file = File.Open(path, FileMode.Open, FileAccess.ReadWrite);
        var tail = random.Next((int)Math.Min(file.Length, LongestTailBytes) + 1);
        var words = random.Next(4) switch
        {
            0 => CutOff(file, tail),
            1 => Overwrite(file, tail, new byte[tail], "zeros"),
            2 => Overwrite(file, tail, RandomBytes(random, tail), "random bytes"),
            _ => FlipBits(file, tail, random),
        };
        return $"{words} of {Path.GetFileName(path)}";
    }

    private static string CutOff(FileStream file, int tail)
    {
        file.SetLength(file.Length - tail);
        return $"cut off the last {tail} bytes";
    }

    private static string Overwrite(FileStream file, int tail, byte[] with, string what)
    {
        file.Position = file.Length - tail;
        file.Write(with);
        return $"{what} over the last {tail} bytes";
    }

    private static string FlipBits(FileStream file, int tail, Random random)
    {
        const int flips = 8;
        for (var flip = 0; flip < flips && tail > 0; flip++)
        {
            var at = file.Length - 1 - random.Next(tail);
            file.Position = at;
            var flipped = (byte)(file.ReadByte() ^ (1 << random.Next(8)));
            file.Position = at;
            file.WriteByte(flipped);
        }

        return $"{flips} bits flipped in the last {tail} bytes";
    }

    private static byte[] RandomBytes(Random random, int count)
    {
        var bytes = new byte[count];
        random.NextBytes(bytes);
        return bytes;
    }
}
