using System.Collections.Immutable;
using CsCheck;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Recording;

public class RecordedPagesTests
{
    private static readonly Moment start =
        new(MonotonicTime.FromMilliseconds(5_000), Instant.FromUtc(2026, 6, 1, 0, 0), WallTrusted: true);

    public static TheoryData<OperatorRequest> Requests =>
    [
        new FloodNow("Ada", new RackId(2)),
        new Stop("Ada", null),
        new Stop("Ada", new RackId(0)),
        new Resume("Бен", new RackId(1)),
        new SkipNextFlood("", new RackId(1)),
        new HoldForService("Ada", new RackId(1), Duration.FromDays(-9_000)),
        new HoldForService("Ada", new RackId(1), Duration.FromDays(2_000_000) + Duration.Epsilon),
        new HoldForService("Ada", new RackId(1), Duration.FromDays(4_000_000)),
        new HoldForService("Ada", new RackId(1), Duration.FromDays(-4_000_000)),
        new EndServiceHold("Ada", new RackId(1)),
        new Acknowledge("Ada", "north/low-float"),
        new Shelve("Ada", "north/low-float", Duration.FromMinutes(3)),
        new Unshelve("Ada", "north/low-float"),
        new SetAlarmOutOfService("Ada", "north/low-float", true),
        new SetAlarmOutOfService("Ada", "north/low-float", false),
        new ResetLatch("Ada", "north/high-water"),
        new ConfirmReset("Ben", "north/high-water"),
        new SetTierInUse("Ben", new RackId(1), -3, false),
        new SetTierInUse("Ben", new RackId(ushort.MaxValue), int.MaxValue, true),
        new SetTierInUse("Ben", new RackId(1), int.MinValue, true),
        new BeginProofTest("Ada", "north/leak rope"),
        new AnswerProofTest("Ada", AsExpected: true),
        new AnswerProofTest("Ada", AsExpected: false),
        new AbandonProofTest("Ben"),
    ];

    [Theory]
    [MemberData(nameof(Requests))]
    public void ARequestComesBackAsItWas(OperatorRequest request) =>
        Assert.Equal(request, Assert.Single(Assert.Single(PageWith(request).Scans).Requests));

    [Fact]
    public void EveryRequestHasANumber()
    {
        var all = typeof(OperatorRequest).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(OperatorRequest)));
        Assert.Empty(all.Where(type => !Requests.Any(row => row.Data.GetType() == type)).Select(type => type.Name));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void MemoryAndCommandsComeBackAsTheyWere(bool wasTrusted)
    {
        var site = Sites.OneRack();
        var memory = new ControlMemory(
            start.Wall - Duration.FromHours(3), wasTrusted,
            ImmutableSortedDictionary<string, long>.Empty.Add("north/latch", long.MinValue).Add("süd/Ü", 7));

        var page = RecordedPages.Read(new ScanRecorder(new RackControl(site, start, memory), start, memory).TakePage().Body);

        Assert.Equal((0, PageKind.Starts, start), (page.Number, page.Kind, page.At));
        Assert.Equal(memory.Items.AsEnumerable(), page.State!.Memory!.Items);
        Assert.Equal((memory.SavedAt, memory.WallTrusted), (page.State.Memory.SavedAt, page.State.Memory.WallTrusted));
        Assert.Equal(site.Loads.Select(load => load.SafeState), page.State.Commands);
    }

    [Fact]
    public void WhatALoadWasToldComesBackByTheReadingOfARun()
    {
        var site = Sites.OneRack();
        var recorder = new ScanRecorder(new RackControl(site, start, memory: null), start, memory: null);
        var now = start with { Monotonic = start.Monotonic + Duration.FromMilliseconds(100) };
        var commands = new RelayCommands(site);
        var light = site.Loads.Single(load => load.Name == "north/tier 2 light").Id;
        commands[light] = SwitchState.On;
        recorder.Note(now, new Readings(site), ScanConditions.Good, [], commands, []);
        var body = recorder.TakePage().Body;

        var run = new RecordedRun(7, Facts: null, body.Length, [body]);
        var scan = Assert.Single(run.Pages.SelectMany(page => RecordedPages.Read(page).Scans));
        Assert.Equal(now.Monotonic, scan.At.Monotonic);
        var command = Assert.Single(scan.Commands);
        Assert.Equal((light.Index, SwitchState.On), (command.Load, command.State));
        Assert.Equal((7, body.Length), (run.Number, (int)run.Bytes));
        Assert.Null(run.Facts);
    }

    [Fact]
    public void BytesThatNobodyPutThereAreRefusedAndNothingElse() => Gen.Byte.Array[0, 200].Sample(bytes =>
    {
        bytes = [PageWriter.Version, (byte)(bytes.Length % 5), .. bytes];
        AssertReadOrRefused(bytes);
    });

    [Fact]
    public void APageThatIsChangedOrCutIsReadOrRefusedAndNothingElse()
    {
        var page = BytesWith(new Shelve("Ada", "north/low-float", Duration.FromMinutes(3)));
        Gen.Select(Gen.Int[0, page.Length - 1], Gen.Byte, Gen.Int[0, page.Length]).Sample((place, value, length) =>
        {
            var changed = page.ToArray();
            changed[place] = value;
            AssertReadOrRefused(changed);
            AssertReadOrRefused(page[..length]);
        });
    }

    private static void AssertReadOrRefused(byte[] bytes)
    {
        try
        {
            Assert.NotNull(RecordedPages.Read(bytes));
        }
        catch (FormatException e)
        {
            Assert.NotEmpty(e.Message);
        }
    }

    private static RecordedPage PageWith(OperatorRequest request) => RecordedPages.Read(BytesWith(request));

    private static byte[] BytesWith(OperatorRequest request)
    {
        var site = Sites.OneRack();
        var control = new RackControl(site, start, memory: null);
        var recorder = new ScanRecorder(control, start, memory: null);
        var now = start with { Monotonic = start.Monotonic + Duration.FromMilliseconds(100), Wall = start.Wall };
        var readings = new Readings(site);
        readings[new SensorId(0)] = new Reading(0.1, ReadingQuality.Good, start.Monotonic);
        recorder.Note(
            now, readings, new ScanConditions(new IoOutcome("the chip is gone"), Duration.FromSeconds(2)), [request],
            new RelayCommands(site), [new ControlEvent(now, EventKind.Load, "north/pump", "on", "it is time")]);
        return recorder.TakePage().Body;
    }
}
