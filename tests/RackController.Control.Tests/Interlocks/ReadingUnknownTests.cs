using NodaTime;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row reading-unknown.</summary>
public class ReadingUnknownTests
{
    private const string Rope = "north/leak rope";
    private const string Key = $"{Rope}/reading-unknown";

    [Fact]
    public void OneShortSilenceIsNoAlarm()
    {
        var rig = SteadyRig();
        BeSilentFor(rig, Duration.FromSeconds(6));
        rig.LeapFor(Duration.FromMinutes(2));

        Assert.DoesNotContain(rig.Events, e => e.Subject == Key);
    }

    [Fact]
    public void ASensorThatComesAndGoesIsToldOnce()
    {
        var rig = SteadyRig();
        for (var time = 0; time < 20; time++)
        {
            BeSilentFor(rig, Duration.FromSeconds(6));
            rig.LeapFor(Duration.FromSeconds(6));
        }

        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
        Assert.Single(rig.Events, e => e.Subject == Key);

        rig.LeapFor(Duration.FromSeconds(20));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void ASilentSensorIsToldOfAfterAMomentAndUntilItHasSpokenForAsLong()
    {
        var rig = SteadyRig();
        rig.Silence(Rope);
        rig.LeapFor(Duration.FromSeconds(16));
        Assert.Null(rig.Alarm(Key));

        rig.LeapFor(Duration.FromSeconds(4));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
        Assert.Equal($"{Rope} has no believable reading", rig.Alarm(Key)!.Cause);

        rig.Speak(Rope);
        rig.LeapFor(Duration.FromSeconds(14));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
        Assert.Equal($"the readings of {Rope} come and go", rig.Alarm(Key)!.Cause);

        rig.LeapFor(Duration.FromSeconds(6));
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
    }

    [Fact]
    public void ASensorThatNeverSpeaksAfterARestartIsToldOfToo()
    {
        var rig = SteadyRig();
        rig.Silence(Rope);
        rig.Restart(Duration.FromMinutes(1));
        var booted = rig.Now.Monotonic;
        rig.LeapUntil(() => rig.Alarm(Key) is not null);
        Assert.Equal(Duration.FromSeconds(15), rig.Now.Monotonic - booted);
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
    }

    /// <summary>Whatever the scan: a circuit's turn to be looked at without a cause comes every few scans.</summary>
    [Fact]
    public void WhatBecomesUnknownIsActedOnInTheSameScan()
    {
        for (var later = 0; later < 12; later++)
        {
            var rig = new Rig(Sites.OneRack());
            rig.LeapUntil(() => rig.IsOn("north/pump"));
            rig.ScanFor(Duration.FromMilliseconds(100) * (10 + later));
            rig.Silence("north/reservoir low float");
            while (rig.IsOn("north/pump"))
            {
                rig.Scan();
            }

            var unknown = rig.Events.Last(each => each is { Kind: EventKind.Reading, Subject: "north/reservoir low float" });
            Assert.Equal(rig.Now, unknown.At);
        }
    }

    private static void BeSilentFor(Rig rig, Duration length)
    {
        rig.Silence(Rope);
        rig.LeapFor(length);
        rig.Speak(Rope);
    }

    private static Rig SteadyRig()
    {
        var rig = new Rig(Sites.OneRack());
        rig.LeapFor(Duration.FromMinutes(1));
        return rig;
    }
}
