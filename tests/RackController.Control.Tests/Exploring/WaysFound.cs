namespace RackController.Control.Tests.Exploring;

/// <summary>What a walk says of how an interlock comes back after its cause has acted.</summary>
internal static class WaysFound
{
    public static WaysBack In(RowWalk walk)
    {
        var acts = Acting(walk);
        var byItself = Reaching(
            walk, state => !state.Interlock.Objects,
            (kind, to) => kind is TurningKind.Facts or TurningKind.Time && !to.Interlock.IsLatched);
        var ways = default(WaysBack);
        for (var place = 0; place < walk.States.Count; place++)
        {
            ways |= acts(walk.States[place]) && !walk.States[place].Interlock.IsLatched && byItself[place] ? WaysBack.ByItself : 0;
            ways |= walk.States[place].Interlock.IsLatched ? WaysBack.Reset : 0;
        }

        var acknowledged = walk.Turnings.Any(turning => turning.Kind == TurningKind.Acknowledgement
            && acts(walk.States[turning.From]) && !walk.States[turning.To].Interlock.Objects
            && walk.Wanderer.Wait(walk.States[turning.From], Wanderer.Scan).Interlock.Objects);
        return ways | (acknowledged ? WaysBack.Acknowledgement : 0);
    }

    /// <summary>Which states can come to one of certain states by turnings of certain kinds.</summary>
    public static bool[] Reaching(RowWalk walk, Func<Standpoint, bool> isGoal, Func<TurningKind, Standpoint, bool> mayTake)
    {
        var back = walk.Turnings.Where(turning => mayTake(turning.Kind, walk.States[turning.To])).ToLookup(
            turning => turning.To, turning => turning.From);
        var reaches = new bool[walk.States.Count];
        var open = new Stack<int>(Enumerable.Range(0, reaches.Length).Where(place => isGoal(walk.States[place])));
        while (open.TryPop(out var place))
        {
            if (!reaches[place])
            {
                reaches[place] = true;
                foreach (var before in back[place])
                {
                    open.Push(before);
                }
            }
        }

        return reaches;
    }

    // A row that tells nobody acts whenever it objects; a doubt of which others tell is no cause.
    private static Func<Standpoint, bool> Acting(RowWalk walk) => walk.States.Any(state => state.Interlock.IsAlarming)
        ? state => state.Interlock.IsAlarming
        : state => state.Interlock.Objects;
}
