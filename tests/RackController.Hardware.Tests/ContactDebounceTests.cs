using CsCheck;
using NodaTime;
using RackController.Model;

namespace RackController.Hardware.Tests;

public sealed class ContactDebounceTests
{
    private static readonly Duration Hold = Duration.FromMilliseconds(50);

    [Fact]
    public void AnEdgeBetweenTwoHarmlessSamplesStartsTheHoldAnew()
    {
        var debounce = new ContactDebounce(harmfulValue: 0, Hold);
        debounce.Sample(MonotonicTime.FromMilliseconds(0), 0, changedSinceLast: false);
        debounce.Sample(MonotonicTime.FromMilliseconds(10), 1, changedSinceLast: true);
        debounce.Sample(MonotonicTime.FromMilliseconds(70), 1, changedSinceLast: true);
        Assert.Equal(0, debounce.Value);

        debounce.Sample(MonotonicTime.FromMilliseconds(120), 1, changedSinceLast: false);
        Assert.Equal(1, debounce.Value);
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
            foreach (var (milliseconds, isHarmful, sawEdge) in samples)
            {
                now += Duration.FromMilliseconds(milliseconds);
                lastUnrest = isHarmful || sawEdge ? now : lastUnrest;
                var before = debounce.Value;
                debounce.Sample(now, isHarmful ? 1 : 0, sawEdge);
                Assert.True(!isHarmful || debounce.Value == 1);
                Assert.True(before != 1 || debounce.Value == 1 || now - lastUnrest >= Hold);
            }
        });
    }

    [Fact]
    public void AQuietHarmlessContactIsBelievedAfterTheHold()
    {
        var debounce = new ContactDebounce(harmfulValue: 1, Hold);
        debounce.Sample(MonotonicTime.FromMilliseconds(0), 0, changedSinceLast: false);
        debounce.Sample(MonotonicTime.FromMilliseconds(49), 0, changedSinceLast: false);
        Assert.Null(debounce.Value);

        debounce.Sample(MonotonicTime.FromMilliseconds(50), 0, changedSinceLast: false);
        Assert.Equal(0, debounce.Value);
    }
}
