namespace RackController.Conventions.Docs;

/// <summary>The judge of the pages' commands is itself held to what it should accept and refuse.</summary>
public sealed class ShownCommandTests
{
    private static readonly string[] Printed = ["north", "  pump off", "  light on", "south", "  pump off"];

    [Theory]
    [InlineData("north|  pump off|  light on|south|  pump off")]
    [InlineData("north|  pump off|...")]
    [InlineData("...|south|  pump off")]
    [InlineData("north|...|south")]
    [InlineData("...")]
    public void WhatIsPrintedMayBeShownInPart(string shown) => Assert.Null(Show(shown).FirstLineMissingFrom(Printed));

    [Theory]
    [InlineData("north|  light on", "  light on")]
    [InlineData("...|south|  pump on", "  pump on")]
    [InlineData("...|south|...|north", "north")]
    [InlineData("pump off", "pump off")]
    public void WhatIsNotPrintedThereIsFound(string shown, string missing) =>
        Assert.Equal(missing, Show(shown).FirstLineMissingFrom(Printed));

    [Fact]
    public void TheProgramsArgumentsFollowTheTwoHyphens()
    {
        var command = new ShownCommand("page", "dotnet run --project src/RackController -- day rack.yaml --date 2026-03-29", []);
        Assert.True(command.RunsTheProgram);
        Assert.Equal(["day", "rack.yaml", "--date", "2026-03-29"], command.Arguments);
    }

    [Fact]
    public void AnotherProgramIsNotRun() => Assert.False(new ShownCommand("page", "rm -r out", []).RunsTheProgram);

    private static ShownCommand Show(string lines) => new("page", "", lines.Split('|'));
}
