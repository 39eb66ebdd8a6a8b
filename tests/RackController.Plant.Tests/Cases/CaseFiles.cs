using System.Text.Json;

namespace RackController.Plant.Tests;

/// <summary>The reference cases of one kind, from every file of the folder whose name begins with it.</summary>
internal static class CaseFiles
{
    private static readonly JsonSerializerOptions Web = new(JsonSerializerDefaults.Web);

    /// <summary>Every case by its key: the file's name and its own.</summary>
    /// <param name="kind">How the files' names begin, such as <c>tray</c>.</param>
    /// <param name="nameOf">The name of a case.</param>
    public static Dictionary<string, T> Read<T>(string kind, Func<T, string> nameOf)
    {
        var cases = new Dictionary<string, T>();
        foreach (var file in Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Cases"), $"{kind}-*.json").Order())
        {
            using var stream = File.OpenRead(file);
            foreach (var one in JsonSerializer.Deserialize<CaseFile<T>>(stream, Web)!.Cases)
            {
                cases.Add($"{Path.GetFileNameWithoutExtension(file)}: {nameOf(one)}", one);
            }
        }

        return cases;
    }

    private sealed record CaseFile<T>(T[] Cases);
}
