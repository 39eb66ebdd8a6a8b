using RackController.Hardware;
using RackController.Model;
using RackController.Testing;

namespace RackController.Service.Tests;

public sealed class DoctorTests : IDisposable
{
    private static readonly BusPart converter = new("converter", BusPartKind.Ads1115, Bus: 1, Address: 0x48);
    private static readonly BusPart relays = new("more relays", BusPartKind.Mcp23017, Bus: 1, Address: 0x20);

    private readonly TemporaryFolder root = new();
    private readonly FakeBoard board = new();
    private GpioLine pumpLine = new("board", 3);

    public DoctorTests()
    {
        Put("sys/class/watchdog/watchdog0/identity", "a board's own");
        Put("sys/class/watchdog/watchdog0/state", "active");
        Put("sys/class/watchdog/watchdog0/timeout", "15");
        Put("usr/lib/systemd/system/rackcontroller.service", "[Service]\nWatchdogSec=10\nRestart=always\n");
        Put("etc/systemd/system/multi-user.target.wants/rackcontroller.service", "");
        Put("dev/i2c-1", "");
    }

    public void Dispose() => root.Dispose();

    [Fact]
    public void ABoardWithAllThatItsFileNamesIsSound()
    {
        Assert.All(Look().Where(IsOfTheBoard), finding => Assert.Equal(FindingWeight.Sound, finding.Weight));
        Assert.Equal("says 2.13 A", TextOf("north/pump current"));
        Assert.Equal("watchdog0 (a board's own) is fed, and resets the board after 15 s", TextOf("hardware watchdog"));
        Assert.Equal("answers at 0x20 of bus 1", TextOf("Mcp23017 'more relays'"));
        Assert.Equal("free", TextOf("north/pump, line 3 of 'board'"));
    }

    [Fact]
    public void ALineThatAnotherHoldsIsNamedWithItsHolder()
    {
        board.Holders[3] = "blinking light";
        Assert.Equal(
            "held by 'blinking light': stop that one, or name another line in the rack file", Wrong("north/pump, line 3 of 'board'"));
    }

    [Fact]
    public void ALineIsShownWithItsOffsetAndItsName()
    {
        Assert.Equal("/dev/gpiochip0, 54 lines", TextOf("chip 'board'"));
        pumpLine = GpioLine.Named("board", "GPIO17");
        Assert.Equal("free, at offset 17", TextOf("north/pump, line 'GPIO17' of 'board'"));
        pumpLine = new GpioLine("board", 17);
        Assert.Equal("free, named 'GPIO17'", TextOf("north/pump, line 17 of 'board'"));
    }

    [Fact]
    public void ANameThatIsNotThereIsWrong()
    {
        pumpLine = GpioLine.Named("board", "GPIO71");
        Assert.StartsWith("Chip 'board' has no line named 'GPIO71': did you mean 'GPIO17'?", Wrong("north/pump, line 'GPIO71' of 'board'"));
    }

    [Fact]
    public void ANumberIsDoubtfulSinceItMayBeAnotherChips()
    {
        pumpLine = new GpioLine("/dev/gpiochip0", 3);
        Assert.StartsWith("'board', 54 lines: the number may be another chip's after", Doubtful("chip '/dev/gpiochip0'"));
    }

    [Fact]
    public void TwoUsesOfOneLineAreWrongHoweverItIsCalled()
    {
        pumpLine = new GpioLine("/dev/gpiochip0", 30);
        Assert.StartsWith("heartbeat and north/pump are both on line 30 of chip 'board'", Wrong("heartbeat, line 30 of 'board'"));
    }

    [Fact]
    public void AChipThatIsNotThereIsToldOnceAndNotForEachOfItsLines()
    {
        board.ChipTrouble = "No GPIO chip labelled 'board'.";
        Assert.Equal("No GPIO chip labelled 'board'.", Wrong("chip 'board'"));
        Assert.DoesNotContain(Look(), finding => finding.Subject.Contains("line 3", StringComparison.Ordinal));
    }

    [Fact]
    public void ABusThatIsNotThereIsToldOnceAndNobodyOnItIsAsked()
    {
        File.Delete(Path.Combine(root.Path, "dev/i2c-1"));
        Assert.StartsWith("/dev/i2c-1 is not there: enable the bus", Wrong("I2C bus 1"));
        Assert.DoesNotContain(Look(), finding => finding.Subject is "north/pump current" or "Mcp23017 'more relays'");
    }

    [Fact]
    public void APartThatDoesNotAnswerIsNamed()
    {
        board.PartTrouble = "Error 121 performing I2C data transfer.";
        Assert.Equal(
            "Error 121 performing I2C data transfer: look at its wiring and its place in the rack file", Wrong("north/pump current"));
        Assert.Equal("Error 121 performing I2C data transfer.", Wrong("Mcp23017 'more relays'"));
    }

    [Fact]
    public void AReadingThatCannotBeTrueIsWrong()
    {
        board.Says = 130;
        Assert.StartsWith("says 130.00 A, which cannot be true", Wrong("north/pump current"));
    }

    [Theory]
    [InlineData("inactive", "nobody feeds watchdog0 (a board's own): set RuntimeWatchdogSec=10s")]
    [InlineData("", "watchdog0 (a board's own) does not say whether it is fed")]
    public void AWatchdogThatNobodyFeedsIsDoubtful(string state, string words)
    {
        Put("sys/class/watchdog/watchdog0/state", state);
        Assert.StartsWith(words, Doubtful("hardware watchdog"));
    }

    [Fact]
    public void ABoardWithoutAWatchdogIsDoubtful()
    {
        Directory.Delete(Path.Combine(root.Path, "sys/class/watchdog"), recursive: true);
        Assert.StartsWith("none, so a kernel that hangs leaves relays as they are", Doubtful("hardware watchdog"));
    }

    [Fact]
    public void AUnitThatRestartsNobodyIsDoubtfulEvenWhereTheNextFolderHasAGoodOne()
    {
        Put("etc/systemd/system/rackcontroller.service", "[Service]\nRestart=always\n");
        Assert.StartsWith("/etc/systemd/system/rackcontroller.service lacks WatchdogSec=", Doubtful("service"));
    }

    [Fact]
    public void AControllerThatDoesNotStartWithTheBoardIsDoubtful()
    {
        Directory.Delete(Path.Combine(root.Path, "etc"), recursive: true);
        Assert.Contains("systemctl enable --now", Doubtful("start"));
        Directory.Delete(Path.Combine(root.Path, "usr"), recursive: true);
        Assert.StartsWith("no rackcontroller.service", Doubtful("service"));
    }

    [Fact]
    public void PinsThatKeepTheirLevelAfterAKillAreDoubtful()
    {
        Put("sys/module/pinctrl_bcm2835/parameters/persist_gpio_outputs", "Y\n");
        Assert.StartsWith("keep their level when the controller dies", Doubtful("released lines"));
    }

    [Fact]
    public void WhatARunningControllerUsesIsLeftInPeace()
    {
        using var held = RackLock.Take(Folder.Lock);
        board.PartTrouble = "asked";
        Assert.Equal("lines and sensors", Look()[^1].Subject);
    }

    [Fact]
    public void AFolderThatNobodyUsedYetIsNotMade()
    {
        var folder = new StateFolder(Path.Combine(root.Path, "not yet"));
        Assert.Contains(
            Doctor.Look(Rack(), folder, board, new Machine(root.Path)),
            finding => finding.Subject == "state folder" && finding.Text.StartsWith(folder.Path, StringComparison.Ordinal));
        Assert.False(Directory.Exists(folder.Path));
    }

    // Whoever is root may write everywhere; that a file is no folder holds for them too.
    [Fact]
    public void AFolderThatCannotBeMadeIsToldBeforeAnybodyCountsOnIt()
    {
        var inTheWay = Path.Combine(root.Path, "a file");
        File.WriteAllText(inTheWay, "");
        Assert.Contains(
            Doctor.Look(Rack(), new StateFolder(Path.Combine(inTheWay, "state")), board, new Machine(root.Path)),
            finding => finding is { Subject: "state folder", Weight: FindingWeight.Wrong } && finding.Text.Contains("cannot be written"));
    }

    [Fact]
    public void ASimulatedRackNeedsNoBoard()
    {
        var findings = Doctor.Look(Sites.OneRack(), Folder, board, new Machine(root.Path)).ToList();
        Assert.Equal("rack", findings[^1].Subject);
        Assert.DoesNotContain(findings.Where(IsOfTheBoard), finding => finding.Weight != FindingWeight.Sound);
    }

    private StateFolder Folder => new(root.Path);

    // What depends on the machine that runs the test.
    private static bool IsOfTheBoard(Finding finding) => finding.Subject is not ("kernel" or "wall clock" or "state folder");

    private Site Rack()
    {
        var site = Sites.OneRack().WithPumpCurrent();
        return site with
        {
            Io = new GpioIo([.. site.Loads.Select(load => new RelayLine(load.Id, LineOf(site, load), true))], [])
            {
                Probes = [new AnalogueProbe(site.SensorNamed("north/pump current"), converter, 0, [new(0, 0), new(1, 20)])],
                Expanders = [relays],
                Heartbeat = new GpioLine("board", 30),
            },
        };
    }

    private GpioLine LineOf(Site site, Load load) =>
        load.Id == site.LoadNamed("north/pump") ? pumpLine : new GpioLine("board", 3 + load.Id.Index);

    private List<Finding> Look() => [.. Doctor.Look(Rack(), Folder, board, new Machine(root.Path))];

    private string TextOf(string subject) => Assert.Single(Look(), finding => finding.Subject == subject).Text;

    private string Wrong(string subject) => Weighed(subject, FindingWeight.Wrong);

    private string Doubtful(string subject) => Weighed(subject, FindingWeight.Doubtful);

    private string Weighed(string subject, FindingWeight weight)
    {
        var found = Assert.Single(Look(), finding => finding.Subject == subject);
        Assert.Equal(weight, found.Weight);
        return found.Text;
    }

    private void Put(string path, string text)
    {
        var full = Path.Combine(root.Path, path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        File.WriteAllText(full, text);
    }

    private sealed class FakeBoard : IBoard
    {
        public Dictionary<int, string> Holders { get; } = [];

        public string? ChipTrouble { get; set; }

        public string? PartTrouble { get; set; }

        public double Says { get; set; } = 2.13;

        public ChipSight Chip(string name) => ChipTrouble is null
            ? new ChipSight("/dev/gpiochip0", "board", [.. Enumerable.Range(0, 54).Select(line => line == 17 ? "GPIO17" : "")])
            : throw new IOException(ChipTrouble);

        public string? HolderOf(GpioLine line) => Holders.GetValueOrDefault(line.Offset);

        public double Ask(Site site, Probe probe) => PartTrouble is null ? Says : throw new IOException(PartTrouble);

        public void AskExpander(BusPart part)
        {
            if (PartTrouble is not null)
            {
                throw new IOException(PartTrouble);
            }
        }
    }
}
