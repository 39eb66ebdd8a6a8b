using NodaTime;
using RackController.Model;

namespace RackController.Bench;

/// <summary>
/// A circuit above its limit for longer than its breaker should bear. Above the continuous limit for 3 h: what the NEC
/// calls continuous (Art. 100, from memory). Above 135 % of the rating for 1 h, above 200 % for 2 min: by then a breaker
/// to UL 489 must have opened (up to 30 A, as quoted by optifuse.com); IEC 60898-1 says 1.45 for 1 h, which is looser, so
/// the tighter figure judges both.
/// </summary>
internal sealed class CircuitOverloaded(Site site) : IHazardWatch
{
    private readonly Band[] bands =
    [
        new Band("its continuous limit", circuit => circuit.ContinuousLimitA, Duration.FromHours(3), site),
        new Band("135 % of its breaker", circuit => 1.35 * circuit.BreakerA, Duration.FromHours(1), site),
        new Band("200 % of its breaker", circuit => 2.0 * circuit.BreakerA, Duration.FromMinutes(2), site),
    ];

    public void Look(IObserved now, HazardBook book)
    {
        foreach (var circuit in now.Site.Circuits)
        {
            var currentA = now.CircuitA(circuit.Id);
            foreach (var band in bands)
            {
                var limitA = band.LimitA(circuit);
                if (band.Lasting.IsTooLong(circuit.Id.Index, currentA > limitA, now))
                {
                    book.Report(
                        now, HazardKind.CircuitOverloaded, circuit.Name, Vicinity.OfCircuit(circuit.Id),
                        $"{circuit.Name} carried more than {band.Words} ({limitA:0.#} A) for {Spans.Words(band.Borne)}: "
                            + $"{currentA:0.0} A");
                }
            }
        }
    }

    private sealed record Band(string Words, Func<Circuit, double> LimitA, Duration Borne, Site Site)
    {
        public Lasting Lasting { get; } = new(Site.Circuits.Length, Borne);
    }
}
