using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace RackController.Growing;

/// <summary>Lot codes: letters of the crop, the day of sowing, and a number where that is not enough: <c>RAD-260504-2</c>.</summary>
public static class LotCodes
{
    private const int LettersOfACrop = 3;

    /// <summary>The codes of some batches, in their order: each its own, and those that have one already keep it.</summary>
    /// <param name="batches">The batches with the days on which they are sown.</param>
    public static ImmutableArray<string> Of(IEnumerable<(Batch Batch, BatchTiming Timing)> batches)
    {
        var all = batches.ToImmutableArray();
        var taken = all.Select(one => one.Batch.UnderWay?.Lot).OfType<string>().ToImmutableHashSet(StringComparer.Ordinal);
        var codes = ImmutableArray.CreateBuilder<string>();
        foreach (var (batch, timing) in all)
        {
            var code = batch.UnderWay?.Lot ?? Free(batch.Crop.Name, timing.Sow, taken);
            taken = taken.Add(code);
            codes.Add(code);
        }

        return codes.ToImmutable();
    }

    /// <summary>A code for one more batch that no other has.</summary>
    /// <param name="crop">The name of its crop.</param>
    /// <param name="sow">The day on which it is sown.</param>
    /// <param name="taken">The codes that others have.</param>
    public static string Free(string crop, LocalDate sow, ImmutableHashSet<string> taken)
    {
        ArgumentNullException.ThrowIfNull(crop);
        ArgumentNullException.ThrowIfNull(taken);
        var code = Code(crop, sow);
        return Enumerable.Range(2, taken.Count + 1).Select(n => $"{code}-{n}").Prepend(code).First(one => !taken.Contains(one));
    }

    private static string Code(string crop, LocalDate sow) => $"{Letters(crop)}-{sow.ToString("yyMMdd", CultureInfo.InvariantCulture)}";

    private static string Letters(string crop)
    {
        var letters = crop.Where(char.IsAsciiLetter).Take(LettersOfACrop).Select(char.ToUpperInvariant).ToArray();
        return letters.Length > 0 ? new string(letters) : "LOT";
    }
}
