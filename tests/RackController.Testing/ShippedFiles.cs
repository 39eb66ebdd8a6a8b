namespace RackController.Testing;

/// <summary>Files of the repository that tests read, found from wherever the tests run.</summary>
public static class ShippedFiles
{
    /// <summary>The whole path of a file or folder of the repository.</summary>
    /// <param name="path">Its path below the repository's root.</param>
    public static string PathTo(string path)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "RackController.sln")))
            {
                return Path.Combine(folder.FullName, path);
            }
        }

        throw new DirectoryNotFoundException("the tests run outside the repository");
    }
}
