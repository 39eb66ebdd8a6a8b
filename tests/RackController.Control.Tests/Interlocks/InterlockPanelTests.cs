using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>How several objections come together, and which of them are told.</summary>
public class InterlockPanelTests
{
    private const string Rope = "north/leak rope";
    private const string Float = "north/reservoir low float";
    private readonly Rig rig = new(Sites.OneRack());

    public InterlockPanelTests()
    {
        rig.LeapUntil(() => rig.IsOn("north/pump"));
        rig.ScanFor(Duration.FromSeconds(30));
    }

    [Fact]
    public void OfSeveralThatObjectTheMostSeriousIsTheReasonAndAllAreNamed()
    {
        rig.Set(Rope, 1);
        rig.Set(Float, 0);
        rig.ScanFor(Duration.FromSeconds(1));
        var why = rig.Why("north/pump");
        var off = rig.Events.Last(each => each is { Subject: "north/pump", What: "off" });
        Assert.Equal($"{Rope} was wet; somebody must look and reset", off.Because);
        Assert.Equal(["high-water", "low-float", "pump-rest"], why.Interlocks.Select(words => words[..words.IndexOf(':')]));

        // The low float is the pump's alone.
        Assert.Equal(["high-water"], rig.Why("north/tier 1 valve").Interlocks.Select(words => words[..words.IndexOf(':')]));
        Assert.Empty(rig.Why("north/fan").Interlocks);
    }

    [Fact]
    public void AnObjectionIsToldOnceAndSoIsItsEnd()
    {
        rig.Set(Float, 0);
        rig.ScanFor(Duration.FromSeconds(5));
        rig.Set(Float, 1);
        rig.LeapFor(Duration.FromMinutes(3));
        Assert.Equal(
            [("acts", "the reservoir's low float is dry"), ("returned", "its cause is gone")], Told("north/low-float"));
    }

    [Fact]
    public void ALatchIsToldAsOneAndReturnsWithItsReset()
    {
        rig.Set(Rope, 1);
        rig.ScanFor(Duration.FromSeconds(1));
        rig.Set(Rope, 0);
        rig.ScanFor(Duration.FromSeconds(5));
        rig.Scan(new ResetLatch("Ada", "north/high-water"), new ConfirmReset("Ben", "north/high-water"));
        Assert.Equal(
            [("latched", $"{Rope} was wet; somebody must look and reset"), ("returned", "its cause is gone")], Told("north/high-water"));
    }

    [Fact]
    public void WhatIsOrdinaryOrADoubtOrOnlyTellsIsNoNews()
    {
        rig.Silence(Rope);
        rig.LeapFor(Duration.FromHours(1));
        Assert.Contains(rig.Events, each => each is { Subject: "north/pump", What: "off" });
        Assert.Empty(Told("north/high-water"));
        Assert.Null(rig.Alarm("north/high-water"));
        Assert.Empty(Told("north/pump-rest"));
        Assert.NotNull(rig.Alarm($"{Rope}/reading-unknown"));
        Assert.Empty(Told($"{Rope}/reading-unknown"));
        Assert.Contains(rig.Why("north/pump").Interlocks, words => words == $"high-water: nobody knows whether {Rope} is wet");
    }

    [Fact]
    public void TheFirstOfSeveralThatNobodyKnowsIsNamed()
    {
        rig.Silence("north/tier 1 high float");
        rig.Silence(Rope);
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.Contains(rig.Why("north/pump").Interlocks, words => words == $"high-water: nobody knows whether {Rope} is wet");
        rig.Speak(Rope);
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.Contains(
            rig.Why("north/pump").Interlocks, words => words == "high-water: nobody knows whether north/tier 1 high float is wet");
    }

    [Fact]
    public void AReadingOfATierOutOfUseIsSuppressedByDesign()
    {
        rig.Silence("north/tier 1 high float");
        rig.LeapFor(Duration.FromMinutes(1));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm("north/tier 1 high float/reading-unknown")!.State);
        rig.Scan(new SetTierInUse("Ada", new RackId(0), 1, InUse: false));
        Assert.Equal(AlarmState.SuppressedByDesign, rig.Alarm("north/tier 1 high float/reading-unknown")!.State);
        rig.Scan(new SetTierInUse("Ada", new RackId(0), 1, InUse: true));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm("north/tier 1 high float/reading-unknown")!.State);
    }

    private IEnumerable<(string What, string Because)> Told(string key) => rig.Events
        .Where(each => each.Kind == EventKind.Interlock && each.Subject == key).Select(each => (each.What, each.Because));
}
