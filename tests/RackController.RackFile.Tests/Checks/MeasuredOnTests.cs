using NodaTime;

namespace RackController.RackFile.Tests;

/// <summary>A day to come, of which nothing can have been measured.</summary>
public sealed class MeasuredOnTests
{
    private static readonly string text = File.ReadAllText(Files.Config("demo-full-floats.yaml"));
    private static readonly LocalDate on = RackFileReader.Parse(text, "rack.yaml").Site!.Racks[0].Measured!.On;

    [Fact]
    public void WhoeverJudgesTheFileRefusesItWithItsPlace()
    {
        var read = RackFileReader.Parse(text, "rack.yaml", _ => on.PlusDays(-1));

        var complaint = Assert.Single(read.Complaints);
        Assert.Null(read.Site);
        Assert.StartsWith($"`on` is {on:uuuu-MM-dd}, a day to come: today is {on.PlusDays(-1):uuuu-MM-dd} by", complaint.What);
        Assert.StartsWith("      on: ", text.Split('\n')[complaint.Line - 1], StringComparison.Ordinal);
    }

    [Fact]
    public void TheDayItselfHasBeen() => Assert.NotNull(RackFileReader.Parse(text, "rack.yaml", _ => on).Site);

    // A board without a clock that is right thinks that it is 1970, and drives its racks.
    [Fact]
    public void WhoeverGoesByTheFileAsksNoClock() => Assert.NotNull(RackFileReader.Parse(text, "rack.yaml").Site);
}
