using NodaTime;
using RackController.Control.Tests.ProofTests;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row floats-contradict.</summary>
public class FloatsContradictTests
{
    private const string Key = "north/tier 2/floats-contradict";
    private const string Reservoir = "north/floats-contradict";
    private const string Low = "north/reservoir low float";
    private const string Full = "north/reservoir full float";
    private const string Level = "north/reservoir level";
    private const string High = "north/tier 2 high float";
    private const string TrayFull = "north/tier 2 full float";
    private readonly Rig rig = new(ProofSite.Whole);

    public FloatsContradictTests()
    {
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(30));
    }

    private bool Forbids => rig.Why("north/pump").Interlocks.Any(words => words.StartsWith("floats-contradict", StringComparison.Ordinal));

    public static TheoryData<string, double, string, double> Contradictions => new()
    {
        { Full, 1, Low, 0 },
        { High, 1, TrayFull, 0 },
        { Low, 1, Level, 39.9 },
    };

    public static TheoryData<string, double, string, double> Harmonies => new()
    {
        { Full, 0, Low, 0 },
        { Full, 1, Low, 1 },
        { High, 1, TrayFull, 1 },
        { High, 0, TrayFull, 1 },
        { Low, 1, Level, 40.1 },
        { Low, 0, Level, 350 },
        { Full, 1, Level, 60 },
    };

    [Theory]
    [MemberData(nameof(Contradictions))]
    public void WhatCannotBeTrueTogetherStopsThePumpAndLatches(string one, double says, string other, double saysToo)
    {
        Say(one, says, other, saysToo);
        rig.LeapFor(Duration.FromSeconds(15));
        Assert.True(Forbids);
        Assert.False(rig.IsOn("north/pump"));
        var key = one == High ? Key : Reservoir;
        Assert.Contains(rig.Events, happened => happened.Subject == key && happened.What == "latched");
        Assert.Contains(one, rig.Alarm(key)!.Cause);
        Assert.Contains(other, rig.Alarm(key)!.Cause);
    }

    [Theory]
    [MemberData(nameof(Harmonies))]
    public void WhatCanBeTrueTogetherDoesNot(string one, double says, string other, double saysToo)
    {
        Say(one, says, other, saysToo);
        rig.LeapFor(Duration.FromMinutes(2));
        Assert.Null(rig.Alarm(Key));
        Assert.Null(rig.Alarm(Reservoir));
    }

    [Theory]
    [InlineData(55, true)]
    [InlineData(54.9, false)]
    public void FloatsThatSitCloserThanTheyAreMountedAreNotCompared(double highMm, bool isCompared)
    {
        // The tray's full float sits at 45 mm.
        var site = ProofSite.Whole;
        var high = site.Sensors.Single(sensor => sensor.Name == High);
        var close = new Rig(site with { Sensors = site.Sensors.SetItem(high.Id.Index, high with { HeightMm = highMm }) });
        close.ScanFor(Duration.FromSeconds(5));
        close.Set(High, 1);
        close.LeapFor(Duration.FromSeconds(15));
        Assert.Equal(isCompared, close.Alarm(Key) is not null);
    }

    [Fact]
    public void AContradictionCountsOnceItHasLastedForItsTime()
    {
        rig.Set(Full, 1);
        rig.Set(Low, 0);
        rig.LeapUntil(() => rig.Why("north/pump").Interlocks.Any(words => words.StartsWith("low-float", StringComparison.Ordinal)));
        var since = rig.Now.Monotonic;
        rig.LeapUntil(() => Forbids);
        Assert.Equal(rig.Site.Racks[0].Limits.FloatsContradictAfter, rig.Now.Monotonic - since);
    }

    [Fact]
    public void AWaveThatLastsLessIsNone()
    {
        rig.Set(High, 1);
        rig.ScanFor(Duration.FromSeconds(9.9));
        rig.Set(TrayFull, 1);
        rig.ScanFor(Duration.FromSeconds(5));
        Assert.Null(rig.Alarm(Key));
    }

    [Theory]
    [InlineData(Full, 1, 0, 0, 60)]
    [InlineData(Low, 0, 1, 0, 350)]
    [InlineData(Level, 5, 0, 1, 5)]
    public void WhatIsUnknownContradictsNothing(string unknown, double saidLast, double full, double low, double levelMm)
    {
        rig.Set(Full, unknown == Full ? saidLast : full);
        rig.Set(Low, unknown == Low ? saidLast : low);
        rig.Set(Level, levelMm);
        rig.Silence(unknown);
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.Null(rig.Alarm(Reservoir));
    }

    [Fact]
    public void ItIsReleasedOnlyByAResetAfterEveryFloatPassedItsTest()
    {
        Contradict();
        rig.Reset(Key);
        Assert.Equal(
            $"confirm reset: the latch stays, because floats contradicted each other; still to pass a proof test: {TrayFull}, {High}",
            rig.Events.Last(happened => happened.Kind == EventKind.Request).What);

        rig.TestContact(TrayFull);
        rig.Reset(Key);
        Assert.True(Forbids);

        rig.TestContact(High);
        Assert.True(Forbids);
        Assert.Equal("floats contradicted each other, and have passed their proof tests since", rig.Alarm(Key)!.Cause);
        rig.Reset(Key);
        Assert.False(Forbids);
    }

    [Fact]
    public void AContradictionThatIsStillThereHoldsTheLatch()
    {
        Contradict();
        rig.TestContact(TrayFull);
        rig.TestContact(High);
        rig.Set(High, 1);
        rig.LeapFor(Duration.FromSeconds(15));
        rig.Set(High, 0);
        rig.LeapFor(Duration.FromSeconds(15));
        rig.Reset(Key);
        Assert.True(Forbids);
        Assert.Contains(TrayFull, rig.Alarm(Key)!.Cause);
    }

    [Fact]
    public void AFailedTestReleasesNothing()
    {
        Contradict();
        rig.TestContact(TrayFull);
        rig.Scan(new BeginProofTest("Ada", High));
        rig.LeapFor(Duration.FromMinutes(2));
        rig.Reset(Key);
        Assert.True(Forbids);
    }

    [Fact]
    public void AFloatUnderTestIsNotJudged()
    {
        rig.Scan(new BeginProofTest("Ada", High));
        rig.Set(High, 1);
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.Contains(rig.Why("north/pump").Interlocks, words => words.StartsWith("high-water", StringComparison.Ordinal));
        rig.ScanFor(Duration.FromSeconds(30));
        Assert.Null(rig.Alarm(Key));
    }

    [Fact]
    public void APowerCutReleasesNothing()
    {
        Contradict();
        rig.TestContact(TrayFull);
        rig.Restart(Duration.FromDays(1));
        rig.ScanFor(Duration.FromMinutes(3));
        rig.Reset(Key);
        Assert.True(Forbids);

        rig.TestContact(High);
        rig.ScanFor(Duration.FromSeconds(5));
        Assert.True(Forbids);
        rig.Reset(Key);
        Assert.False(Forbids);
    }

    [Fact]
    public void AfterAResetTheNextContradictionAsksForTestsAnew()
    {
        Contradict();
        rig.TestContact(TrayFull);
        rig.TestContact(High);
        rig.Reset(Key);
        Contradict();
        rig.Reset(Key);
        Assert.True(Forbids);
    }

    private void Contradict()
    {
        rig.Set(High, 1);
        rig.LeapFor(Duration.FromSeconds(15));
        rig.Set(High, 0);
        rig.LeapFor(Duration.FromSeconds(15));
        Assert.True(Forbids);
    }

    private void Say(string one, double says, string other, double saysToo)
    {
        if (other != Level)
        {
            rig.Silence(Level);
        }

        rig.Set(one, says);
        rig.Set(other, saysToo);
    }

    [Fact]
    public void APassCountsOnceAndNotForAContradictionThatComesLater()
    {
        rig.LeapUntil(() => !rig.IsOn("north/pump"));
        rig.TestContact(High);
        rig.TestContact(TrayFull);
        rig.LeapFor(Duration.FromMinutes(5));
        Say(High, 1, TrayFull, 0);
        rig.LeapFor(Duration.FromSeconds(15));
        Say(High, 0, TrayFull, 0);
        rig.LeapFor(Duration.FromMinutes(5));
        Assert.EndsWith($"still to pass a proof test: {TrayFull}, {High}", rig.Alarm(Key)!.Cause, StringComparison.Ordinal);
    }
}
