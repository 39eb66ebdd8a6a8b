using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Recording;

/// <summary>What a record makes of what is lost, unknown or not there.</summary>
public class RecordEdgeTests
{
    [Fact]
    public void ARequestThatHasNoNumberIsRefusedWhenItIsReadBack()
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
    public void ASensorGoesOnSayingWhatIsOnRecordAsOldAsItWasThen()
    {
        var record = new ReadingsOnRecord(Sites.OneRack());
        var noted = MonotonicTime.FromMilliseconds(60_000);
        record.Take(new SensorId(0), new Reading(1, ReadingQuality.Good, noted + -Duration.FromSeconds(1)), noted);
        var later = noted + Duration.FromHours(2);
        Assert.Equal(new Reading(1, ReadingQuality.Good, later + -Duration.FromSeconds(1)), record.At(new SensorId(0), later));
    }

    [Fact]
    public void ATextMayBeLongerThanAllTheRoomThereIs()
    {
        var text = new string('x', 100_000);
        var writer = new ByteWriter();
        writer.Put(text);
        Assert.Equal(text, new ByteReader(writer.ToArray()).Text());
    }

    [Fact]
    public void PartsAreNamedInTheOrderOfTheSite()
    {
        var site = Sites.OneRack();
        var facts = new RunFacts("cellar.yaml", "site:", "0.1.0", "2026a", PartNames.Of(site));
        Assert.Equal("north", Assert.Single(facts.Names.Racks));
        Assert.Equal(site.Loads.Select(load => load.Name), facts.Names.Loads);
        Assert.Equal(site.Sensors.Select(sensor => sensor.Name), facts.Names.Sensors);
    }

    private sealed record Sing(string By) : OperatorRequest(By);
}
