namespace RackController.Model.Tests;

/// <summary>Factors and worked values of NIST Special Publication 811 (2008), appendix B.8, from memory, and of the common conversion
/// tables that rest on it.</summary>
public sealed class ShownUnitsTests
{
    [Theory]
    [InlineData("mm", 25.4, 1)]
    [InlineData("L", 3.785412, 1)]
    [InlineData("L/min", 37.85412, 10)]
    [InlineData("°C", 100, 212)]
    [InlineData("°C", -40, -40)]
    public void UsCustomaryUnitsAreThoseOfTheTables(string unit, double value, double shown) =>
        Assert.Equal(shown, ShownUnits.UsCustomary.Of(unit).From(value), 5);

    [Theory]
    [InlineData("mm", "205 mm", "8.1 in")]
    [InlineData("L", "205 L", "54.2 gal")]
    [InlineData("L/min", "205 L/min", "54.2 gal/min")]
    [InlineData("°C", "205 °C", "401 °F")]
    [InlineData("A", "205 A", "205 A")]
    [InlineData("%", "205 %", "205 %")]
    public void AFigureIsSaidInTheUnitThatWasChosen(string unit, string metric, string us)
    {
        Assert.Equal(metric, ShownUnits.Metric.Of(unit).Words(205, 0));
        Assert.Equal(us, ShownUnits.UsCustomary.Of(unit).Words(205, 0));
    }

    [Theory]
    [InlineData(26, "26 °C", "78.8 °F")]
    [InlineData(32.5, "32.5 °C", "90.5 °F")]
    [InlineData(30, "30 °C", "86 °F")]
    public void ALimitHasNoZerosAtItsEnd(double degreesC, string metric, string us)
    {
        Assert.Equal(metric, ShownUnits.Metric.Of("°C").Limit(degreesC));
        Assert.Equal(us, ShownUnits.UsCustomary.Of("°C").Limit(degreesC));
    }
}
