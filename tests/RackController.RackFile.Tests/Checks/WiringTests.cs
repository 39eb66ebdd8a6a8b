using NodaTime;
using RackController.Model;

namespace RackController.RackFile.Tests.Checks;

public sealed class WiringTests
{
    private const string Wired = """
        site: test cellar
        zone: America/New_York
        circuits:
          - name: sockets
            voltage: 120 V
            breaker: 15 A
            sensors: { supply-sense: { line: 10 } }
        racks:
          - name: north
            reservoir: { volume: 160 L, depth: 400 mm }
            pump: { rated: { flow: 30 L/min, head: 2.5 m }, power: 45 W, line: 0 }
            aerator: { power: 5 W, line: 1, active: high }
            sensors:
              low-float: { height: 60 mm, line: 11, debounce: 20 ms }
              leak-rope: { line: 12, active: high }
            tiers:
              - light: { power: 80 W, ppfd: 180 umol/m2/s, line: 2, chip: relay-bank }
            schedule:
              lights: { on: 06:00, for: 16 h }
            drip-tray: 60 L
            wired: { float-cutout: 15 mm }
        io:
          gpio: { chip: test-bank, relays-active: low }
        """;

    [Fact]
    public void LinesAreTakenFromTheFileAndTheRestFromTheIoSection()
    {
        var io = Assert.IsType<GpioIo>(Expect.Site(Wired).Io);

        Assert.Equal(
            (RelayLine[])[
                new RelayLine(new LoadId(0), new GpioLine("test-bank", 0), ActiveLow: true),
                new RelayLine(new LoadId(1), new GpioLine("test-bank", 1), ActiveLow: false),
                new RelayLine(new LoadId(2), new GpioLine("relay-bank", 2), ActiveLow: true),
            ],
            io.Relays.ToArray());
        Assert.Equal(
            (ContactLine[])[
                new ContactLine(new SensorId(0), new GpioLine("test-bank", 10), true, LinePull.Up, Duration.FromMilliseconds(50)),
                new ContactLine(new SensorId(1), new GpioLine("test-bank", 11), true, LinePull.Up, Duration.FromMilliseconds(20)),
                new ContactLine(new SensorId(2), new GpioLine("test-bank", 12), false, LinePull.Up,
                Duration.FromMilliseconds(50)),
            ],
            io.Contacts.ToArray());
    }

    [Fact]
    public void AContactorIsAnOutputLikeARelay()
    {
        const string Sense = "sensors: { supply-sense: { line: 10 } }";
        var wired = Wired.Replace("low-float:", "pump-current: yes\n      low-float:", StringComparison.Ordinal);
        var site = Expect.Site(
            wired.Replace(Sense, Sense + "\n    upstream-contactor: { line: 20, active: high }", StringComparison.Ordinal));
        Assert.True(site.Circuits[0].HasUpstreamContactor);
        Assert.Equal("sockets/contactor", site.Circuits[0].ContactorName);
        Assert.Equal(
            [new ContactorLine(new CircuitId(0), new GpioLine("test-bank", 20), ActiveLow: false)],
            Assert.IsType<GpioIo>(site.Io).Contactors.ToArray());
        Expect.Among(
            wired.Replace(Sense, Sense + "\n    upstream-contactor: yes", StringComparison.Ordinal),
            "sockets/contactor has no line, and the I/O is gpio");
        Expect.Among(
            wired.Replace(Sense, Sense + "\n    upstream-contactor: { line: 2, chip: relay-bank }", StringComparison.Ordinal),
            "is on line 2, where");
    }

    [Theory]
    [InlineData("line: 1,", "line: 0,", "12:34: north/aerator is on line 0, where north/pump is already")]
    [InlineData("line: 11,", "line: 0,", "north/reservoir low float is on line 0, where north/pump is already")]
    [InlineData("power: 45 W, line: 0", "power: 45 W", "north/pump has no line, and the I/O is gpio")]
    [InlineData("{ height: 60 mm, line: 11, debounce: 20 ms }", "60 mm",
        "north/reservoir low float has no line, and the I/O is gpio")]
    [InlineData("relays-active: low", "contacts-pull: up", "gpio lacks `relays-active`")]
    [InlineData("line: 12, active: high", "line: 12", "warning: a broken wire to north/leak rope reads dry")]
    [InlineData("line: 12, active: high", "line: 12, active: high, pull: down", "warning: a broken wire to north/leak rope reads dry")]
    [InlineData("line: 12, active: high", "line: 12, active: high, pull: none",
        "warning: nothing holds the line of north/leak rope where its wire is broken")]
    [InlineData("line: 11,", "line: 11, active: high,", "warning: a broken wire to north/reservoir low float reads as if there were water")]
    [InlineData("line: 11,", "line: 11, pull: down,", "warning: a broken wire to north/reservoir low float reads as if there were water")]
    [InlineData("{ line: 10 }", "{ line: 10, active: high }",
        "warning: a broken wire to sockets/supply sense reads as if there were a supply")]
    [InlineData("leak-rope:", "water-temperature: yes\n      leak-rope:", "warning: nothing says how north/water temperature is read")]
    [InlineData("  gpio: {", "  simulated: simulated\n  gpio: {", "not one place for the relays")]
    public void EveryRelayAndContactHasALineOfItsOwn(string old, string replacement, string expected)
    {
        Assert.Contains(old, Wired, StringComparison.Ordinal);
        Expect.Complaint(Wired.Replace(old, replacement, StringComparison.Ordinal), expected);
    }

    // As hardware-notes have it: closed while all is well, to ground, with the pull up.
    [Fact]
    public void ContactsWhoseBrokenWireReadsAsTroubleAreNotComplainedOf() =>
        Assert.DoesNotContain(RackFileReader.Parse(Wired, "rack.yaml").Complaints, complaint => complaint.What.Contains("wire"));

    [Theory]
    [InlineData("power: 45 W, line: 0", "power: 45 W, line: 0, chip: bank", "north/pump is on bank, which keeps its last level")]
    [InlineData("line: 1, active: high", "line: 1, chip: bnak, active: high",
        "north/aerator is on a chip `bnak`, and there is no such part: did you mean `bank`?")]
    public void ARelayOnABusIsWhereItMayBe(string old, string replacement, string expected) => Expect.Complaint(
        Wired.Replace("relays-active: low }", "relays-active: low, parts: [{ name: bank, kind: mcp23017 }] }", StringComparison.Ordinal)
            .Replace(old, replacement, StringComparison.Ordinal),
        expected);

    [Fact]
    public void TwoLoadsOnOneRelayChannelAreRefusedOnASimulatedRackToo() => Expect.Complaint(
        RackFiles.SmallWith("aerator: { power: 5 W }", "aerator: { power: 5 W, line: 3 }")
            .Replace("- power: 12 W", "- { power: 12 W, line: 3 }", StringComparison.Ordinal),
        "north/fan is on line 3, where north/aerator is already");

    [Fact]
    public void AHeartbeatHasALineOfItsOwn()
    {
        var wired = Wired.Replace("relays-active: low }", "relays-active: low, heartbeat: 7 }", StringComparison.Ordinal);
        Assert.Equal(new GpioLine("test-bank", 7), Assert.IsType<GpioIo>(Expect.Site(wired).Io).Heartbeat);
        Expect.Complaint(
            wired.Replace("heartbeat: 7", "heartbeat: 1", StringComparison.Ordinal),
            "the heartbeat is on line 1, where north/aerator is already");
    }

    [Theory]
    [InlineData("GPIO17", "GPIO17")]
    [InlineData("\"GPIO17\"", "GPIO17")]
    [InlineData("PIN 3", "PIN 3")]
    [InlineData("\"[SDA1]\"", "[SDA1]")]
    public void ALineMayBeCalledByItsName(string written, string name) => Assert.Equal(
        GpioLine.Named("test-bank", name),
        Assert.IsType<GpioIo>(Expect.Site(Wired.Replace("line: 0 }", $"line: {written} }}", StringComparison.Ordinal)).Io)
            .Relays[0].Line);

    // What digits mean does not hang on quotes, since the reader does not see them.
    [Theory]
    [InlineData("line: 0 }", "line: \"3\" }", "test-bank", 3)]
    [InlineData("chip: test-bank,", "chip: 0,", "/dev/gpiochip0", 0)]
    [InlineData("chip: test-bank,", "chip: \"012\",", "/dev/gpiochip12", 0)]
    [InlineData("line: 0 }", "line: 0, chip: 4 }", "/dev/gpiochip4", 0)]
    public void AChipMayBeCalledByItsNumber(string old, string replacement, string chip, int offset) => Assert.Equal(
        new GpioLine(chip, offset),
        Assert.IsType<GpioIo>(Expect.Site(Wired.Replace(old, replacement, StringComparison.Ordinal)).Io).Relays[0].Line);

    [Theory]
    [InlineData("line: 0 }", "line: 1024 }", "`line` is `1024`, out of range: write a line's offset, a whole number from 0")]
    [InlineData("line: 0 }", "line: -1 }", "`line` is `-1`, out of range")]
    [InlineData("line: 0 }", "line: 1.5 }", "`line` is `1.5`, not a whole number")]
    [InlineData("line: 0 }", "line: ABCDEFGHIJKLMNOPQRSTUVWXYZABCDEF }", "longer than any name that the kernel gives")]
    [InlineData("line: 0 }", "line: ~ }", "`line` is")]
    [InlineData("chip: test-bank,", "chip: 1000,", "`chip` is `1000`, no number of a chip: write a chip's label")]
    [InlineData("chip: test-bank,", "chip: \"a`b\",", "with a letter that cannot stand there")]
    public void WhatIsNoLineAndNoChipIsRefused(string old, string replacement, string expected) =>
        Expect.Among(Wired.Replace(old, replacement, StringComparison.Ordinal), expected);

    [Fact]
    public void ANameIsGivenOnce() => Expect.Complaint(
        Wired.Replace("line: 0 }", "line: GPIO17 }", StringComparison.Ordinal)
            .Replace("line: 1,", "line: GPIO17,", StringComparison.Ordinal),
        "north/aerator is on line GPIO17, where north/pump is already");

    [Fact]
    public void TheSameLineOfTheSameChipIsSharedHoweverTheChipIsNamed() => Expect.Complaint(
        Wired.Replace("line: 1,", "line: 0, chip: test-bank,", StringComparison.Ordinal),
        "north/aerator is on line 0, where north/pump is already");
}
