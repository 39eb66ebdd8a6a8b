using System.Collections.Immutable;
using System.Globalization;

namespace RackController.Growing;

/// <summary>Lot codes: letters of the crop, the day of sowing, and a number where that is not enough: <c>RAD-260504-2</c>.</summary>
public static class LotCodes
{
    private const int LettersOfACrop = 3;

    /// <summary>The codes of some batches, in their order, each once.</summary>
    /// <param name="batches">The batches with the days on which they are sown.</param>
    public static ImmutableArray<string> Of(IEnumerable<(Batch Batch, BatchTiming Timing)> batches)
    {
        var taken = new Dictionary<string, int>(StringComparer.Ordinal);
        var codes = ImmutableArray.CreateBuilder<string>();
        foreach (var (batch, timing) in batches)
        {
            var code = $"{Letters(batch.Crop.Name)}-{timing.Sow.ToString("yyMMdd", CultureInfo.InvariantCulture)}";
            taken[code] = taken.GetValueOrDefault(code) + 1;
            codes.Add(taken[code] == 1 ? code : $"{code}-{taken[code]}");
        }

        return codes.ToImmutable();
    }

    private static string Letters(string crop)
    {
        var letters = crop.Where(char.IsAsciiLetter).Take(LettersOfACrop).Select(char.ToUpperInvariant).ToArray();
        return letters.Length > 0 ? new string(letters) : "LOT";
    }
}
