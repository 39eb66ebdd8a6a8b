namespace RackController.Fuzz;

/// <summary>Reads inputs that are files: the corpus, and what a fuzzer found.</summary>
internal static class Files
{
    /// <summary>Reads each and says what its defect is.</summary>
    /// <returns>How many had one, at most 100.</returns>
    public static int Read(Target target, string[] files)
    {
        var defects = 0;
        foreach (var file in files)
        {
            try
            {
                target.Read(File.ReadAllBytes(file));
            }
            catch (Exception defect)
            {
                defects++;
                Console.WriteLine($"{target.Name} {file}: {defect.GetType().Name}: {defect.Message}");
                Console.WriteLine(string.Join('\n', (defect.StackTrace ?? "").Split('\n').Take(4)));
            }
        }

        return Math.Min(defects, 100);
    }
}
