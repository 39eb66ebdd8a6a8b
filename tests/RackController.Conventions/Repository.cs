namespace RackController.Conventions;

/// <summary>The checked-out files that these tests look at: everything but what a build or a run leaves behind.</summary>
internal static class Repository
{
    private static readonly string[] LeftBehind =
        [".git", ".vs", ".idea", "bin", "obj", "artifacts", "out", "TestResults", "node_modules"];

    private static readonly string[] BinaryEndings = [".png", ".ico", ".db"];

    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>Debug or Release: whichever these tests were built as, the program was too.</summary>
    public static string Configuration { get; } =
        new DirectoryInfo(AppContext.BaseDirectory).Parent?.Name ?? throw new DirectoryNotFoundException("the build's folder");

    /// <summary>Every text file, by its path from <see cref="Root"/> with forward slashes, in order.</summary>
    public static IReadOnlyList<string> TextFiles { get; } = [.. FilesBelow(Root).Order(StringComparer.Ordinal)];

    /// <summary>The C# files of the product and its tests.</summary>
    public static IEnumerable<string> SourceFiles => TextFiles.Where(file => file.EndsWith(".cs", StringComparison.Ordinal));

    /// <summary>The Markdown pages.</summary>
    public static IEnumerable<string> Pages => TextFiles.Where(file => file.EndsWith(".md", StringComparison.Ordinal));

    /// <summary>The project files.</summary>
    public static IEnumerable<string> Projects => TextFiles.Where(file => file.EndsWith(".csproj", StringComparison.Ordinal));

    public static string Read(string file) => File.ReadAllText(PathOf(file));

    public static string[] Lines(string file) => File.ReadAllLines(PathOf(file));

    public static bool Has(string path) => File.Exists(PathOf(path)) || Directory.Exists(PathOf(path));

    public static string PathOf(string file) => Path.Combine(Root, file);

    private static IEnumerable<string> FilesBelow(string folder)
    {
        foreach (var file in Directory.EnumerateFiles(folder))
        {
            if (!BinaryEndings.Contains(Path.GetExtension(file)) && Path.GetFileName(file) != ".git")
            {
                yield return Path.GetRelativePath(Root, file).Replace('\\', '/');
            }
        }

        foreach (var below in Directory.EnumerateDirectories(folder))
        {
            if (!LeftBehind.Contains(Path.GetFileName(below)))
            {
                foreach (var file in FilesBelow(below))
                {
                    yield return file;
                }
            }
        }
    }

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "RackController.sln")))
        {
            folder = folder.Parent ?? throw new DirectoryNotFoundException("RackController.sln is in no folder above the tests");
        }

        return folder.FullName;
    }
}
