using RackController.Plant;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>Reads how large a fault is, in whatever unit its kind has.</summary>
internal static class FaultSize
{
    /// <summary>Reads it. A fault that has a size must say it: one of size nothing would change nothing, and whatever a
    /// scenario expects of it would hold.</summary>
    /// <param name="keys">The event.</param>
    /// <param name="fault">Where it names its fault.</param>
    /// <param name="size">Where it says how large.</param>
    /// <param name="entry">What there is to say of the fault.</param>
    /// <param name="amount">How large it is, in the unit of its kind; 0 for one without a size.</param>
    public static bool TryRead(MappingReader keys, Key fault, Key<string> size, FaultEntry entry, out double amount)
    {
        amount = 0;
        if (keys.Find(size) is not { } text)
        {
            if (entry.SizeUnit.Length == 0)
            {
                return true;
            }

            keys.Refuse(
                fault, $"`{FaultNames.Of(entry.Kind)}` does not say how much",
                $"write `size:` beside it ({entry.SizeMeans}, {entry.SizeUnit})");
            return false;
        }

        if (entry.SizeUnit.Length == 0)
        {
            keys.Refuse(size, $"`{FaultNames.Of(entry.Kind)}` has no size", "remove it");
            return false;
        }

        var isRead = KindOf(entry).TryRead("size", new ScalarNode(keys.At(size), text, false), keys.Complaints, out var read);
        amount = entry.SizeUnit == "mA" ? read * 1000 : read;
        return isRead;
    }

    private static Kind<double> KindOf(FaultEntry entry) => entry.SizeUnit switch
    {
        "s" => new QuantityKind(Dimensions.Time, "0 s", "10000 s"),
        "L" => new QuantityKind(Dimensions.Volume, "0 L", "100000 L"),
        "mA" => new QuantityKind(Dimensions.Current, "0 mA", "500 mA"),
        "L/min" => new QuantityKind(Dimensions.Flow, "0 L/min", "1000 L/min"),
        _ => new NumberKind($"a number ({entry.SizeMeans})", entry.SizeMin, entry.SizeMax),
    };
}
