namespace RackController.Page.Tests;

public sealed class TextChangesTests
{
    [Fact]
    public void OnlyLinesThatComeOrGoAreNamed() => Assert.Equal<ChangedLine>(
        [new ChangedLine(false, 1, "b"), new ChangedLine(true, 2, "B"), new ChangedLine(true, 4, "d")],
        TextChanges.Between("a\nb\nc", "a\nB\nc\nd"));

    [Fact]
    public void ATextChangesNothingOfItself() => Assert.Empty(TextChanges.Between("a\nb\n", "a\nb\n"));
}
