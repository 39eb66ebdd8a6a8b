namespace RackController.Fuzz;

/// <summary>Finds files of the repository that the program was built in, or was called in.</summary>
internal static class Repository
{
    /// <summary>The full path of a file.</summary>
    /// <param name="path">As seen from the root of the repository.</param>
    public static string File(string path) => Path.Combine(Root(), path);

    private static string Root()
    {
        for (var folder = Environment.CurrentDirectory; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            if (System.IO.File.Exists(Path.Combine(folder, "RackController.sln")))
            {
                return folder;
            }
        }

        throw new DefectException("call it from within the repository");
    }
}
