using CsCheck;
using NodaTime;
using RackController.Control;

namespace RackController.Notices.Tests;

public sealed class NoticeBookTests
{
    private static readonly string[] keys = [Cellar.Water, Cellar.Heat, Cellar.Cold];

    private static readonly AlarmState[] states =
    [
        AlarmState.Unacknowledged, AlarmState.Acknowledged, AlarmState.ReturnedUnacknowledged, AlarmState.Normal, AlarmState.Latched,
        AlarmState.Shelved,
    ];

    [Fact]
    public void AnAlarmThatComesBackSoonAndGoesAgainIsNotToldToBeOverFirst()
    {
        var (book, bundling) = (new NoticeBook(Cellar.Site, Cellar.Alarms), new Bundling(null, Cellar.Site.Zone));
        Assert.Equal([TidingKind.Raised], TellAfter(AlarmState.Unacknowledged, Cellar.Noon, Duration.FromMinutes(1)));
        Assert.Equal([TidingKind.Over], TellAfter(AlarmState.Normal, Cellar.Noon + Duration.FromMinutes(1), Duration.FromMinutes(1)));
        Assert.Empty(TellAfter(AlarmState.Unacknowledged, Cellar.Noon + Duration.FromMinutes(2), Duration.FromMinutes(1)));
        Assert.Empty(TellAfter(AlarmState.Normal, Cellar.Noon + Duration.FromMinutes(3), Duration.FromMinutes(1)));
        Assert.Equal(
            [TidingKind.Raised, TidingKind.Over],
            bundling.Due(book.Pending, Cellar.Noon + Duration.FromMinutes(11)).Select(tiding => tiding.Kind));

        IEnumerable<TidingKind> TellAfter(AlarmState state, Instant at, Duration wait)
        {
            book.Take(Cellar.Alarm(Cellar.Water, state, at), at);
            var due = bundling.Due(book.Pending, at + wait);
            book.Told(due, state.ToString(), at + wait);
            return due.Select(tiding => tiding.Kind);
        }
    }

    // Whatever alarms do, in whatever order: nothing is over that was not told to have begun, and no more is told than happened.
    [Fact]
    public void NoStoryIsToldFromItsEndAndNothingTwice() =>
        Gen.Select(Gen.Int[0, 2], Gen.Int[0, 5], Gen.Int[1, 1500]).Array[1, 60].Sample(story =>
        {
            var (book, bundling) = (new NoticeBook(Cellar.Site, Cellar.Alarms), new Bundling(null, Cellar.Site.Zone));
            var told = new List<Tiding>();
            var now = Cellar.Noon;
            foreach (var (key, state, pauseS) in story)
            {
                book.Take(Cellar.Alarm(keys[key], states[state], now), now);
                now += Duration.FromSeconds(pauseS);
                var due = bundling.Due(book.Pending, now);
                book.Told(due, $"bundle {told.Count}", now);
                told.AddRange(due);
            }

            var rest = bundling.Due(book.Pending, now + Duration.FromHours(1));
            book.Told(rest, "last", now);
            told.AddRange(rest);
            return book.Pending.Count == 0 && keys.All(key => IsSound(told.Where(tiding => tiding.Subject == key), story, key));
        }, iter: 20_000);

    private static bool IsSound(IEnumerable<Tiding> told, (int Key, int State, int PauseS)[] story, string key)
    {
        var calls = story.Count(step => keys[step.Key] == key && states[step.State] == AlarmState.Unacknowledged);
        var (begun, raised) = (false, 0);
        foreach (var tiding in told)
        {
            if (tiding.Kind == TidingKind.Over && !begun)
            {
                return false;
            }

            begun = tiding.Kind == TidingKind.Raised;
            raised += begun ? 1 : 0;
        }

        return raised <= calls;
    }
}
