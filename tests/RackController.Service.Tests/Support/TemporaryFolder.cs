namespace RackController.Service.Tests;

/// <summary>A folder for one test, gone after it.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("rackcontroller-test-");

    public string Path => folder.FullName;

    public string File(string name) => System.IO.Path.Combine(Path, name);

    public void Dispose() => folder.Delete(recursive: true);
}
