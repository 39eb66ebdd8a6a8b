using NodaTime;
using RackController.Model;

namespace RackController.Control.Tests.Reference;

/// <summary>Whether a circuit has lost its supply, as one plain question to the chronicle: by its senses, or by its current where it
/// has none of them.</summary>
internal sealed class SupplyPlain
{
    private readonly Chronicle story;
    private readonly Circuit circuit;
    private readonly string key;
    private readonly List<Sensor> senses;
    private readonly List<Load> loads;
    private readonly Sensor? meter;

    // Those whose current can be told apart; of these, the ones that run day and night feel when the supply is back.
    private readonly List<Load> large;
    private readonly List<Load> feelers;

    private SupplyPlain(Chronicle story, Circuit circuit, string key)
    {
        (this.story, this.circuit, this.key) = (story, circuit, key);
        senses = [.. story.Site.Sensors.Where(sensor => sensor.Kind == SensorKind.SupplySense && sensor.Circuit == circuit.Id)];
        loads = [.. story.Site.Loads.Where(load => load.Circuit == circuit.Id)];
        meter = PlainCurrents.MeterOf(story.Site, circuit.Id);
        large = [.. loads.Where(load => PlainCurrents.IsLarge(story.Site, load))];
        feelers = [.. large.Where(load => load.Kind is LoadKind.Aerator or LoadKind.Fan).OrderBy(load => load.Priority)];
    }

    public static Answer Lost(Chronicle story, Circuit circuit, string key) => new SupplyPlain(story, circuit, key).Lost();

    private bool GoesByCurrent => senses.Count == 0 && meter is not null && feelers.Count > 0;

    private Answer Lost()
    {
        var limits = loads.Select(load => story.Site[load.Rack].Limits).DefaultIfEmpty(InterlockLimits.Default).ToList();

        // While nobody knows, the last answer stands.
        var isLost = !(GoesByCurrent ? IsThereByCurrent(story.Last) : IsThereBySenses(story.Last)) ?? WasLost(story.Last);
        bool IsLost(int page) => page == story.Last ? isLost : WasLost(page + 1);
        bool IsTrip(int page) => IsLost(page) && !WasLost(page);

        var quiet = limits.Max(each => each.SupplyQuietPeriod);
        var cameBack = story.ThisRunBackwards().Where(page => WasLost(page) && !IsLost(page))
            .Select(page => story.Pages[page].At.Monotonic);
        var sinceThen = story.Now.Boot.Remembers ? cameBack.Append(story.Now.Boot.Start.Monotonic) : cameBack;
        var isQuiet = sinceThen.Any(time => story.Now.At.Monotonic < time + quiet) && story.Now.Conditions.Io.IsOk;
        var latches = IsTrip(story.Last)
            && Latches.TripsOfADay(story, key, IsTrip) >= limits.Min(each => each.SupplyTripsToLatch);
        var isLatched = latches || Latches.Stands(story, key);
        var isAfterRestart = story.Now.Boot.Remembers && !story.ThisRunBackwards().Any(IsLost)
            && !WasLost(story.Now.Boot.First);
        return new Answer(isLost || isQuiet, isLost, isLatched)
        {
            SparesOnAtRest = isAfterRestart && !isLatched && FailedLately(story.Last, quiet),
            Spares = GoesByCurrent && isLost && !isLatched ? Feeler() : null,
        };
    }

    // That is remembered, as if the scans had failed at the start.
    private bool FailedLately(int page, Duration quiet)
    {
        var (now, boot) = (story.Pages[page].At.Monotonic, story.Pages[page].Boot);
        for (var each = page; each >= boot.First; each--)
        {
            if (story.Pages[each].IsFaulty(story.Site) && now < story.Pages[each].At.Monotonic + quiet)
            {
                return true;
            }
        }

        return boot.First > 0 && now < boot.Start.Monotonic + quiet && FailedLately(boot.First - 1, quiet);
    }

    private bool WasLost(int page) => story.Before(key, page).Alarms;

    private bool? IsThereBySenses(int page)
    {
        var said = senses.Select(sense => story.Pages[page].Believed[sense.Id.Index]).ToList();
        return said.Contains(0) ? false : said.Contains(null) ? null : true;
    }

    // No current at all, though two loads or more are told on, for as long as it takes to be sure.
    private bool? IsThereByCurrent(int page)
    {
        var smallestA = feelers.Min(load => load.CurrentA(circuit.VoltageV));
        (bool Flows, bool IsExpected)? Sees(int each) => story.Pages[each].Believed[meter!.Id.Index] is { } saidA
            ? (saidA > smallestA / 2, large.Count(load => story.WasOn(load.Id, each)) > 1)
            : null;
        if (Sees(page) is not { } now)
        {
            return null;
        }

        var since = page;
        while (!story.IsFirstOfItsRun(since) && Sees(since - 1) == now)
        {
            since--;
        }

        var isSure = story.Pages[page].At.Monotonic >= story.Pages[since].At.Monotonic + Duration.FromSeconds(5);
        return !isSure ? null : now.Flows ? true : now.IsExpected ? false : null;
    }

    // Each of them in turn, since one may be dead.
    private LoadId Feeler()
    {
        var since = story.Last;
        while (since > story.Now.Boot.First && WasLost(since))
        {
            since--;
        }

        // A restart begins with the first again.
        var from = WasLost(since) ? story.Now.Boot.Start.Monotonic : story.Pages[since].At.Monotonic;
        var turn = 0;
        for (var page = since; page <= story.Last; page++)
        {
            if (story.Pages[page].At.Monotonic >= from + Duration.FromMinutes(5))
            {
                (turn, from) = ((turn + 1) % feelers.Count, story.Pages[page].At.Monotonic);
            }
        }

        return feelers[turn].Id;
    }
}
