using Xunit.Abstractions;

namespace RackController.Conventions.Sizes;

public sealed class SizeTests(ITestOutputHelper output)
{
    private const int LongestFile = 300;
    private const int LongestMethod = 60;
    private const int LongestLine = 140; // As .editorconfig says to editors.

    // Files that may be longer than the limit, each with its own. The list can only shrink: a limit is lowered with the
    // file and its line removed with the last excess.
    private static readonly Dictionary<string, int> LongFiles = [];

    [Fact]
    public void NoFileIsLongerThanAPersonReadsInOneGo()
    {
        Verdict.None($"A source file has at most {LongestFile} lines; split it by idea:",
            from file in Repository.SourceFiles
            let lines = Repository.Lines(file).Length
            where lines > LongFiles.GetValueOrDefault(file, LongestFile)
            select $"{file}: {lines} lines");
    }

    [Fact]
    public void AnExceptionForALongFileIsNoLargerThanItMustBe()
    {
        Verdict.None("Lower the limit in LongFiles to the file's length, or remove it:",
            from entry in LongFiles
            let lines = Repository.Has(entry.Key) ? Repository.Lines(entry.Key).Length : 0
            where lines < entry.Value
            select $"{entry.Key}: allowed {entry.Value}, has {lines}");
    }

    [Fact]
    public void NoMethodIsLongerThanAScreen()
    {
        Verdict.None($"A method has at most {LongestMethod} lines:",
            from method in Syntax.Methods
            where method.Lines > LongestMethod
            select $"{method.File}: {method.Name} has {method.Lines} lines");
    }

    [Fact]
    public void NoLineIsWiderThanTwoFitSideBySide()
    {
        Verdict.None($"A line has at most {LongestLine} characters:",
            from file in Repository.SourceFiles
            from line in Repository.Lines(file).Index()
            where line.Item.Length > LongestLine
            select $"{file}:{line.Index + 1}: {line.Item.Length} characters");
    }

    [Theory]
    [InlineData("Model")]
    [InlineData("Control")]
    [InlineData("Plant")]
    public void TheRoomsThatDecideAreMadeOfSmallFiles(string room)
    {
        var lengths = Repository.SourceFiles
            .Where(file => file.StartsWith($"src/RackController.{room}/", StringComparison.Ordinal))
            .Select(file => Repository.Lines(file).Length)
            .Order()
            .ToList();
        var median = lengths[lengths.Count / 2];
        var ninetieth = lengths[lengths.Count * 9 / 10];
        output.WriteLine($"{room}: {lengths.Count} files, median {median} lines, 90th percentile {ninetieth}, longest {lengths[^1]}");
        Assert.True(median <= 60, $"{room}: half of its files have more than {median} lines; 60 is the bar");
        Assert.True(ninetieth <= 150, $"{room}: a tenth of its files have more than {ninetieth} lines; 150 is the bar");
    }
}
