namespace RackController.Bench;

/// <summary>What draws the charts of reports, for whoever draws others.</summary>
public static class ReportCharts
{
    /// <summary>The name of the library among the pieces of pages.</summary>
    internal const string Library = "plotly-basic.js";

    /// <summary>Opens the library, a script in UTF-8.</summary>
    /// <exception cref="InvalidOperationException">The program was built without it.</exception>
    public static Stream OpenLibrary() => PageFiles.Open(Library);
}
