namespace RackController.Conventions;

/// <summary>Fails with every finding at once, one a line, so that a person mends them in one go.</summary>
internal static class Verdict
{
    /// <summary>Passes when nothing was found.</summary>
    /// <param name="rule">What was expected, and what to do about a finding.</param>
    /// <param name="findings">Where it does not hold.</param>
    public static void None(string rule, IEnumerable<string> findings)
    {
        var all = findings.ToList();
        Assert.True(all.Count == 0, $"{rule}{string.Concat(all.Select(finding => $"\n  {finding}"))}");
    }
}
