using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Hardware.Tests.Survey;

public sealed class LineSearchTests
{
    private static readonly ChipSight board = new("/dev/gpiochip0", "board", ["", "GPIO1", "GPIO2", "TWICE", "TWICE", "GPIO17"]);
    private static readonly ChipSight nameless = new("/dev/gpiochip1", "nameless", ["", ""]);

    [Fact]
    public void ALineIsFoundByItsName()
    {
        var found = board.Find(GpioLine.Named("board", "GPIO17"));
        Assert.Equal((5, "line 5 'GPIO17' of chip 'board'"), (found.Offset, found.ToString()));
    }

    [Fact]
    public void ALineByItsOffsetNeedsNoName() => Assert.Equal(new GpioLine("nameless", 1), nameless.Find(new GpioLine("nameless", 1)));

    [Theory]
    [InlineData("GPI017", "no line named 'GPI017': did you mean 'GPIO17'? Correct the line in the rack file, or write its offset.")]
    [InlineData("gpio17", "no line named 'gpio17': did you mean 'GPIO17'?")]
    [InlineData("heartbeat", "no line named 'heartbeat': it has GPIO1, GPIO2, TWICE, GPIO17. Correct the line")]
    [InlineData("TWICE", "2 lines named 'TWICE', 3, 4. Write the offset of the one that is meant")]
    public void ANameThatIsNotOneLinesOwnIsNotGuessedAt(string name, string words) =>
        Assert.Contains(words, Refusal(() => board.Find(GpioLine.Named("board", name))), StringComparison.Ordinal);

    [Fact]
    public void AChipWithoutNamesSaysSo() => Assert.Contains(
        "none of its lines has a name. Write the line's offset",
        Refusal(() => nameless.Find(GpioLine.Named("nameless", "GPIO17"))), StringComparison.Ordinal);

    [Fact]
    public void AnOffsetBeyondTheChipIsRefused() => Assert.Equal(
        "Chip 'board' has lines 0 to 5, but the rack file asks for line 6. Correct the line in the rack file.",
        Refusal(() => board.Find(new GpioLine("board", 6))));

    [Fact]
    public void EveryUseOfALineIsFound()
    {
        var site = SiteOn("board", GpioLine.Named("board", "GPIO17"), GpioLine.Named("board", "GPIO1"), GpioLine.Named("board", "GPIO2"));
        var found = Assert.IsType<GpioIo>(LineSearch.Found(site, _ => board).Io);
        Assert.Equal(
            [("north/pump", 0), ("contactor of sockets", 3), ("north/reservoir low float", 5), ("north/pump current", 2), ("heartbeat", 1)],
            LineSearch.Uses(site, found).Select(use => (use.Use, use.Line.Offset)));
    }

    [Fact]
    public void ANameAndAnOffsetOfOneLineAreFoundOut()
    {
        var site = SiteOn("board", new GpioLine("board", 5), GpioLine.Named("board", "GPIO17"), new GpioLine("board", 1));
        Assert.Equal(
            "heartbeat and north/reservoir low float are both on line 5 of chip 'board'. Give each a line of its own in the rack file.",
            Refusal(() => LineSearch.Found(site, _ => board)));
    }

    [Fact]
    public void ALabelAndANumberOfOneChipAreFoundOut()
    {
        var site = SiteOn("board", new GpioLine("/dev/gpiochip0", 0), new GpioLine("board", 1), new GpioLine("board", 2));
        Assert.Contains("north/reservoir low float and north/pump are both on line 0", Refusal(() => LineSearch.Found(site, _ => board)),
            StringComparison.Ordinal);
    }

    [Fact]
    public void ThePartsOnABusAreNoChipsOfTheBoard()
    {
        var site = SiteOn("bank", new GpioLine("board", 5), new GpioLine("board", 1), new GpioLine("board", 2));
        site = site with
        {
            Io = Assert.IsType<GpioIo>(site.Io) with { Expanders = [new BusPart("bank", BusPartKind.Mcp23017, Bus: 1, Address: 0x20)] },
        };
        var looked = new List<string>();
        LineSearch.Found(site, chip =>
        {
            looked.Add(chip);
            return board;
        });
        Assert.Equal(["board"], looked);
    }

    private static string Refusal(Func<object> search) => Assert.Throws<GpioUnavailableException>(search).Message;

    private static Site SiteOn(string relayChip, GpioLine lowFloat, GpioLine heartbeat, GpioLine meter)
    {
        var site = Sites.OneRack().WithPumpCurrent();
        return site with
        {
            Io = new GpioIo(
                [new RelayLine(site.LoadNamed("north/pump"), new GpioLine(relayChip, 0), ActiveLow: true)],
                [new ContactLine(
                    site.SensorNamed("north/reservoir low float"), lowFloat, ActiveLow: true, LinePull.Up, Duration.FromMilliseconds(50))])
            {
                Contactors = [new ContactorLine(new CircuitId(0), new GpioLine(relayChip, 3), ActiveLow: true)],
                Probes = [new PulseProbe(site.SensorNamed("north/pump current"), meter, LinePull.Up, PulsesPerL: 450)],
                Heartbeat = heartbeat,
            },
        };
    }
}
