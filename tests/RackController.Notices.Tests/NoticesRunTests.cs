using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Notices.Tests;

public sealed class NoticesRunTests
{
    private static readonly Duration minute = Duration.FromMinutes(1);

    private readonly FakeWay mail = new();

    [Fact]
    public void AnAlarmIsToldWithinAMinuteWithWhatToDo()
    {
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged, "the air is at 33.0 °C");
        rig.Pass(minute);

        var letter = Assert.Single(mail.Came);
        Assert.Equal("High, Millbrook cellar: the air is at 33.0 °C", letter.Subject);
        Assert.Contains("Monday 1 June 2026 12:00:00 BST", letter.Body, StringComparison.Ordinal);
        Assert.Contains("look at fans and ventilation (within an hour)", letter.Body, StringComparison.Ordinal);
        Assert.Contains("certified to no standard", letter.Body, StringComparison.Ordinal);
    }

    [Fact]
    public void TheDozenAlarmsOfAnOutageAreOneMessage()
    {
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        var keys = Cellar.Alarms.OfSite.Take(12).Select(alarm => alarm.Key).ToList();
        foreach (var key in keys)
        {
            rig.Alarms(key, AlarmState.Unacknowledged);
            rig.Clock.Now += Duration.FromSeconds(2);
            rig.Step();
        }

        rig.Pass(minute);

        var letter = Assert.Single(mail.Came);
        Assert.EndsWith(", and 11 more", letter.Subject, StringComparison.Ordinal);
        Assert.All(keys, key => Assert.Contains(key, letter.Body, StringComparison.Ordinal));
    }

    [Fact]
    public void TheEndOfAnAlarmGoesOnFromItsBeginning()
    {
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged, "hot");
        rig.Pass(minute);
        rig.Alarms(Cellar.Heat, AlarmState.ReturnedUnacknowledged);
        rig.Pass(minute);

        Assert.Equal(["High, Millbrook cellar: hot", "High, Millbrook cellar: over: hot"], mail.Subjects);
        Assert.Equal(mail.Came[0].Id, Assert.Single(mail.Came[1].References));
    }

    [Fact]
    public void TheEndOfWhatWasNeverToldIsNotTold()
    {
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        rig.Alarms(Cellar.Heat, AlarmState.ReturnedUnacknowledged);
        rig.Alarms(Cellar.Cold, AlarmState.Normal);
        rig.Pass(minute);

        Assert.Empty(mail.Came);
    }

    [Theory]
    [InlineData(AlarmState.Shelved)]
    [InlineData(AlarmState.SuppressedByDesign)]
    [InlineData(AlarmState.OutOfService)]
    public void WhatIsPutAsideIsNotTold(AlarmState state)
    {
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged);
        rig.Alarms(Cellar.Heat, state);
        rig.Pass(Duration.FromHours(1));

        Assert.Empty(mail.Came);
    }

    [Fact]
    public void AnUrgentAlarmThatNobodyAcknowledgesIsToldOnceMore()
    {
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged, "hot");
        rig.Alarms(Cellar.Cold, AlarmState.Unacknowledged, "cold");
        rig.Pass(Duration.FromHours(3));

        Assert.Equal(["High, Millbrook cellar: hot, and 1 more", "High, Millbrook cellar: nobody has acknowledged: hot"], mail.Subjects);
    }

    [Fact]
    public void WhatSomebodyAcknowledgedIsNotToldAgain()
    {
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged);
        rig.Pass(minute);
        rig.Alarms(Cellar.Heat, AlarmState.Acknowledged);
        rig.Pass(Duration.FromHours(3));

        Assert.Single(mail.Came);
    }

    [Fact]
    public void QuietHoursHoldWhatCanWaitAndTellItAsOneAfterwards()
    {
        using var rig = new NoticeRig(
            Cellar.WithNotices(new QuietHours(new LocalTime(12, 0), new LocalTime(14, 0), AlarmPriority.Critical)), mail);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged, "hot");
        rig.Pass(minute * 20);
        rig.Alarms(Cellar.Heat, AlarmState.ReturnedUnacknowledged);
        rig.Alarms(Cellar.Cold, AlarmState.Unacknowledged, "cold");
        rig.Pass(minute * 90);
        Assert.Empty(mail.Came);

        rig.Alarms(Cellar.Water, AlarmState.Unacknowledged, "wet");
        rig.Pass(minute);
        Assert.Equal(["Critical, Millbrook cellar: wet"], mail.Subjects);

        rig.Pass(minute * 20);
        Assert.Equal("High, Millbrook cellar: hot, and 2 more", mail.Came[^1].Subject);
        Assert.Equal(2, mail.Came.Count);
    }

    [Fact]
    public void EachWayIsToldWhatIsUrgentEnoughForIt()
    {
        var pager = new FakeWay("pager", AlarmPriority.Critical);
        using var rig = new NoticeRig(Cellar.WithNotices(), mail, pager);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged, "hot");
        rig.Alarms(Cellar.Water, AlarmState.Unacknowledged, "wet");
        rig.Pass(minute);

        Assert.Equal(["Critical, Millbrook cellar: wet, and 1 more"], mail.Subjects);
        Assert.Equal(["Critical, Millbrook cellar: wet"], pager.Subjects);
    }

    [Fact]
    public void AnAlarmThatComesAndGoesIsToldEveryTenMinutesAtMost()
    {
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        for (var i = 0; i < 60; i++)
        {
            rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged);
            rig.Pass(minute / 2);
            rig.Alarms(Cellar.Heat, AlarmState.ReturnedUnacknowledged);
            rig.Pass(minute / 2);
        }

        Assert.InRange(mail.Came.Count, 1, 14);
    }

    [Fact]
    public void ASilentControllerIsToldOnceAndItsReturnToo()
    {
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        rig.IsAlive = false;
        rig.Pass(minute * 2);
        Assert.Empty(mail.Came);

        rig.Pass(minute * 30);
        Assert.Equal(["High, Millbrook cellar: the controller gives no sign of life"], mail.Subjects);

        rig.IsAlive = true;
        rig.Pass(minute);
        Assert.Equal("High, Millbrook cellar: the controller drives the racks again", mail.Came[^1].Subject);
        Assert.Equal(mail.Came[0].Id, Assert.Single(mail.Came[1].References));
    }

    [Fact]
    public void AStoppedControllerIsToldUnlessAnotherRunTakesOverAtOnce()
    {
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        rig.Happens(Cellar.Controller("stopped", rig.Clock.Now, "the rack file was changed"));
        rig.Pass(Duration.FromSeconds(10));
        rig.Happens(Cellar.Controller("started", rig.Clock.Now));
        rig.Pass(minute * 10);
        Assert.Empty(mail.Came);

        rig.Happens(Cellar.Controller("stopped", rig.Clock.Now, "the controller was asked to end"));
        rig.IsAlive = false;
        rig.Pass(minute * 10);
        Assert.Equal(
            ["Medium, Millbrook cellar: the controller was stopped, because the controller was asked to end"], mail.Subjects);
    }

    [Fact]
    public void WhatTheControllerDidInTheNightIsToldInTheMorning()
    {
        using var rig = new NoticeRig(
            Cellar.WithNotices(new QuietHours(new LocalTime(12, 0), new LocalTime(14, 0), AlarmPriority.Critical)), mail);
        rig.IsAlive = false;
        rig.Pass(minute * 20);
        rig.IsAlive = true;
        rig.Pass(minute * 120);

        var letter = Assert.Single(mail.Came);
        Assert.Equal("High, Millbrook cellar: the controller gives no sign of life, and 1 more", letter.Subject);
        Assert.Contains("the controller drives the racks again", letter.Body, StringComparison.Ordinal);
    }

    [Fact]
    public void AnAlarmOfWhoseEndNobodyHeardIsToldWhenItComesAgain()
    {
        using var rig = new NoticeRig(Cellar.WithNotices(), mail);
        rig.Alarms("controller/page", AlarmState.Unacknowledged, "not served");
        rig.Pass(minute);
        rig.Happens(Cellar.Controller("started", rig.Clock.Now));
        rig.Pass(minute * 30);
        rig.Alarms("controller/page", AlarmState.Unacknowledged, "not served again");
        rig.Pass(minute);

        Assert.Equal(["Low, Millbrook cellar: not served", "Low, Millbrook cellar: not served again"], mail.Subjects);
    }

    [Fact]
    public void ATestIsSentByEveryWayQuietHoursOrNot()
    {
        var pager = new FakeWay("pager", AlarmPriority.Critical);
        using var rig = new NoticeRig(
            Cellar.WithNotices(new QuietHours(new LocalTime(0, 0), new LocalTime(23, 59), AlarmPriority.Critical)), mail, pager);
        rig.Alarms(Cellar.Water, AlarmState.Unacknowledged);
        rig.Happens(Cellar.Controller(NoticesStatus.TestAsked, rig.Clock.Now, "ada asked"));
        rig.Step();

        Assert.Equal(["Test, Millbrook cellar: notices arrive"], mail.Subjects);
        Assert.Equal(["Test, Millbrook cellar: notices arrive"], pager.Subjects);
        Assert.Contains("ada asked", pager.Came[0].Body, StringComparison.Ordinal);
    }

    [Fact]
    public void AWayThatHangsHoldsUpNoOther()
    {
        var stuck = new FakeWay("stuck") { Answer = null };
        using var rig = new NoticeRig(Cellar.WithNotices(), stuck, mail);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged);
        rig.Pass(minute);
        rig.Alarms(Cellar.Water, AlarmState.Unacknowledged);
        rig.Pass(minute);

        Assert.Single(stuck.Came);
        Assert.Equal(2, mail.Came.Count);
    }

    [Fact]
    public void WhatIsRefusedForGoodIsToldByTheOtherWaysAndOnThePage()
    {
        var refusing = new FakeWay("mail to nobody@home.example") { Answer = SendResult.Refused("550 no such mailbox") };
        using var rig = new NoticeRig(Cellar.WithNotices(), refusing, mail);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged, "hot");
        rig.Pass(minute * 10);

        Assert.Single(refusing.Came);
        string[] expected =
        [
            "High, Millbrook cellar: hot",
            "Medium, Millbrook cellar: mail to nobody@home.example does not get through: 550 no such mailbox",
        ];
        Assert.Equal(expected, mail.Subjects);
        Assert.Equal("550 no such mailbox", rig.Status.Ways[0].Fault);
        Assert.Contains(rig.Log, line => line.Contains("550 no such mailbox", StringComparison.Ordinal));
    }

    [Fact]
    public void WaysThatAllFailTellEachOtherOnce()
    {
        FakeWay[] ways = [.. Enumerable.Range(1, 3).Select(i => new FakeWay($"way {i}") { Answer = SendResult.Refused("no") })];
        using var rig = new NoticeRig(Cellar.WithNotices(), ways);
        rig.Alarms(Cellar.Heat, AlarmState.Unacknowledged);
        rig.Pass(Duration.FromHours(2));

        Assert.All(ways, way => Assert.InRange(way.Came.Count, 1, 4));
    }
}
