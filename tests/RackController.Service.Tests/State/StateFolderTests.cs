using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Service.Tests;

public sealed class StateFolderTests
{
    private static readonly GpioIo Board = new(ImmutableArray<RelayLine>.Empty, ImmutableArray<ContactLine>.Empty);

    [Fact]
    public void WhatThePersonAsksForIsUsedAsItIs() =>
        Assert.Equal("/var/tmp/rack", StateFolder.Choose("/var/tmp/rack", "rack.yaml", new SimulatedIo(), isFast: true).Path);

    [Fact]
    public void SimulatedRacksAreKeptApartFromRealOnesAndFromEachOther()
    {
        string[] paths =
        [
            StateFolder.Choose(null, "rack.yaml", Board, isFast: false).Path,
            StateFolder.Choose(null, "rack.yaml", new SimulatedIo(), isFast: false).Path,
            StateFolder.Choose(null, "rack.yaml", new SimulatedIo(), isFast: true).Path,
            StateFolder.Choose(null, "other.yaml", new SimulatedIo(), isFast: false).Path,
        ];

        Assert.Distinct(paths);
    }

    // The package makes the folder; where it is not installed nobody is led to it.
    [Fact]
    public void WhoAsksAboutTheRackFileOfTheServiceIsLedToTheFolderOfTheService()
    {
        var folder = StateFolder.OfDriver(null, "/etc/rackcontroller/rack.yaml", Board);

        Assert.Equal(Directory.Exists("/var/lib/rackcontroller"), folder.IsOfService);
        Assert.False(StateFolder.OfDriver(null, "/etc/rackcontroller.yaml", Board).IsOfService);
        Assert.Equal("/var/tmp/rack", StateFolder.OfDriver("/var/tmp/rack", "/etc/rackcontroller/rack.yaml", Board).Path);
    }
}
