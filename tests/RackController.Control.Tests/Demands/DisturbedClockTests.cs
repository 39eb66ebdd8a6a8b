using CsCheck;
using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Control.Tests.Demands;

/// <summary>A whole controller whose clock steps, loses its trust and regains it, while people ask for floods.</summary>
public class DisturbedClockTests
{
    private enum Disturbance
    {
        Step,
        LoseTrust,
        GainTrust,
        FloodNow,
        SkipNext,
    }

    private static readonly Gen<(Disturbance What, int StepMinutes, int RunMinutes)[]> Disturbances =
        Gen.Select(Gen.Enum<Disturbance>(), Gen.Int[-480, 480], Gen.Int[1, 240]).Array[1, 12];

    [Fact]
    [Trait("Pace", "long")]
    public void ThePumpNeverStartsBeforeItsRestIsOver() => Disturbances.Sample(
        disturbances =>
        {
            var rig = Disturbed(disturbances);
            var moves = rig.Events.Where(each => each.Kind == EventKind.Load && each.Subject == "north/pump").ToList();
            var rest = rig.Site.Racks[0].Limits.PumpRest;
            return moves.Zip(moves.Skip(1))
                .Where(pair => pair.Second.What == "on")
                .All(pair => pair.Second.At.Monotonic - pair.First.At.Monotonic >= rest);
        },
        iter: 50);

    [Fact]
    [Trait("Pace", "long")]
    public void AQuietDayLaterFloodsComeWhenTheyAreDue() => Disturbances.Sample(
        disturbances =>
        {
            var rig = Disturbed(disturbances);
            rig.TrustWall(true);
            rig.LeapFor(Duration.FromDays(1));
            var quiet = rig.Now.Wall;
            rig.LeapFor(Duration.FromDays(1));
            var due = rig.Events.Where(each => each.What == FloodEvent.Due && each.At.Wall > quiet);
            var times = due.Select(each => each.At.Wall.InZone(rig.Site.Zone).TimeOfDay).Order().ToList();
            Assert.Equal([7, 13, 19], times.Select(time => time.Hour));
            Assert.All(times, time => Assert.True(time.Minute == 0 && time.Second == 0));
        },
        iter: 50);

    private static Rig Disturbed((Disturbance What, int StepMinutes, int RunMinutes)[] disturbances)
    {
        var rig = new Rig(Sites.OneRack());
        foreach (var (what, stepMinutes, runMinutes) in disturbances)
        {
            switch (what)
            {
                case Disturbance.Step:
                    rig.StepWall(Duration.FromMinutes(stepMinutes));
                    break;
                case Disturbance.LoseTrust:
                case Disturbance.GainTrust:
                    rig.TrustWall(what == Disturbance.GainTrust);
                    break;
                case Disturbance.FloodNow:
                    rig.Ask(new FloodNow("Ada", new RackId(0)));
                    break;
                default:
                    rig.Ask(new SkipNextFlood("Ada", new RackId(0)));
                    break;
            }

            rig.LeapFor(Duration.FromMinutes(runMinutes));
        }

        return rig;
    }
}
