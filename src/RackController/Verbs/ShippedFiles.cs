namespace RackController.Verbs;

/// <summary>Files that come with the program.</summary>
internal static class ShippedFiles
{
    private const string CropsName = "crops.yaml";

    /// <summary>The crops file: the grower's own beside the rack file, else the one that came with the program.</summary>
    /// <param name="rackFile">The path of the rack file.</param>
    public static string Crops(string rackFile)
    {
        var own = Path.Combine(Path.GetDirectoryName(rackFile) ?? "", CropsName);
        return File.Exists(own) ? own : Path.Combine(AppContext.BaseDirectory, "config", CropsName);
    }
}
