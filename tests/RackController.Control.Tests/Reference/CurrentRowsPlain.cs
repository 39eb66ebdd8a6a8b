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
        bool Has(int page, Flow flow) => IsHot(page) && story.Pages[page].Flows[light.Id.Index] == flow && !story.WasOn(light.Id, page);
        bool IsFirstOfSuspicion(int page) => Has(page, Flow.SeemsToFlow)
            && (story.IsFirstOfItsRun(page) ? !IsLatchedBefore(page) : !IsLatchedBefore(page) && !story.Before(key, page).Present);
        bool IsLatchedBefore(int page) => story.Before(key, page).Latched && !story.Pages[page].Released.Contains(key);

        var last = story.Last;
        var latches = Has(last, Flow.Flows)
            || (IsFirstOfSuspicion(last) && Latches.TripsOfADay(story, key, IsFirstOfSuspicion) >= 3);
        var isLatched = latches || Latches.Stands(story, key);
        var staysOn = Has(last, Flow.Flows) || Has(last, Flow.SeemsToFlow);
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
        var nobodyKnows = story.ThisRunBackwards().Last() > 0;
        var (wasOn, isSameDoubt) = (false, false);
        (MonotonicTime? since, MonotonicTime? checkedAt, MonotonicTime? until) = (null, null, null);
        foreach (var page in story.ThisRunBackwards().Reverse())
        {
            var it = story.Pages[page];
            var (now, flow, isOn) = (it.At.Monotonic, it.Flows[load.Id.Index], story.WasOn(load.Id, page));
            nobodyKnows = load.Kind == LoadKind.Pump && !isOn && flow == Flow.Unknown && (wasOn || nobodyKnows);
            wasOn = isOn;
            var seemsToFlow = !isOn && flow is Flow.Flows or Flow.SeemsToFlow;
            since = seemsToFlow || nobodyKnows ? since ?? now : null;
            isSameDoubt &= since is not null;
            until = now < until ? until : null;
            var canLook = it.Conditions.Io.IsOk && it.Believed[meter.Id.Index] is not null && !story.WasCut(load.Circuit, page)
                && !water.Any(each => story.WasOn(each.Id, page));
            var isTooSoon = now < checkedAt + (isSameDoubt ? Duration.FromHours(1) : Duration.FromMinutes(10));
            if (until is null && canLook && !isTooSoon && now >= since + Duration.FromSeconds(10))
            {
                (isSameDoubt, checkedAt, until) = (true, now, now + Duration.FromSeconds(8));
            }
        }

        return new Answer(until is not null, until is not null, Latched: false);
    }

    public static Answer LoadCheck(Chronicle story, Load load, Sensor meter, int turn)
    {
        var checkEvery = LimitsOf(story.Site, load.Circuit).Min(each => each.LoadCheckEvery);
        var (switchedAt, isTold, wasChecked) = (story.Now.Boot.Start.Monotonic, false, false);
        var (apart, isRegular) = (Duration.FromSeconds(38), load.Kind is LoadKind.Aerator or LoadKind.Fan);
        MonotonicTime? until = null;
        MonotonicTime? doubtedAt = null;
        foreach (var page in story.ThisRunBackwards().Reverse())
        {
            var (now, flow) = (story.Pages[page].At.Monotonic, story.Pages[page].Flows[load.Id.Index]);
            if (story.WasOn(load.Id, page) != isTold)
            {
                (switchedAt, isTold) = (now, !isTold);
            }

            until = now < until ? until : null;
            var canLook = isTold && story.Pages[page].Conditions.Io.IsOk && story.Pages[page].Believed[meter.Id.Index] is not null;
            if (until is not null || !canLook)
            {
                continue;
            }

            var isInDoubt = flow == Flow.SeemsStill || (isRegular && flow == Flow.Unknown && !wasChecked);
            doubtedAt = isInDoubt ? doubtedAt ?? now : null;
            var hasWaited = isInDoubt
                ? now >= switchedAt + Duration.FromMinutes(10) + apart * turn && now >= doubtedAt + apart + apart * turn
                : isRegular && now >= switchedAt + checkEvery + apart * turn;
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
        var trips = new List<int>();
        for (var page = 0; page <= story.Last; page++)
        {
            var now = story.Pages[page].At.Monotonic;
            if (story.IsFirstOfItsRun(page))
            {
                (overSince, looksAt) = (null, story.Pages[page].Boot.Start.Monotonic + (page > 0 ? again : Duration.Zero));
            }

            if (story.Pages[page].Released.Contains(key))
            {
                tenths = 10;
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
                (looksAt, overSince) = (now + again, now);
            }
            else if (overSince is null && tenths > 10 && !isLatched && now >= looksAt)
            {
                var times = Times(story, circuit, page, saidA);
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
        var nameplatesA = story.Site.Loads.Where(load => load.Circuit == circuit.Id && story.WasOn(load.Id, page))
            .Sum(load => load.CurrentA(circuit.VoltageV));
        return nameplatesA > 0 ? Math.Max(1, saidA / nameplatesA) : 1;
    }

    private static double Tenths(double times) => Math.Clamp(Math.Ceiling(times * 10), 10, 100);

    private static IEnumerable<InterlockLimits> LimitsOf(Site site, CircuitId circuit) =>
        site.Loads.Where(load => load.Circuit == circuit).Select(load => site[load.Rack].Limits).DefaultIfEmpty(InterlockLimits.Default);
}
