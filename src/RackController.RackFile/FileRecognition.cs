using RackController.RackFile.Binding;

namespace RackController.RackFile;

/// <summary>Tells the files of the product apart, so that the one in the place of the other is named and not picked to
/// pieces.</summary>
public static class FileRecognition
{
    /// <summary>Whether a file means to be a rack file: it has racks or circuits, and orders nothing.</summary>
    /// <param name="root">The file's mapping.</param>
    public static bool LooksLikeARackFile(MappingNode root) => root.Has("circuits") || (root.Has("racks") && !LooksLikeOrders(root));

    /// <summary>Whether a file means to be an orders file: it names orders or days of work.</summary>
    /// <param name="root">The file's mapping.</param>
    public static bool LooksLikeOrders(MappingNode root) => root.Has("standing") || root.Has("dated") || root.Has("work-days");

    /// <summary>Whether a file means to be a scenario: it names a rack file, or says what is expected.</summary>
    /// <param name="root">The file's mapping.</param>
    public static bool LooksLikeAScenario(MappingNode root) => root.Has("rack-file") || root.Has("expect");
}
