namespace RackController.Model.Tests;

public class InvariantTests
{
    [Fact]
    public void WhatHoldsIsPassedOver()
    {
        var exception = Record.Exception(() => Invariant.Holds(true, "one is one"));
        Assert.Null(exception);
    }

    [Fact]
    public void WhatDoesNotHoldIsNamedInEveryBuild()
    {
        var broken = Assert.Throws<InvariantBrokenException>(() => Invariant.Holds(false, "a forbidden load is off"));
        Assert.Equal("a forbidden load is off", broken.Message);
    }
}
