using RackController.Control;

namespace RackController.Conventions.Docs;

/// <summary>Whoever is given one row of the table finds its tests and its page by its id.</summary>
public sealed class CauseAndEffectTests
{
    public static TheoryData<string> Rows => [.. CauseAndEffectTable.Rows.Select(row => row.Id)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void ARowHasATestByItsName(string id)
    {
        var tests = Repository.SourceFiles.Where(file => file.StartsWith("tests/RackController.Control.Tests/", StringComparison.Ordinal));
        var className = string.Concat(id.Split('-').Select(word => char.ToUpperInvariant(word[0]) + word[1..]));
        Assert.True(
            tests.Any(file => file.EndsWith($"/{className}Tests.cs", StringComparison.Ordinal)
                || Repository.Read(file).Contains($"{id}\"", StringComparison.Ordinal)),
            $"tests/RackController.Control.Tests has neither {className}Tests.cs nor a test that names \"{id}\" or the key PLACE/{id}");
    }

    [Fact]
    public void NoTwoRowsShareAnId() =>
        Assert.Equal(CauseAndEffectTable.Rows.Length, CauseAndEffectTable.Rows.Select(row => row.Id).Distinct().Count());
}
