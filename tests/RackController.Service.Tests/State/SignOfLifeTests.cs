using NodaTime;
using RackController.Model;

namespace RackController.Service.Tests;

public sealed class SignOfLifeTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    private MonotonicTime now = MonotonicTime.Zero + Duration.FromHours(3);

    public void Dispose() => folder.Dispose();

    [Fact]
    public void ASignGrowsOldAndIsFreshAgainWithTheNext()
    {
        var sign = At("alive");
        Assert.Null(sign.Age);

        Assert.Null(sign.Give());
        now += Duration.FromSeconds(30);
        Assert.Equal(Duration.FromSeconds(30), sign.Age);
        Assert.True(sign.IsFresh);

        now += Duration.FromSeconds(30);
        Assert.False(sign.IsFresh);

        Assert.Null(sign.Give());
        Assert.True(sign.IsFresh);
    }

    [Fact]
    public void ASignFromBeforeTheMachineStartedIsNone()
    {
        var sign = At("alive");
        Assert.Null(sign.Give());
        now = MonotonicTime.Zero + Duration.FromSeconds(5);

        Assert.Null(sign.Age);
    }

    [Theory]
    [InlineData("")]
    [InlineData("hello")]
    public void WhatMakesNoSenseIsNoSign(string text)
    {
        File.WriteAllText(folder.File("alive"), text);

        Assert.False(At("alive").IsFresh);
    }

    [Fact]
    public void WhereNoSignCanBeGivenThatIsSaidAndNothingElseHappens()
    {
        var sign = At("not-there/alive");

        Assert.NotNull(sign.Give());
        Assert.Null(sign.Age);
        Assert.False(Directory.Exists(folder.File("not-there")));
    }

    private SignOfLife At(string name) => new(folder.File(name), () => now);
}
