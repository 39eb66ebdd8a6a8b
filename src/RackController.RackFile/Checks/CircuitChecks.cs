using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>A circuit can carry what its loads draw, one by one and all that the schedule wants at once.</summary>
internal static class CircuitChecks
{
    private const int NamedLoads = 4;

    /// <summary>What 80 % of a rating may be out by as a binary fraction.</summary>
    private const double RoundingA = 1e-9;

    public static void Run(SitePart site, Complaints complaints)
    {
        foreach (var circuit in site.Circuits)
        {
            if (circuit.Supply is { } supply)
            {
                CheckLimit(circuit, supply, complaints);
                CheckLoads(circuit, supply, site, complaints);
            }

            CheckContactor(circuit, site, complaints);
        }
    }

    private static void CheckLimit(CircuitPart circuit, SupplyRating supply, Complaints complaints)
    {
        var share = supply.BreakerA * Circuit.ContinuousShare;
        if (supply.ContinuousLimitA > supply.BreakerA)
        {
            complaints.Refuse(
                circuit.LimitPlace, $"a continuous limit above the breaker's {Say.Number(supply.BreakerA, 1)} A",
                $"write at most {Say.Number(share, 1)} A, which is 80 % of the breaker");
        }
        else if (supply.ContinuousLimitA > share + RoundingA)
        {
            complaints.Warn(
                circuit.LimitPlace, $"a continuous limit above {Say.Number(share, 1)} A, which is 80 % of the breaker",
                "NEC 210.20(A) sizes a breaker at 125 % of the continuous load; ask an electrician what your code says");
        }
    }

    private static void CheckLoads(CircuitPart circuit, SupplyRating supply, SitePart site, Complaints complaints)
    {
        var uses = site.Racks
            .SelectMany(rack => rack.Loads.Select(load => Use(load, rack, supply)))
            .Where(use => site.Circuits.Length == 1 || (use.Circuit is not null && use.Circuit == circuit.Name))
            .ToImmutableArray();
        var limit = Say.Number(supply.ContinuousLimitA, 1);
        foreach (var use in uses.Where(use => use.CurrentA > supply.ContinuousLimitA))
        {
            complaints.Refuse(
                use.Load.Place,
                $"{use.Name} alone draws {Say.Number(use.CurrentA, 1)} A, and its circuit may carry {limit} A",
                "check its power and power factor, or give it a circuit that can carry it");
        }

        var (moment, together) = uses
            .SelectMany(use => use.Spans.Select(span => span.Start))
            .Distinct()
            .Select(start => (
                start, Together: uses.Where(use => use.IsOn(start)).OrderByDescending(use => use.CurrentA).ToArray()))
            .OrderByDescending(pair => pair.Together.Sum(use => use.CurrentA))
            .ThenBy(pair => pair.start)
            .FirstOrDefault((start: Duration.Zero, Together: []));
        var sumA = together.Sum(use => use.CurrentA);
        if (sumA > supply.ContinuousLimitA && together.Length > 1)
        {
            var named = together.Take(NamedLoads).Select(use => $"{use.Name} {Say.Number(use.CurrentA, 2)} A");
            var rest = together.Length > NamedLoads ? $" and {together.Length - NamedLoads} more" : "";
            complaints.Refuse(
                circuit.Place,
                $"at {Say.Clock(moment)} the schedule wants {Say.Number(sumA, 1)} A at once ({string.Join(", ", named)}{rest}), "
                + $"and this circuit may carry {limit} A for hours",
                "move loads to another circuit, or light or flood them at different times");
        }
    }

    private static void CheckContactor(CircuitPart circuit, SitePart site, Complaints complaints)
    {
        var racks = site.Racks.Where(rack => rack.Circuit is null || rack.Circuit == circuit.Name);
        var isTold = circuit.Sensors.OfKind(SensorKind.CircuitCurrent) is not null
            || racks.Any(rack => rack.Sensors.OfKind(SensorKind.PumpCurrent) is not null);
        if (circuit.Contactor is { } contactor && circuit.Sensors.IsComplete && !isTold)
        {
            complaints.Warn(
                contactor.Place, "nothing tells the controller when to open this contactor",
                "a sensor in the pump's wire (`pump-current: yes` in the rack's `sensors`) would");
        }
    }

    private static LoadUse Use(LoadPart load, RackPart rack, SupplyRating supply) => new(
        load, $"{rack.Name}/{load.ShortName}", load.Circuit ?? rack.Circuit, load.CurrentOn(supply.VoltageV), Spans(load, rack));

    private static ImmutableArray<(Duration Start, Duration Length)> Spans(LoadPart load, RackPart rack)
    {
        var tier = load.TierNumber is { } number ? rack.Tiers[number - 1] : null;
        switch (load.Kind)
        {
            case LoadKind.Light:
                return OrdinaryDay.Lit(tier!, rack.Schedule?.Lights) is { } lit ? [lit] : [];
            case LoadKind.Pump or LoadKind.Valve:
                return tier is { InUse: false } || rack.Schedule?.Floods is not { } floods
                    ? []
                    : [.. OrdinaryDay.FloodStarts(floods, rack).Select(start => (start, floods.PumpRun))];
            default:
                // Whatever runs in cycles or by a reading may run at any time.
                return [(Duration.Zero, OrdinaryDay.Length)];
        }
    }

    private sealed record LoadUse(
        LoadPart Load, string Name, string? Circuit, double CurrentA, ImmutableArray<(Duration Start, Duration Length)> Spans)
    {
        public bool IsOn(Duration moment) => Spans.Any(span => OrdinaryDay.Covers(span.Start, span.Length, moment));
    }
}
