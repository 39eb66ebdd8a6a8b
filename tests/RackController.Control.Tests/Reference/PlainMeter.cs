using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>What the sensor of a circuit's current tells of its loads, in one run of the controller, page by page: by how much the current
/// has changed when it stands again after a switching, and by how much for no reason that anybody knows.</summary>
/// <param name="story">The chronicle.</param>
/// <param name="circuit">The circuit.</param>
/// <param name="meter">The sensor.</param>
internal sealed class PlainMeter(Chronicle story, Circuit circuit, Sensor meter)
{
    private const int Learns = 30;
    private static readonly Duration settles = Duration.FromSeconds(3);
    private readonly List<PlainLoad> loads = [.. story.Site.Loads.Where(load => load.Circuit == circuit.Id)
        .Select(load => new PlainLoad(load, load.CurrentA(circuit.VoltageV)))];

    // By then the next load is on that comes back.
    private readonly Duration comesBack = CurrentRowsPlain.LimitsOf(story.Site, circuit.Id)
        .SelectMany(limits => new[] { limits.RestartSpacing, limits.RelayRest }).Max();

    private double scatterA;
    private double beforeA = double.NaN;
    private double stoodA = double.NaN;
    private MonotonicTime settlesAt;
    private MonotonicTime looksAt = story.Now.Boot.Start.Monotonic + settles;
    private bool isSettling;
    private bool isDeaf;
    private int looks;

    private PlainAlone Alone => field ??= new PlainAlone(loads, IsSeen);

    /// <summary>Reads the last page.</summary>
    public void Read()
    {
        var now = story.Now.At.Monotonic;
        var switched = loads.Where(load => story.WasOn(load.Load.Id, story.Last) != load.IsTold).ToList();
        foreach (var load in loads)
        {
            load.HasOwnWord = PlainCurrents.InTheWireOf(story.Site, load.Load) is { } wire
                && story.Now.Believed[wire.Id.Index] is not null;
        }

        foreach (var load in switched)
        {
            load.IsTold = !load.IsTold;
            load.Switched += load.IsTold ? 1 : -1;
        }

        if (switched.Count > 0)
        {
            if (!isSettling)
            {
                // The scan that switched saw what was before.
                beforeA = story.IsFirstOfItsRun(story.Last) ? double.NaN : Said(story.Last - 1) ?? double.NaN;
                Wander(beforeA - stoodA, stoodA);
            }

            (isSettling, settlesAt) = (true, now + settles);
        }

        if (story.Last > 0 && story.WasCut(circuit.Id, story.Last - 1) && !story.IsFirstOfItsRun(story.Last)
            && !story.WasCut(circuit.Id, story.Last))
        {
            (beforeA, stoodA, isSettling, settlesAt) = (double.NaN, double.NaN, true, now + settles);
        }

        if (Said(story.Last) is not { } saidA || !story.Now.Conditions.Io.IsOk)
        {
            (isSettling, stoodA) = (false, double.NaN);
            Alone.Forget();
            loads.ForEach(load => (load.SawFall, load.IsSeenAlone) = (false, false));
            foreach (var load in loads.Where(load => load.Switched != 0))
            {
                (load.Flow, load.Switched) = (Flow.Unknown, 0);
            }
        }
        else if (now >= (isSettling ? settlesAt : looksAt))
        {
            LookAt(saidA, now);
        }
    }

    /// <summary>What it knows of a load now.</summary>
    public Flow Of(Load load)
    {
        var own = loads.Single(each => each.Load.Id == load.Id);
        return Said(story.Last) is not null && story.Now.Conditions.Io.IsOk && own.Switched == 0
            && (IsSeen(own) || own is { IsSeenAlone: true, Flow: Flow.Still }) ? own.Flow : Flow.Unknown;
    }

    /// <summary>Whether it carries too little for a load that another sensor takes to draw current, or saw it fall and has not risen
    /// since.</summary>
    public bool SpeaksAgainst(Load load)
    {
        var own = loads.Single(each => each.Load.Id == load.Id);
        return Said(story.Last) is { } saidA && !isDeaf && IsSeen(own)
            && (isSettling || saidA < own.DrawsA / 2
                || ((own.SawFall || own is { IsSeenAlone: true, Flow: Flow.Still }) && !own.MayBe(saidA - stoodA)));
    }

    /// <summary>What it thinks of a load that is told off; null while it cannot know.</summary>
    public (Flow Flow, bool IsSeenAlone)? ThinksOf(Load load)
    {
        var own = loads.Single(each => each.Load.Id == load.Id);
        var knows = Said(story.Last) is not null && story.Now.Conditions.Io.IsOk && own.Switched == 0 && IsSeen(own);
        return knows ? (own.Flow, own.IsSeenAlone) : null;
    }

    private double? Said(int page) => story.Pages[page].Believed[meter.Id.Index];

    private void LookAt(double saidA, MonotonicTime now)
    {
        looksAt = now + (looks < Learns || !loads.Any(load => load.IsTold) ? Duration.FromSeconds(10) : Duration.FromMinutes(5));
        if (isSettling && story.Now.Readings[meter.Id.Index].TakenAt < settlesAt)
        {
            settlesAt = now + settles;
            return;
        }

        looks = Math.Min(looks + 1, Learns);
        if (isSettling && loads.Any(load => load.Switched != 0))
        {
            Judge(saidA - beforeA, saidA, saidA - stoodA);
        }
        else
        {
            Wander(saidA - stoodA, stoodA);
            if (now >= settlesAt + comesBack && loads.Any(load => load.IsTold))
            {
                Alone.Answers(isLast: true);
            }
        }

        (isSettling, stoodA) = (false, saidA);
        Bound(saidA);
    }

    // Of the loads that switched, each is thought to have followed where too little is missing for it not to have.
    private void Judge(double changeA, double saidA, double sinceA)
    {
        var switched = loads.Where(load => load.Switched != 0).ToList();
        var isAlone = switched.Count == 1;
        var doubtsA = switched.ToDictionary(load => load, load => load.DoubtA);
        var expectedA = switched.Sum(load => load.ExpectedA);
        var resolvesA = 0.00125 * circuit.BreakerA;
        var saysTheSame = Math.Abs(changeA) < resolvesA && Math.Abs(expectedA) >= 4 * resolvesA && loads.All(load => !load.IsTold);
        isDeaf = (isDeaf || saysTheSame) && !Hears(changeA);
        if (isDeaf && saidA >= LeastA)
        {
            loads.ForEach(load => (load.Flow, load.Switched, load.SawFall, load.IsSeenAlone) = (Flow.Unknown, 0, false, false));
            Alone.Forget();
            return;
        }

        var missingA = expectedA - changeA;
        SuspectOthers(switched, missingA, sinceA - expectedA, saidA - sinceA);
        var alike = switched.Where(load => IsLike(load, Math.Abs(missingA))).ToList();
        foreach (var load in switched)
        {
            var standsOut = isAlone || (alike.Count == 1 && alike[0] == load);
            var othersDoubtA = Math.Sqrt(doubtsA.Where(each => each.Key != load).Sum(each => each.Value * each.Value));
            var share = Math.Max(1.0 / 3, (LeastA + othersDoubtA) / load.DrawsA);
            var canTell = share <= 0.5 && !double.IsNaN(missingA);
            var followed = missingA * load.Switched < (1 - share) * load.DrawsA;
            var isOn = load.Switched > 0;
            if (canTell && followed && isAlone)
            {
                load.Learn(Math.Abs(load.ExpectedA - missingA));
            }

            // What drew current though it was told off does so still.
            var drew = load.Flow is Flow.Flows or Flow.SeemsToFlow or Flow.MayFlow;
            var flowsOn = saidA >= load.DrawsA / 2 && load.Flow != Flow.Still && load.LostA < 0.65 * load.DrawsA
                && (!load.IsAir || load.StaysOn);
            load.Flow = (canTell, isOn) switch
            {
                (false, _) => Flow.Unknown,
                (true, true) => followed || drew || load.MayStayOn ? Flow.Flows : Flow.Still,
                (true, false) => followed || !flowsOn ? Flow.Still : standsOut ? Flow.Flows : Flow.SeemsToFlow,
            };
            load.StaysOn = canTell && !followed && load.Flow == Flow.Flows && (load.StaysOn || (isOn && load.MayStayOn));
            load.MayStayOn &= !isOn || !canTell;
            load.WasDead = isOn ? load.Flow == Flow.Still : load.WasDead;
            (load.Switched, load.LostA, load.SawFall, load.IsSeenAlone) = (0, 0, canTell && followed && !isOn, false);
        }

        Alone.Answers(isLast: false);
    }

    // What stopped or began to draw while others were switched.
    private void SuspectOthers(List<PlainLoad> switched, double missingA, double riseA, double fromA)
    {
        foreach (var load in loads.Where(load => load.Switched == 0))
        {
            load.SawFall &= !load.MayBe(-missingA);
            load.IsSeenAlone &= !load.MayBe(Math.Abs(missingA));
        }

        var oneOf = loads.Where(load => load is { Switched: 0, IsTold: true } && load.Flow != Flow.Still && IsLike(load, missingA))
            .ToList();
        oneOf.ForEach(load => (load.Flow, load.LostA) = (Flow.SeemsStill, load.LostA + missingA));
        if (oneOf.Count == 0 && missingA > 1.35 * switched.Sum(load => Math.Abs(load.ExpectedA)))
        {
            SuspectAnyOf(missingA);
        }

        // A pump that is off while the current stands higher than it stood, by as much as it draws and nobody switched.
        foreach (var pump in loads.Where(load => load is { Switched: 0, IsTold: false, Load.Kind: LoadKind.Pump }
            && load.Flow != Flow.Flows && IsLike(load, riseA) && !load.IsExcused(riseA, fromA)))
        {
            pump.Flow = Flow.SeemsToFlow;
        }
    }

    // A change by as much as a load draws is suspicious.
    private void Wander(double changeA, double fromA)
    {
        var isKnown = !double.IsNaN(changeA);
        isDeaf &= !Hears(changeA);
        scatterA = isKnown ? 0.9 * scatterA + 0.1 * Math.Min(Math.Abs(changeA), 4 * LeastA) : scatterA;
        foreach (var load in loads)
        {
            load.SawFall &= !load.MayBe(changeA);
            load.IsSeenAlone &= !load.MayBe(Math.Abs(changeA));
            load.LostA = load.WasTold && isKnown ? Math.Max(0, load.LostA - changeA) : 0;
        }

        var rises = loads
            .Where(load => !load.WasTold && load.Flow != Flow.Flows && IsLike(load, changeA) && !load.IsExcused(changeA, fromA))
            .MinBy(load => Off(load, changeA));
        var oneOf = loads.Where(load => load.WasTold
            && (IsLike(load, -changeA) || (load.Flow == Flow.Still && IsLike(load, changeA)))).ToList();
        var unplugged = loads.Where(load => !load.WasTold && load.Flow == Flow.Flows && IsLike(load, -changeA)).ToList();
        oneOf.ForEach(load => load.Flow = Flow.SeemsStill);
        unplugged.ForEach(load => load.Flow = Flow.SeemsToFlow);
        if (oneOf.Count + unplugged.Count == 0)
        {
            SuspectAnyOf(-changeA);
        }

        if (rises is not null)
        {
            rises.Flow = Flow.SeemsToFlow;
        }
    }

    // More is gone than any one load draws: it may be any that draws less than that.
    private void SuspectAnyOf(double lostA)
    {
        foreach (var load in loads.Where(load => load is { Switched: 0, IsTold: true } && IsSeen(load) && load.Flow != Flow.Still
            && lostA > 0 && Hears(lostA) && 0.65 * load.DrawsA <= lostA))
        {
            load.Flow = Flow.SeemsStill;
        }
    }

    // What is not there does not flow, and what is there while everything is told off flows where it should not.
    private void Bound(double saidA)
    {
        if (isDeaf)
        {
            return;
        }

        var isQuiet = !loads.Any(load => load.IsTold);
        foreach (var load in loads.Where(load => !load.IsTold && Alone.Left(saidA, load) < load.DrawsA / 2).ToList())
        {
            load.Flow = isQuiet || load.Flow is Flow.Flows or Flow.SeemsToFlow or Flow.MayFlow ? Flow.Still : load.Flow;
            load.IsSeenAlone |= isQuiet;
        }

        if (isQuiet)
        {
            Alone.Reads(saidA);
        }
    }

    // Once it did not hear that everything was switched off, it is deaf until it hears of something.
    private bool Hears(double changeA) => Math.Abs(changeA) >= 2 * LeastA;

    private double LeastA => Math.Max(0.00125 * circuit.BreakerA, 4 * scatterA);

    private bool IsSeen(PlainLoad load) => load.DrawsA / 2 >= LeastA;

    private bool IsLike(PlainLoad load, double changeA) => IsSeen(load) && Off(load, changeA) <= 0.35 * load.DrawsA;

    private static double Off(PlainLoad load, double changeA) => Math.Abs(changeA - load.DrawsA);
}
