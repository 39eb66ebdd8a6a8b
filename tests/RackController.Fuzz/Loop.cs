using System.Security.Cryptography;
using System.Text;

namespace RackController.Fuzz;

/// <summary>
/// What fuzzes where AFL++ cannot be had: inputs are changed at random, and one that reaches code that none reached before is kept to be
/// changed further. It sees the same map of coverage as AFL++ does, and is simpler in everything else.
/// </summary>
internal static class Loop
{
    private const int LongestInputBytes = 1 << 16;
    private static readonly TimeSpan Hang = TimeSpan.FromSeconds(10);

    /// <summary>Fuzzes for a while, and writes what breaks a reader to a folder.</summary>
    /// <returns>1 if anything did, else 0.</returns>
    public static int Run(Target target, TimeSpan length, string corpus, string findings, string dictionary)
    {
        var seed = Random.Shared.Next();
        var random = new Random(seed);
        var words = File.ReadAllLines(dictionary).Select(line => Encoding.UTF8.GetBytes(line.Trim('"'))).ToArray();
        var pool = Directory.GetFiles(corpus).Order(StringComparer.Ordinal).Select(File.ReadAllBytes).ToList();
        var seen = new byte[Coverage.Map.Length];
        var end = DateTime.UtcNow + length;
        long runs = 0;
        var defects = 0;
        pool.ForEach(input => Try(input));
        while (DateTime.UtcNow < end)
        {
            var input = Change(pool[random.Next(pool.Count)], pool[random.Next(pool.Count)], words, random);
            if (Try(input))
            {
                pool.Add(input);
            }
        }

        Console.WriteLine($"{target.Name}: seed {seed}, {runs} runs, {pool.Count} inputs of their own paths, {defects} defects");
        return defects > 0 ? 1 : 0;

        bool Try(byte[] input)
        {
            runs++;
            Coverage.Clear();
            var begun = DateTime.UtcNow;
            string? defect = null;
            try
            {
                target.Read(input);
            }
            catch (Exception e)
            {
                defect = $"{e.GetType().Name}: {e.Message}";
            }

            defect ??= DateTime.UtcNow - begun > Hang ? "it took longer than ten seconds" : null;
            var isNew = IsNew(Coverage.Map, seen);
            if (defect is not null && isNew)
            {
                defects++;
                var file = Path.Combine(findings, Convert.ToHexStringLower(SHA256.HashData(input))[..16]);
                File.WriteAllBytes(file, input);
                Console.WriteLine($"{target.Name} {file}: {defect}");
            }

            return isNew && defect is null;
        }
    }

    /// <summary>Whether a run took an edge that none took before, or took it in another order of magnitude.</summary>
    private static bool IsNew(ReadOnlySpan<byte> map, byte[] seen)
    {
        var isNew = false;
        for (var edge = 0; edge < map.Length; edge++)
        {
            if (map[edge] != 0)
            {
                var magnitude = (byte)(1 << (31 - int.LeadingZeroCount(map[edge])));
                isNew |= (seen[edge] & magnitude) == 0;
                seen[edge] |= magnitude;
            }
        }

        return isNew;
    }

    private static byte[] Change(byte[] from, byte[] other, byte[][] words, Random random)
    {
        var bytes = from.ToList();
        for (var changes = 1 << random.Next(5); changes > 0; changes--)
        {
            var at = random.Next(bytes.Count + 1);
            var length = random.Next(Math.Min(64, bytes.Count - at) + 1);
            switch (random.Next(6))
            {
                case 0 when at < bytes.Count:
                    bytes[at] ^= (byte)(1 << random.Next(8));
                    break;
                case 1 when at < bytes.Count:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 2:
                    bytes.RemoveRange(at, length);
                    break;
                case 3:
                    bytes.InsertRange(at, bytes.GetRange(at, length));
                    break;
                case 4:
                    bytes.InsertRange(at, words[random.Next(words.Length)]);
                    break;
                default:
                    var start = random.Next(other.Length + 1);
                    bytes.InsertRange(at, other.AsSpan(start, Math.Min(length, other.Length - start)));
                    break;
            }
        }

        return [.. bytes.Take(LongestInputBytes)];
    }
}
