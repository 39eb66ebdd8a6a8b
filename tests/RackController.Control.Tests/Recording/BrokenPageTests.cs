using NodaTime;
using RackController.Control.Tests.Scanning;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Recording;

/// <summary>What a disk or a plug may do to a record.</summary>
public class BrokenPageTests
{
    private static readonly OperatorRequest[] requests =
    [
        new FloodNow("Ada", new RackId(0)), new Stop("Ada", null), new Resume("Ada", new RackId(0)), new SkipNextFlood("Ada", new RackId(0)),
        new HoldForService("Ada", new RackId(0), Duration.FromMinutes(-3)), new EndServiceHold("Ada", new RackId(0)),
        new Acknowledge("Ada", "north/low-float"), new Shelve("Ada", "north/low-float", Duration.FromDays(2)),
        new SetAlarmOutOfService("Ada", "north/low-float", true), new ResetLatch("Ada", "x"), new ConfirmReset("Ben", "x"),
        new SetTierInUse("Ada", new RackId(0), 2, false),
    ];

    [Fact]
    public void APageWithABrokenByteOrAnEarlyEndIsReadOrRefusedAndNothingElse()
    {
        foreach (var page in Pages().Where(page => page.Length < 6_000).Take(12))
        {
            for (var i = 0; i < page.Length; i++)
            {
                Read(page[..i]);
                foreach (var broken in new byte[] { 0, 1, 0x7f, 0x80, 0xff, (byte)(page[i] ^ 1) })
                {
                    byte[] changed = [.. page];
                    changed[i] = broken;
                    Read(changed);
                    changed.AsSpan(i, Math.Min(10, page.Length - i)).Fill(broken);
                    Read(changed);
                }
            }
        }
    }

    [Fact]
    public void EveryRequestComesBackAsItWas()
    {
        foreach (var request in requests)
        {
            var writer = new ByteWriter();
            RequestCode.Put(request, writer);
            var reader = new ByteReader(writer.ToArray());
            Assert.Equal(request, RequestCode.Get(ref reader));
            Assert.True(reader.IsAtEnd);
        }
    }

    [Fact]
    public void ARequestThatHasNoNumberIsPutDownByItsSort()
    {
        var writer = new ByteWriter();
        RequestCode.Put(new Sing("Ada"), writer);
        Assert.Throws<FormatException>(() =>
        {
            var reader = new ByteReader(writer.ToArray());
            RequestCode.Get(ref reader);
        });
    }

    [Fact]
    public void ARecordThatLostAPageGoesOnWithinAMinuteFromWhatTheControllerRemembers()
    {
        var rig = new Rig(Sites.OneRack());
        var (recorder, readings, kind) = (new ScanRecorder(rig.Control, rig.Now, memory: null), new Readings(rig.Site), (PageKind?)null);
        recorder.TakePage();
        recorder.LosePage();
        for (var scan = 0; scan < 1_300 && kind is null; scan++)
        {
            var commands = rig.Scan();
            rig.Fill(readings, rig.Now.Monotonic);
            recorder.Note(rig.Now, readings, ScanConditions.Good, [], commands, []);
            kind = recorder.IsPageDue ? RecordedPages.Read(recorder.TakePage().Body).Kind : null;
        }

        Assert.Equal(PageKind.Resumes, kind);
    }

    [Fact]
    public void ASensorOfWhichNothingIsOnRecordHasSaidNothing() => Assert.Equal(
        ReadingQuality.Missing, new ReadingsOnRecord(Sites.OneRack()).At(new SensorId(0), MonotonicTime.Zero).Quality);

    [Fact]
    public void PartsAreNamedInTheOrderOfTheSite()
    {
        var site = Sites.OneRack();
        var facts = new RunFacts("cellar.yaml", "site:", "0.1.0", "2026a", PartNames.Of(site));
        Assert.Equal("north", Assert.Single(facts.Names.Racks));
        Assert.Equal(site.Loads.Select(load => load.Name), facts.Names.Loads);
        Assert.Equal(site.Sensors.Select(sensor => sensor.Name), facts.Names.Sensors);
    }

    private static void Read(byte[] page)
    {
        var thrown = Record.Exception(() => RecordedPages.Read(page));
        Assert.True(thrown is null or FormatException, $"{thrown}");
    }

    private static IEnumerable<byte[]> Pages()
    {
        for (var seed = 1; seed < 6; seed++)
        {
            var story = RandomStory.Of(seed);
            var sink = new Told(story);
            var recorder = new ScanRecorder(sink.Control, story.Now, memory: null);
            foreach (var _ in story.Scans(turns: 12).Take(300))
            {
                sink.Forget();
                recorder.Note(
                    story.Now, story.Readings, story.Conditions, story.Requests, sink.Scan(), [.. sink.Events]);
                if (recorder.IsPageDue)
                {
                    yield return recorder.TakePage().Body.ToArray();
                }
            }
        }
    }

    private sealed record Sing(string By) : OperatorRequest(By);
}
