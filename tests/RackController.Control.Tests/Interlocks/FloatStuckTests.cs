using NodaTime;
using RackController.Control.Tests.ProofTests;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Rows float-stuck and float-still.</summary>
public class FloatStuckTests
{
    private const string Float = "north/tier 1 full float";
    private const string Other = "north/tier 2 full float";
    private const string Stuck = $"{Float}/float-stuck";
    private const string Still = $"{Float}/float-still";
    private readonly Rig rig = new(ProofSite.Whole.WithLimits(limits => limits with { StillFloodsToTell = 2, StillFloodsToForbid = 4 }));

    private bool Forbids => rig.Why("north/pump").Interlocks.Any(words => words.StartsWith("float-stuck", StringComparison.Ordinal));

    [Fact]
    public void AFloatThatDoesNotMoveIsToldOfAndThenHoldsThePump()
    {
        Flood();
        Assert.Null(rig.Alarm(Still));
        Flood();
        Assert.Equal($"{Float} did not move in 2 floods", rig.Alarm(Still)!.Cause);
        Assert.False(Forbids);
        Flood();
        Assert.Null(rig.Alarm(Stuck));
        Flood();
        Assert.True(Forbids);
        Assert.Equal($"{Float} did not move in 4 floods and must pass a proof test", rig.Alarm(Stuck)!.Cause);
        rig.LeapFor(Duration.FromDays(1));
        Assert.False(rig.IsOn("north/pump"));
    }

    [Fact]
    public void ItIsReleasedOnlyByAResetAfterItPassedItsTest()
    {
        HoldThePump();
        rig.Reset(Stuck);
        Assert.True(Forbids);

        rig.TestContact(Float);
        Assert.True(Forbids);
        Assert.Equal($"{Float} did not move in 4 floods and has passed a proof test", rig.Alarm(Stuck)!.Cause);
        rig.Reset(Stuck);
        Assert.False(Forbids);
        rig.LeapUntil(() => rig.IsOn("north/pump"));
    }

    [Fact]
    public void AFloatThatMovesByItselfIsNotReleased()
    {
        HoldThePump();
        rig.Move(Float, 1);
        rig.Move(Float, 0);
        rig.Reset(Stuck);
        Assert.True(Forbids);
    }

    [Fact]
    public void TheTellingGoesOnceTheFloatMoves()
    {
        Flood();
        Flood();
        rig.Move(Float, 1);
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Still)!.State);
        rig.Move(Float, 0);
        Flood();
        Flood();
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Still)!.State);
    }

    [Fact]
    public void AFloatThatMovesInEveryFloodIsWell()
    {
        for (var flood = 0; flood < 5; flood++)
        {
            rig.LeapUntil(() => rig.Control.FloodPhase(new RackId(0)) == FloodPhase.Filling);
            rig.Set(Float, 1);
            rig.Set(Other, 1);
            rig.LeapUntil(() => rig.Control.FloodPhase(new RackId(0)) == FloodPhase.Draining);
            rig.Set(Float, 0);
            rig.Set(Other, 0);
            rig.LeapFor(Duration.FromMinutes(20));
        }

        Assert.Null(rig.Alarm(Still));
    }

    [Fact]
    public void AFloatThatIsLateInEveryFloodMovesAllTheSame()
    {
        for (var flood = 0; flood < 5; flood++)
        {
            Flood();
            rig.Move(Float, 1);
            rig.Move(Float, 0);
        }

        Assert.Null(rig.Alarm(Still));
    }

    [Fact]
    public void ATierOutOfUseOwesNoMove()
    {
        rig.Scan(new SetTierInUse("Ada", new RackId(0), 1, InUse: false));
        for (var flood = 0; flood < 3; flood++)
        {
            Flood();
        }

        Assert.Null(rig.Alarm(Still));
    }

    [Fact]
    public void AFloodThatWasCutShortIsNotCounted()
    {
        for (var flood = 0; flood < 5; flood++)
        {
            rig.LeapUntil(() => rig.Control.FloodPhase(new RackId(0)) == FloodPhase.Filling);
            rig.Scan(new Stop("Ada", null));
            rig.LeapFor(Duration.FromMinutes(20));
            rig.Scan(new Resume("Ada", null));
        }

        Assert.Null(rig.Alarm(Still));
    }

    [Fact]
    public void AFloatThatIsStuckWetAndFallsSilentHasNotMoved()
    {
        rig.Set(Float, 1);
        rig.Scan(new SetTierInUse("Ada", new RackId(0), 1, InUse: false));
        Flood();
        rig.Silence(Float);
        rig.LeapFor(Duration.FromMinutes(1));
        rig.Scan(new SetTierInUse("Ada", new RackId(0), 1, InUse: true));
        Flood();
        Assert.Null(rig.Alarm(Still));
        Flood();
        Assert.NotNull(rig.Alarm(Still));
    }

    [Fact]
    public void WhatIsUnknownHasNotMoved()
    {
        Flood();
        rig.Silence(Float);
        rig.LeapFor(Duration.FromMinutes(1));
        rig.Speak(Float);
        rig.LeapFor(Duration.FromMinutes(1));
        Flood();
        Assert.NotNull(rig.Alarm(Still));
    }

    [Fact]
    public void APowerCutForgetsNeitherCountNorLatch()
    {
        Flood();
        rig.Restart(Duration.FromMinutes(5));
        Flood();
        Assert.NotNull(rig.Alarm(Still));
        Flood();
        Flood();
        rig.Restart(Duration.FromMinutes(5));
        rig.ScanFor(Duration.FromMinutes(3));
        rig.Reset(Stuck);
        Assert.True(Forbids);
        rig.TestContact(Float);
        rig.ScanFor(Duration.FromSeconds(5));
        Assert.True(Forbids);
        rig.Reset(Stuck);
        Assert.False(Forbids);
    }

    [Fact]
    public void WhereTimeEndsTheFillTheFloatIsNotAsked()
    {
        var byTime = ProofSite.Whole.WithSchedule(schedule => schedule with
        {
            Floods = schedule.Floods with { Fill = new FillForTime(Duration.FromMinutes(5)) },
        });
        Assert.DoesNotContain(
            CauseAndEffectTable.At(byTime), at => at.Row.Id is "float-stuck" or "float-still" && !at.Stands.IsEmpty);
    }

    private void HoldThePump()
    {
        for (var flood = 0; flood < 4; flood++)
        {
            Flood();
        }

        Assert.True(Forbids);
    }

    // The other tray's float moves, or both would be doubted.
    private void Flood()
    {
        rig.LeapUntil(() => rig.Control.FloodPhase(new RackId(0)) == FloodPhase.Filling);
        rig.Set(Other, 1);
        rig.LeapUntil(() => rig.Control.FloodPhase(new RackId(0)) == FloodPhase.Soaking);
        rig.LeapFor(Duration.FromMinutes(1));
        rig.Set(Other, 0);
        rig.LeapFor(Duration.FromMinutes(1));
    }
}
