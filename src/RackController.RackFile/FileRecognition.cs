using RackController.RackFile.Binding;

namespace RackController.RackFile;

/// <summary>The files that a person writes for the product.</summary>
public enum PlainFile
{
    /// <summary>Racks, circuits and schedules.</summary>
    Rack,

    /// <summary>What happens to a simulated rack, and what must hold.</summary>
    Scenario,

    /// <summary>What is ordered, for a plan.</summary>
    Orders,

    /// <summary>What crops need and give, for a plan.</summary>
    Crops,
}

/// <summary>Tells the files of the product apart, so that the one in the place of the other is named and not picked to
/// pieces.</summary>
public static class FileRecognition
{
    /// <summary>What a file means to be; null where it looks like nothing, or is no text in YAML.</summary>
    /// <param name="path">Its path.</param>
    public static PlainFile? KindOf(string path)
    {
        var complaints = new Complaints(path);
        return TextFile.Read(path, complaints, out var text) == TextFileOutcome.Read && YamlText.Read(text, complaints) is { } root
            ? KindOf(root)
            : null;
    }

    /// <summary>What a file means to be; null where it looks like nothing.</summary>
    /// <param name="root">The file's mapping.</param>
    public static PlainFile? KindOf(MappingNode root)
    {
        ArgumentNullException.ThrowIfNull(root);
        var isOfOrders = root.Has("standing") || root.Has("dated") || root.Has("work-days");
        return root.Has("rack-file") || root.Has("expect") ? PlainFile.Scenario
            : root.Has("circuits") || (root.Has("racks") && !isOfOrders) ? PlainFile.Rack
            : isOfOrders ? PlainFile.Orders
            : root.Has("crops") ? PlainFile.Crops
            : null;
    }
}
