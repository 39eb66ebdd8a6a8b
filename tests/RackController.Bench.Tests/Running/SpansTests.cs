using NodaTime;

namespace RackController.Bench.Tests.Running;

public sealed class SpansTests
{
    [Theory]
    [InlineData(0.25, "250 ms")]
    [InlineData(1.5, "1.5 s")]
    [InlineData(60, "1 min")]
    [InlineData(600.2, "10 min")]
    [InlineData(3599.9, "1 h")]
    [InlineData(57_599, "16 h")]
    [InlineData(57_630, "16 h")]
    [InlineData(5400, "1 h 30 min")]
    [InlineData(86_399, "1 d")]
    [InlineData(604_800, "7 d")]
    public void ALengthIsSaidInItsTwoMostTellingUnits(double seconds, string words) =>
        Assert.Equal(words, Spans.Words(Duration.FromSeconds(seconds)));
}
