namespace RackController.RackFile.Tests;

/// <summary>Finds the files of the repository.</summary>
internal static class Files
{
    /// <summary>Path of a file in the config folder.</summary>
    public static string Config(string name) => Path.Combine(Root, "config", name);

    private static string Root
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (!File.Exists(Path.Combine(folder.FullName, "RackController.sln")))
            {
                folder = folder.Parent!;
            }

            return folder.FullName;
        }
    }
}
