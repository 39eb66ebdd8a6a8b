using RackController.Control;

namespace RackController.Conventions.Docs;

/// <summary>Whoever is given one row of the table finds its tests and its page by its id.</summary>
public sealed class CauseAndEffectTests
{
    public static TheoryData<string> Rows => [.. CauseAndEffectTable.Rows.Select(row => row.Id)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void ARowHasATestByItsId(string id) => Assert.True(
        Repository.SourceFiles
            .Where(file => file.StartsWith("tests/RackController.Control.Tests/", StringComparison.Ordinal))
            .Select(Repository.Read)
            .Any(text => text.Contains($"/{id}\"", StringComparison.Ordinal) || text.Contains($"\"{id}\"", StringComparison.Ordinal)),
        $"no test in tests/RackController.Control.Tests names \"{id}\" or the key of its alarm, \"PLACE/{id}\"");

    [Fact]
    public void NoTwoRowsShareAnId() =>
        Assert.Equal(CauseAndEffectTable.Rows.Length, CauseAndEffectTable.Rows.Select(row => row.Id).Distinct().Count());
}
