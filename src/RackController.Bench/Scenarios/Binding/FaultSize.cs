using RackController.Plant;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>Reads how large a fault is, in whatever unit its kind has.</summary>
internal static class FaultSize
{
    public static bool TryRead(MappingReader keys, Key<string> size, FaultEntry entry, out double amount)
    {
        amount = 0;
        if (keys.Find(size) is not { } text)
        {
            return true;
        }

        if (entry.SizeUnit.Length == 0)
        {
            keys.Refuse(size, $"`{FaultNames.Of(entry.Kind)}` has no size", "remove it");
            return false;
        }

        return KindOf(entry).TryRead("size", new ScalarNode(keys.At(size), text, false), keys.Complaints, out amount);
    }

    private static Kind<double> KindOf(FaultEntry entry) => entry.SizeUnit switch
    {
        "s" => new QuantityKind(Dimensions.Time, "0 s", "10000 s"),
        "L" => new QuantityKind(Dimensions.Volume, "0 L", "100000 L"),
        "L/min" => new QuantityKind(Dimensions.Flow, "0 L/min", "1000 L/min"),
        _ => new NumberKind($"a number ({entry.SizeMeans})", entry.SizeMin, entry.SizeMax),
    };
}
