using CsCheck;
using RackController.Control.Tests.Reference;
using RackController.Control.Tests.Scanning;

namespace RackController.Control.Tests.CauseAndEffect;

/// <summary>Control answers, scan by scan, what a table written for clarity answers to the same random story of several racks: which rows
/// object to which load, which alarms stand and which latches have caught. Whatever a row objects to is off in the same scan.</summary>
public class PlainTableTests
{
    [Fact]
    [Trait("Pace", "long")]
    public void ControlAnswersAsThePlainTableDoes() =>
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Int[1, 14]).Sample((seed, turns) => Compare(seed, turns, scans: 200), iter: 10);

    [Fact]
    [Trait("Pace", "long")]
    public void ThePlainTableHasEveryRow()
    {
        var rows = Enumerable.Range(0, 20).SelectMany(seed => new Chronicler(RandomStory.Of(seed)).Rows).ToHashSet();
        Assert.Equal(CauseAndEffectTable.Rows.Select(row => row.Id).Order(), rows.Order());
    }

    private static void Compare(int seed, int turns, int scans)
    {
        var story = RandomStory.Of(seed);
        var chronicler = new Chronicler(story);
        foreach (var where in story.Scans(turns).Take(scans))
        {
            var difference = chronicler.Scan();
            Assert.True(difference is null, $"{where}: {difference}");
        }
    }
}
