using RackController.Model;

namespace RackController.RackFile.Tests.Checks;

public sealed class ProbeTests
{
    private const string Wired = """
        site: test cellar
        zone: America/New_York
        circuits:
          - name: sockets
            voltage: 120 V
            breaker: 15 A
            sensors:
              supply-sense: { line: 10 }
              current: { part: tank, input: 1, points: [{ at: 0 V, is: 0 A }, { at: 1 V, is: 30 A }] }
        racks:
          - name: north
            reservoir: { volume: 160 L, depth: 400 mm }
            pump: { rated: { flow: 30 L/min, head: 2.5 m }, power: 45 W, line: 0 }
            aerator: { power: 5 W, line: 1 }
            sensors:
              low-float: { height: 60 mm, line: 11 }
              leak-rope: { line: 12, active: high }
              water-temperature: { one-wire: 28-0316a2794bff }
              air-temperature: { part: canopy }
              air-humidity: { part: canopy }
              reservoir-level: { part: tank, input: 0, points: [{ at: 0.5 V, is: 0 mm }, { at: 2.5 V, is: 400 mm }] }
            tiers:
              - light: { power: 80 W, ppfd: 180 umol/m2/s, line: 2 }
            schedule:
              lights: { on: 06:00, for: 16 h }
            drip-tray: 60 L
            wired: { float-cutout: 15 mm }
        io:
          gpio:
            chip: test-bank
            relays-active: low
            parts:
              - { name: canopy, kind: sht3x }
              - { name: tank, kind: ads1115, bus: 3, address: 0x49 }
        """;

    [Fact]
    public void APartIsNotCalledByANumberSinceThatIsAChip() => Expect.Among(
        WithExpander("power: 5 W, line: 15, chip: bank").Replace("name: bank", "name: 7", StringComparison.Ordinal),
        "a part is called 7, which as a relay's `chip` is a chip of the board: give it a name with a letter");

    [Fact]
    public void EachMeasuredValueIsReadFromThePartThatTheFileNames()
    {
        var site = Expect.Site(Wired);
        var probes = Assert.IsType<GpioIo>(site.Io).Probes.ToDictionary(probe => site[probe.Sensor].Name);
        var (canopy, tank) = (new BusPart("canopy", BusPartKind.Sht3x, 1, 0x44), new BusPart("tank", BusPartKind.Ads1115, 3, 0x49));
        Assert.Equal("28-0316a2794bff", Assert.IsType<OneWireProbe>(probes["north/water temperature"]).Code);
        Assert.Equal(canopy, Assert.IsType<PartProbe>(probes["north/air temperature"]).Part);
        Assert.Equal(canopy, Assert.IsType<PartProbe>(probes["north/air humidity"]).Part);
        var current = Assert.IsType<AnalogueProbe>(probes["sockets/current"]);
        Assert.Equal((tank, 1), (current.Part, current.Input));
        var level = Assert.IsType<AnalogueProbe>(probes["north/reservoir level"]);
        Assert.Equal<IEnumerable<CalibrationPoint>>([new(0.5, 0), new(2.5, 400)], level.Points);
        Assert.Equal(5, probes.Count);
    }

    [Theory]
    [InlineData("one-wire: 28-0316a2794bff", "fitted: yes", "warning: nothing says how north/water temperature is read")]
    [InlineData("one-wire: 28-0316a2794bff", "one-wire: 28-0316", "not the name of a 1-wire thermometer")]
    [InlineData("one-wire: 28-0316a2794bff", "one-wire: 28-0316a2794bff, part: tank", "north/water temperature is not read in one way")]
    [InlineData("one-wire: 28-0316a2794bff", "one-wire: 28-0316a2794bff, input: 2", "a 1-wire thermometer has neither")]
    [InlineData("air-temperature: { part: canopy }", "air-temperature: { part: canpy }", "the I/O section has no such part")]
    [InlineData("air-temperature: { part: canopy }", "air-temperature: { part: tank }", "read from tank, which cannot measure that")]
    [InlineData("part: tank, input: 0,", "part: canopy, input: 0,", "read from canopy, which cannot measure that")]
    [InlineData("part: tank, input: 0,", "part: tank,", "north/reservoir level lacks the input of tank")]
    [InlineData("[{ at: 0.5 V, is: 0 mm }, ", "[", "or two points that say what its voltages stand for")]
    [InlineData("at: 2.5 V", "at: 0.4 V", "the points of north/reservoir level do not rise in voltage")]
    [InlineData("at: 2.5 V, is: 400 mm", "at: 2.5 V, is: 3 A", "which is a current")]
    [InlineData("name: tank", "name: canopy", "a second part is called canopy")]
    [InlineData("kind: ads1115, bus: 3, address: 0x49", "kind: ads1115, address: 0x44", "at address 0x44 of bus 1, where canopy is")]
    [InlineData("address: 0x49", "address: 73", "not an address")]
    [InlineData("address: 0x49", "address: 0x03", "outside 0x08 to 0x77")]
    [InlineData("kind: sht3x", "kind: sht2x", "did you mean `sht3x`?")]
    public void WhatCannotBeReadSoIsRefused(string old, string replacement, string expected)
    {
        Assert.Contains(old, Wired, StringComparison.Ordinal);
        Expect.Among(Wired.Replace(old, replacement, StringComparison.Ordinal), expected);
    }

    [Fact]
    public void LightIsReadFromThePartThatMeasuresIt()
    {
        var lit = Lit("light-level: { part: eye }", ", ppfd-per-lux: 0.02");
        var site = Expect.Site(lit);
        var probe = Assert.IsType<PartProbe>(Assert.IsType<GpioIo>(site.Io).Probes[^1]);
        Assert.Equal(
            ("north/tier 1 light level", new BusPart("eye", BusPartKind.Bh1750, 1, 0x5c)), (site[probe.Sensor].Name, probe.Part));
        Assert.Equal(180 / 0.02, site.Racks[0].Tier(1).LitLux, 1e-9);
        Assert.Equal(180 / 0.015, Expect.Site(Lit("light-level: { part: eye }", "")).Racks[0].Tier(1).LitLux, 1e-9);
    }

    [Theory]
    [InlineData("light-level: { part: tank }", "", "read from tank, which cannot measure that: read light by a `bh1750`")]
    [InlineData("air-humidity: { part: eye }", "", "read from eye, which cannot measure that: read the air by an `sht3x`")]
    [InlineData("tray-level: { part: eye, input: 0 }", "", "read from eye, which cannot measure that: read it by an `ads1115`")]
    [InlineData("light-level: { part: eye, input: 1 }", "", "light level has no key `input`")]
    [InlineData("light-level: yes", ", ppfd-per-lux: 0", "`ppfd-per-lux` is `0`, out of range")]
    [InlineData("light-level: yes", "", "warning: nothing says how north/tier 1 light level is read")]
    public void LightIsReadFromNothingElse(string sensor, string lamp, string expected) => Expect.Among(Lit(sensor, lamp), expected);

    [Fact]
    public void LightWithoutALampToCompareItWithIsWarnedOf() => Expect.Among(
        Wired.Replace("light: { power: 80 W, ppfd: 180 umol/m2/s, line: 2 }", "sensors: { light-level: yes }", StringComparison.Ordinal),
        "warning: the light of tier 1 is measured, and there is no lamp to compare it with: give the tier a `light`");

    [Fact]
    public void AFlowMeterIsCountedOnALineOfTheBoard()
    {
        var site = Expect.Site(WithMeter("line: 20, pulses-per-litre: 450"));
        var meter = Assert.Single(Assert.IsType<GpioIo>(site.Io).Probes.OfType<PulseProbe>());
        Assert.Equal((new GpioLine("test-bank", 20), 450), (meter.Line, meter.PulsesPerL));
        Assert.Equal("north/pump flow", site[meter.Sensor].Name);
    }

    [Theory]
    [InlineData("line: 20", "north/pump flow lacks either the line of its meter or the pulses")]
    [InlineData("part: tank, input: 2, points: [{ at: 0 V, is: 0 L/min }, { at: 1 V, is: 9 L/min }], pulses-per-litre: 450",
        "north/pump flow lacks either the line of its meter or the pulses")]
    [InlineData("line: 20, pulses-per-litre: 450, part: tank", "north/pump flow is not read in one way")]
    [InlineData("line: 20, pulses-per-litre: 450, input: 1", "north/pump flow has an input or points, and a meter on a line has neither")]
    [InlineData("line: 11, pulses-per-litre: 450", "north/pump flow is on line 11, where north/reservoir low float is already")]
    [InlineData("line: 20, pulses-per-litre: 0", "`pulses-per-litre` is `0`, out of")]
    public void AFlowMeterHasALineAndItsPulses(string meter, string expected) => Expect.Among(WithMeter(meter), expected);

    [Fact]
    public void ARelayMayBeOnALineOfAPartOnABus()
    {
        var site = Expect.Site(WithExpander("power: 5 W, line: 15, chip: bank"));
        var io = Assert.IsType<GpioIo>(site.Io);
        Assert.Equal(new BusPart("bank", BusPartKind.Mcp23017, 1, 0x20), Assert.Single(io.Expanders));
        Assert.Contains(io.Relays, relay => relay.Line == new GpioLine("bank", 15));
    }

    [Theory]
    [InlineData("power: 5 W, line: 16, chip: bank", "north/aerator is on line 16 of bank: that part has lines 0 to 15")]
    [InlineData("power: 5 W, line: GPIO17, chip: bank", "north/aerator is on line GPIO17 of bank: that part has lines 0 to 15")]
    [InlineData("power: 5 W, line: 0, chip: tank", "north/aerator is on line 0 of tank: that part has no lines for relays")]
    public void ARelayIsOnALineThatThePartHas(string aerator, string expected) => Expect.Among(WithExpander(aerator), expected);

    /// <summary>All lines of a PCF8574 are high at power-on; those of an MCP23017 are inputs (data sheets, from memory).</summary>
    [Theory]
    [InlineData("relays-active: high", "power: 5 W, line: 5, chip: bank")]
    [InlineData("relays-active: low", "power: 5 W, line: 5, chip: bank, active: high")]
    public void NoRelayIsEnergisedByAPartThatNobodyHasToldAThing(string relays, string aerator)
    {
        var wired = WithExpander(aerator).Replace("relays-active: low", relays, StringComparison.Ordinal);
        Expect.Site(wired);
        Expect.Among(
            wired.Replace("mcp23017", "pcf8574", StringComparison.Ordinal),
            "north/aerator is active high on bank, whose lines are all high from the moment it has power: use a relay board that is "
            + "active low, or an mcp23017");
    }

    [Theory]
    [InlineData("relays-active: low", "power: 5 W, line: 5, chip: bank")]
    [InlineData("relays-active: high", "power: 5 W, line: 5, chip: bank, active: low")]
    public void ARelayThatRestsHighMayBeOnSuchAPart(string relays, string aerator) => Expect.Site(
        WithExpander(aerator).Replace("relays-active: low", relays, StringComparison.Ordinal)
            .Replace("mcp23017", "pcf8574", StringComparison.Ordinal));

    /// <summary>Interrupts of such parts come late or not at all: dotnet/iot issues 2404 and 2134.</summary>
    [Fact]
    public void AFloatDoesNotWaitForABus() => Expect.Among(
        WithExpander("power: 5 W, line: 1")
            .Replace("height: 60 mm, line: 11", "height: 60 mm, line: 11, chip: bank", StringComparison.Ordinal),
        "north/reservoir low float is on bank, and does not wait for a bus");

    private static string Lit(string sensor, string lamp) => Wired
        .Replace(
            "ppfd: 180 umol/m2/s, line: 2 }", $"ppfd: 180 umol/m2/s, line: 2{lamp} }}\n        sensors: {{ {sensor} }}",
            StringComparison.Ordinal)
        .Replace("- { name: canopy, kind: sht3x }", "- { name: canopy, kind: sht3x }\n      - { name: eye, kind: bh1750, address: 0x5C }",
            StringComparison.Ordinal);

    private static string WithMeter(string meter) => Wired.Replace(
        "      air-humidity:", $"      pump-flow: {{ {meter} }}\n      air-humidity:", StringComparison.Ordinal);

    private static string WithExpander(string aerator) => Wired
        .Replace("power: 5 W, line: 1", aerator, StringComparison.Ordinal)
        .Replace("      - { name: canopy,", "      - { name: bank, kind: mcp23017 }\n      - { name: canopy,", StringComparison.Ordinal);
}
