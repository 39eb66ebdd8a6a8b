using System.Collections.Immutable;

namespace RackController.Control.Tests.Exploring;

/// <summary>Finds on which inputs the state of an interlock hangs, by trying: where taking one input the other way leads to another state,
/// it matters. What never does is left out of a walk, which would come to the same states many times over.</summary>
internal static class Sensitivity
{
    private const int Steps = 10_000;
    private const int RestartOneIn = 20;
    private const int StepsFromTheStart = 200;

    public static ImmutableArray<Input> Find(Wanderer wanderer, Portrait portrait, ImmutableArray<Input> all)
    {
        var random = new Random(7);
        var matters = new HashSet<Input>();
        var at = wanderer.Start;
        for (var step = 0; step < Steps; step++)
        {
            var tried = all[random.Next(all.Length)];
            Input[] likely = matters.Count > 0 && random.Next(2) > 0 ? [.. matters] : [.. all];
            var then = likely[random.Next(likely.Length)];
            if (!matters.Contains(tried) && IsFeltWith(then.Ways[random.Next(then.Ways.Length)].Set, tried, at))
            {
                matters.Add(tried);
            }

            // Whatever matters already is turned about oftener than the rest, so that deep states are come to.
            Standpoint[] next = random.Next(RestartOneIn) == 0
                ? [.. wanderer.Turnings(at, [then]).Select(turning => turning.To)]
                : [.. wanderer.Told(at, then), .. wanderer.Later(at)];
            at = step % StepsFromTheStart == StepsFromTheStart - 1 ? wanderer.Start : next[random.Next(next.Length)];
        }

        return [.. all.Where(matters.Contains)];

        // What one input was may be felt only when another turns.
        bool IsFeltWith(Func<Surroundings, Surroundings> then, Input input, Standpoint from) => wanderer.Told(from, input)
            .Append(wanderer.Wait(from, Wanderer.Scan))
            .Select(to => (Answer(to, portrait), Answer(wanderer.Look(to.Interlock, then(to.Around.After(Wanderer.Scan)), null), portrait)))
            .Distinct().Skip(1).Any();
    }

    /// <summary>What tells a state from every other.</summary>
    public static string KeyOf(Standpoint state, Portrait portrait, ImmutableArray<Input> matters)
    {
        var told = string.Join(',', matters.Select(input => Way(state, input)));
        return $"{Answer(state, portrait)}|{told}";
    }

    private static string Answer(Standpoint state, Portrait portrait) =>
        $"{portrait.Of(state.Interlock, state.Around.Now.Monotonic, state.Around.About.FloodNumber)}"
        + $"|{portrait.Left(state.Due, state.Around.Now.Monotonic)}";

    // The way that an input is set: the one that changes nothing.
    private static int Way(Standpoint state, Input input)
    {
        for (var i = 0; i < input.Ways.Length; i++)
        {
            if (IsSame(input.Ways[i].Set(state.Around), state.Around))
            {
                return i;
            }
        }

        return -1;
    }

    private static bool IsSame(Surroundings one, Surroundings other) =>
        one.About == other.About && one.Conditions == other.Conditions && one.IsShedding == other.IsShedding && one.IsCut == other.IsCut
        && one.Now == other.Now && one.Tests == other.Tests && one.HoldEndsAt is null == other.HoldEndsAt is null
        && one.Sensors.SequenceEqual(other.Sensors) && one.On.SequenceEqual(other.On)
        && one.Flows.SequenceEqual(other.Flows);
}
