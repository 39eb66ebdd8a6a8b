using CsCheck;
using NodaTime;
using RackController.Model;

namespace RackController.Hardware.Tests;

public sealed class ContactDebounceTests
{
    private static readonly Duration Hold = Duration.FromMilliseconds(50);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void TheFirstSampleIsBelieved(double first) =>
        Assert.Equal(first, new ContactDebounce(harmfulValue: 1, Hold).Sample(MonotonicTime.Zero, first, changedSinceLast: false));

    [Fact]
    public void AnEdgeBetweenTwoHarmlessSamplesStartsTheHoldAnew()
    {
        var debounce = new ContactDebounce(harmfulValue: 0, Hold);
        Assert.Equal(0, debounce.Sample(MonotonicTime.FromMilliseconds(0), 0, changedSinceLast: false));
        Assert.Equal(0, debounce.Sample(MonotonicTime.FromMilliseconds(10), 1, changedSinceLast: true));
        Assert.Equal(0, debounce.Sample(MonotonicTime.FromMilliseconds(70), 1, changedSinceLast: true));
        Assert.Equal(0, debounce.Sample(MonotonicTime.FromMilliseconds(119), 1, changedSinceLast: false));
        Assert.Equal(1, debounce.Sample(MonotonicTime.FromMilliseconds(120), 1, changedSinceLast: false));
    }

    [Fact]
    public void HarmCountsAtOnceAndEndsOnlyOnceTheContactWasQuietForTheHold()
    {
        var contacts = Gen.Select(Gen.Int[1, 60], Gen.Bool, Gen.Bool).Array[1, 200];
        contacts.Sample(samples =>
        {
            var debounce = new ContactDebounce(harmfulValue: 1, Hold);
            var now = MonotonicTime.Zero;
            var lastUnrest = MonotonicTime.Zero;
            var said = 0.0;
            foreach (var (milliseconds, isHarmful, sawEdge) in samples)
            {
                now += Duration.FromMilliseconds(milliseconds);
                lastUnrest = isHarmful || sawEdge ? now : lastUnrest;
                var before = said;
                said = debounce.Sample(now, isHarmful ? 1 : 0, sawEdge);
                Assert.True(!isHarmful || said == 1);
                Assert.True(before == 0 || said == 1 || now - lastUnrest >= Hold);
            }
        });
    }
}
