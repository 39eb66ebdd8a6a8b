using NodaTime;
using RackController.Control;

namespace RackController.Notices.Tests;

/// <summary>What outlasts a power cut, a journal that was put aside, and hours in which nobody listened.</summary>
public sealed class LastingTests
{
    private static readonly Duration minute = Duration.FromMinutes(1);

    private readonly FakeWay mail = new();

    [Fact]
    public void NothingOfThePastIsToldWhenNoticesBegin()
    {
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged);
        File.Delete(rig.KeptPath);
        rig.PowerCut();
        rig.Pass(minute);

        Assert.Empty(mail.Came);
    }

    [Fact]
    public void AJournalThatIsBegunAnewTellsNothingOfWhatWasTold()
    {
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged, "hot");
        rig.Pass(minute);
        rig.LoseJournal();
        rig.Happens(Cellar.Alarm(Cellar.Heat, AlarmState.Unacknowledged, Cellar.Noon, "hot"));
        rig.Happens(Cellar.Alarm(Cellar.Water, AlarmState.Unacknowledged, rig.Clock.Now, "wet"));
        rig.Pass(minute);

        Assert.Equal(["High, Millbrook cellar: hot", "Critical, Millbrook cellar: wet"], mail.Subjects);
    }

    [Fact]
    public void WhatWasRaisedWhileNobodyListenedIsToldOnceSomebodyDoes()
    {
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged, "hot");
        rig.Clock.Now += Duration.FromHours(5);
        rig.PowerCut();
        rig.Pass(minute);

        Assert.Equal(["High, Millbrook cellar: hot"], mail.Subjects);
    }

    [Fact]
    public void APowerCutRepeatsAMessageUnderTheSameNameAtWorst()
    {
        mail.Answer = null;
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged, "hot");
        rig.Pass(minute);
        Assert.Single(mail.Came);

        rig.PowerCut();
        mail.Answer = SendResult.Sent;
        rig.Pass(minute);
        rig.PowerCut();
        rig.Pass(minute);

        Assert.Equal(2, mail.Came.Count);
        Assert.Equal(mail.Came[0].Id, mail.Came[1].Id);
    }

    [Fact]
    public void MessagesThatWaitedForAWayThatIsNoMoreAreDroppedWithAWord()
    {
        var pager = new FakeWay("pager") { Answer = new SendResult("the line is dead", IsFinal: false) };
        using var rig = new NoticeRig(Cellar.WithNotices(), mail, pager);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged, "hot");
        rig.Pass(minute);
        rig.Alarms(Cellar.Water, AlarmState.Unacknowledged, "wet");
        rig.Pass(minute);
        rig.PowerCut();
        Assert.DoesNotContain(rig.Log, line => line.Contains("dropped", StringComparison.Ordinal));

        rig.Ways = [mail];
        rig.PowerCut();
        rig.Step();
        rig.PowerCut();

        Assert.Equal(
            "pager: 2 messages that waited are dropped: the rack file has this way no more",
            Assert.Single(rig.Log, line => line.Contains("dropped", StringComparison.Ordinal)));
    }

    [Fact]
    public void AJournalThatIsNotThereYetIsWaitedFor()
    {
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        rig.LoseJournal();
        rig.Pass(minute);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged);
        rig.Pass(minute);

        Assert.Single(mail.Came);
        Assert.Null(rig.Status.Trouble);
    }
}
