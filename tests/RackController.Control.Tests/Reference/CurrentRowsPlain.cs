using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>The rows that know by current what relays and loads really do, each as one plain question to the chronicle.</summary>
internal static class CurrentRowsPlain
{
    public static Answer RelayWelded(Chronicle story, Load load, string key)
    {
        var flowsThoughOff = story.Now.Flows[load.Id.Index] == Flow.Flows && !story.WasOn(load.Id, story.Last);
        var isCut = load.Kind == LoadKind.Pump && story.Site[load.Circuit].HasUpstreamContactor;
        var latches = flowsThoughOff && (story.Now.Conditions.Io.IsOk || isCut);
        return new Answer(flowsThoughOff, flowsThoughOff, latches || Latches.Stands(story, key));
    }

    public static bool CanBeCutInTheHeat(Site site, Load load) =>
        load.Kind == LoadKind.Light && site[load.Circuit].HasUpstreamContactor && PlainCurrents.IsMeasured(site, load)
        && SiteRowsPlain.AirOf(site, load).Any();

    public static Answer LightStaysOn(Chronicle story, Load light, string key)
    {
        bool IsHot(int page) => SiteRowsPlain.AirOf(story.Site, light)
            .Any(sensor => SiteRowsPlain.IsHot(story, story.Site[light.Rack], sensor, page));
        bool Has(int page, params Flow[] flows) =>
            IsHot(page) && flows.Contains(story.Pages[page].Flows[light.Id.Index]) && !story.WasOn(light.Id, page);
        bool IsFirstOfSuspicion(int page) => Has(page, Flow.SeemsToFlow, Flow.MayFlow)
            && (story.IsFirstOfItsRun(page) ? !IsLatchedBefore(page) : !IsLatchedBefore(page) && !story.Before(key, page).Present);
        bool IsLatchedBefore(int page) => story.Before(key, page).Latched && !story.Pages[page].Released.Contains(key);

        var last = story.Last;
        var latches = Has(last, Flow.Flows)
            || (IsFirstOfSuspicion(last) && Latches.TripsOfADay(story, key, IsFirstOfSuspicion) >= 3);
        var isLatched = latches || Latches.Stands(story, key);
        var staysOn = Has(last, Flow.Flows, Flow.SeemsToFlow, Flow.MayFlow);
        var wasSuspected = !story.IsFirstOfItsRun(last) && story.Before(key, last) is { Present: true, Latched: false };
        var isSuspected = !isLatched && IsHot(last) && wasSuspected;
        return new Answer(staysOn || isSuspected, staysOn || isSuspected, isLatched);
    }

    // Once it was found dead, until it is seen to draw current; of one whose alarm was acknowledged meanwhile, also until nobody has wanted
    // it for a while.
    public static Answer LoadDead(Chronicle story, Load load, string key)
    {
        var (isDead, isAcknowledged, offSince) = (false, false, (MonotonicTime?)null);
        foreach (var page in story.ThisRunBackwards().Reverse())
        {
            var (now, flow, isOn) = (story.Pages[page].At.Monotonic, story.Pages[page].Flows[load.Id.Index], story.WasOn(load.Id, page));
            isAcknowledged |= story.Pages[page].Acknowledged.Contains(key) && isDead && load.Kind is LoadKind.Aerator or LoadKind.Fan;
            isDead = flow != Flow.Flows && (isDead || (flow == Flow.Still && isOn));
            offSince = isOn ? null : offSince ?? now;
            isDead &= !(isAcknowledged && now >= offSince + Duration.FromMinutes(20));
            isAcknowledged &= isDead;
        }

        return new Answer(isDead, isDead, Latched: false);
    }

    public static Answer WeldCheck(Chronicle story, Load load, Sensor meter)
    {
        var water = story.Site.Loads.Where(each => each.Circuit == load.Circuit && each.Kind is LoadKind.Pump or LoadKind.Valve).ToList();
        // Nobody knows where its relay stayed through a restart.
        var nobodyKnows = story.Now.Boot.Remembers;
        var (wasOn, isSameDoubt, wait) = (false, false, Duration.Zero);
        var hands = SiteRowsPlain.HaveHandsIn(story, load.Circuit);
        (MonotonicTime? since, MonotonicTime? checkedAt, MonotonicTime? until) = (null, null, null);
        foreach (var page in story.ThisRunBackwards().Reverse())
        {
            var it = story.Pages[page];
            var (now, flow, isOn) = (it.At.Monotonic, it.Flows[load.Id.Index], story.WasOn(load.Id, page));
            nobodyKnows = load.Kind == LoadKind.Pump && !isOn && flow == Flow.Unknown && (wasOn || nobodyKnows);
            wasOn = isOn;
            var seemsToFlow = !isOn && flow is Flow.Flows or Flow.SeemsToFlow;
            var isKnown = seemsToFlow && flow == Flow.Flows;
            (checkedAt, wait) = since is null && now >= checkedAt + Duration.FromHours(24) ? (null, Duration.Zero) : (checkedAt, wait);
            wait = isKnown && !isSameDoubt ? Duration.Zero : wait;
            since = seemsToFlow || nobodyKnows ? since ?? now : null;
            isSameDoubt &= isOn || flow != Flow.Still;
            until = now < until ? until : null;
            var canLook = it.Conditions.Io.IsOk && it.Believed[meter.Id.Index] is not null && !story.WasCut(load.Circuit, page)
                && !water.Any(each => story.WasOn(each.Id, page)) && (load.Kind == LoadKind.Pump || !hands[page]);
            var tellsItself = PlainCurrents.InTheWireOf(story.Site, load) is { } wire && it.Believed[wire.Id.Index] is not null;
            var mayGrow = isSameDoubt || load.Kind != LoadKind.Pump || tellsItself;
            var least = Duration.FromMinutes(!isSameDoubt ? 10 : isKnown ? 24 * 60 : 60);
            var isTooSoon = now < checkedAt + (mayGrow && wait > least ? wait : least);
            if (until is null && canLook && !isTooSoon && now >= since + Duration.FromSeconds(10))
            {
                wait = Duration.Max(Duration.FromMinutes(10), Duration.Min(wait * 2, Duration.FromHours(24)));
                (isSameDoubt, checkedAt, until) = (true, now, now + Duration.FromSeconds(8));
            }
        }

        return new Answer(until is not null, until is not null, Latched: false);
    }

    public static Answer LoadCheck(Chronicle story, Load load, Sensor meter, int turn)
    {
        var checkEvery = LimitsOf(story.Site, load.Circuit).Min(each => each.LoadCheckEvery);
        var (switchedAt, isTold, wasChecked, hadHisTurn) = (story.Now.Boot.Start.Monotonic, false, false, false);
        var (lasts, isRegular) = (Duration.FromSeconds(8), load.Kind is LoadKind.Aerator or LoadKind.Fan);
        var apart = Duration.Max(lasts, LimitsOf(story.Site, load.Circuit).Max(each => each.RelayRest)) + Duration.FromSeconds(30);
        var hands = SiteRowsPlain.HaveHandsIn(story, load.Circuit);
        MonotonicTime? until = null;
        MonotonicTime? doubtedAt = null;
        foreach (var page in story.ThisRunBackwards().Reverse())
        {
            var (now, flow) = (story.Pages[page].At.Monotonic, story.Pages[page].Flows[load.Id.Index]);
            if (story.WasOn(load.Id, page) != isTold)
            {
                doubtedAt = null;
                (switchedAt, isTold, hadHisTurn) = (now, !isTold, isTold ? until is not null && isRegular : hadHisTurn);
            }

            until = now < until ? until : null;
            var canLook = isTold && story.Pages[page].Conditions.Io.IsOk && story.Pages[page].Believed[meter.Id.Index] is not null
                && !hands[page];
            if (until is not null || !canLook)
            {
                continue;
            }

            var isInDoubt = flow == Flow.SeemsStill || (isRegular && flow == Flow.Unknown && !wasChecked);
            doubtedAt = isInDoubt ? doubtedAt ?? now : null;
            var hasWaited = isInDoubt
                ? now >= switchedAt + Duration.FromMinutes(10) + apart * turn && now >= doubtedAt + apart + apart * turn
                : isRegular && now >= switchedAt + checkEvery + apart * (hadHisTurn ? 0 : turn);
            if (hasWaited)
            {
                (until, wasChecked, doubtedAt) = (now + Duration.FromSeconds(8), true, null);
            }
        }

        return new Answer(until is not null, until is not null, Latched: false);
    }

    public static Answer RelayWorn(Chronicle story, Load load, string key)
    {
        var switchings = Latches.PagesSinceReset(story, key)
            .Count(page => !story.IsFirstOfItsRun(page) && story.WasOn(load.Id, page) && !story.WasOn(load.Id, page - 1));
        return new Answer(Present: false, Alarms: false, switchings >= load.RatedOperations || Latches.Stands(story, key));
    }

    public static Answer CircuitOverLimit(Chronicle story, Circuit circuit, Sensor meter, string key)
    {
        var limits = LimitsOf(story.Site, circuit.Id).ToList();
        var tooMany = limits.Min(each => each.CircuitOverLimitsToLatch);
        var (after, again) = (limits.Min(each => each.CircuitOverLimitAfter), limits.Max(each => each.CircuitOverLimitReturn));
        var (tenths, looksAt, overSince, isPresent) = (10.0, story.Pages[0].Boot.Start.Monotonic, (MonotonicTime?)null, false);
        var (trips, isPutOff) = (new List<int>(), false);
        for (var page = 0; page <= story.Last; page++)
        {
            var now = story.Pages[page].At.Monotonic;
            if (story.IsFirstOfItsRun(page))
            {
                (overSince, isPutOff) = (null, false);
                looksAt = story.Pages[page].Boot.Start.Monotonic + (page > 0 ? again : Duration.Zero);
            }

            if (story.Pages[page].Released.Contains(key))
            {
                (tenths, isPutOff) = (10, false);
                trips.Clear();
            }

            // What is latched keeps what it found.
            var isLatched = story.Before(key, page).Latched && !story.Pages[page].Released.Contains(key);
            if (story.Pages[page].Believed[meter.Id.Index] is not { } saidA)
            {
                (overSince, isPresent) = (null, tenths > 10 && !isLatched);
                continue;
            }

            overSince = saidA > circuit.ContinuousLimitA ? overSince ?? now : null;
            if (now >= overSince + after)
            {
                if (tenths <= 10)
                {
                    trips.Add(page);
                    isLatched |= trips.Count(trip => story.Ago(trip) - story.Ago(page) <= Duration.FromHours(24)) >= tooMany;
                }

                tenths = Tenths(Math.Max(tenths / 10, Math.Max(Times(story, circuit, page, saidA), 1.1)));
                (looksAt, overSince, isPutOff) = (now + again, now, false);
            }
            else if (overSince is null && tenths > 10 && !isLatched && now >= looksAt)
            {
                // Of little that is on nothing can be told of the rest.
                isPutOff = !isPutOff && NameplatesA(story, circuit, page) < 0.5 * circuit.ContinuousLimitA / (tenths / 10);
                var times = isPutOff ? tenths / 10 : Times(story, circuit, page, saidA);
                (tenths, looksAt) = (Tenths(times <= 1.02 ? 1 : Math.Min(tenths / 10, times * 1.05)), now + again);
            }

            isPresent = tenths > 10 && (overSince is not null || !isLatched);
            if (page == story.Last)
            {
                return new Answer(isPresent, isPresent, isLatched);
            }
        }

        return new Answer(isPresent, isPresent, Latches.Stands(story, key));
    }

    // How many times what the loads that are on should draw.
    private static double Times(Chronicle story, Circuit circuit, int page, double saidA)
    {
        var nameplatesA = NameplatesA(story, circuit, page);
        return nameplatesA > 0 ? Math.Max(1, saidA / nameplatesA) : 1;
    }

    private static double NameplatesA(Chronicle story, Circuit circuit, int page) =>
        story.Site.Loads.Where(load => load.Circuit == circuit.Id && story.WasOn(load.Id, page))
            .Sum(load => load.CurrentA(circuit.VoltageV));

    private static double Tenths(double times) => Math.Clamp(Math.Ceiling(times * 10), 10, 100);

    /// <summary>The limits of all racks that draw from a circuit.</summary>
    public static IEnumerable<InterlockLimits> LimitsOf(Site site, CircuitId circuit) =>
        site.Loads.Where(load => load.Circuit == circuit).Select(load => site[load.Rack].Limits).DefaultIfEmpty(InterlockLimits.Default);
}
