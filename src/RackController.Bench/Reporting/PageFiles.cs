using System.Text;

namespace RackController.Bench;

/// <summary>The pieces of pages that travel inside the program.</summary>
internal static class PageFiles
{
    /// <summary>Reads one.</summary>
    /// <param name="name">Its file name.</param>
    /// <exception cref="InvalidOperationException">The program was built without it.</exception>
    public static string Read(string name)
    {
        using var reader = new StreamReader(Open(name), Encoding.UTF8);
        return reader.ReadToEnd();
    }

    /// <summary>Opens one.</summary>
    /// <param name="name">Its file name.</param>
    /// <exception cref="InvalidOperationException">The program was built without it.</exception>
    public static Stream Open(string name) => typeof(PageFiles).Assembly.GetManifestResourceStream(name)
        ?? throw new InvalidOperationException($"the page file {name} is missing from the program");
}
