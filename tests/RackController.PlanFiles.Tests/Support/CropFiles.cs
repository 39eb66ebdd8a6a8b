namespace RackController.PlanFiles.Tests;

/// <summary>A crops file of a test.</summary>
internal static class CropFiles
{
    /// <summary>Reads a text as one.</summary>
    public static CropsReading Read(string text)
    {
        var path = Path.GetTempFileName();
        try
        {
            File.WriteAllText(path, text);
            return CropsReader.Read(path);
        }
        finally
        {
            File.Delete(path);
        }
    }
}
