using System.Text;
using RackController.Model;
using RackController.RackFile;

namespace RackController.Bench;

/// <summary>
/// The sites that figures are measured on, written as rack files: five tiers with every kind of load and sensor, flooded every
/// three hours, either one such rack or many, four to a circuit. Racks of one circuit are flooded in turn.
/// </summary>
public static class FigureSites
{
    /// <summary>How many racks share a circuit.</summary>
    public const int RacksToACircuit = 4;

    private const int Tiers = 5;
    private const int FloodIntervalMin = 180;

    /// <summary>A site of such racks.</summary>
    /// <param name="racks">How many, from 1 to 64.</param>
    public static Site Of(int racks)
    {
        var reading = RackFileReader.Parse(TextOf(racks), "the built-in rack file");
        Invariant.Holds(reading.Site is not null, $"the built-in rack file is right: {string.Join("; ", reading.Complaints)}");
        return reading.Site;
    }

    private static string TextOf(int racks)
    {
        var text = new StringBuilder("site: five tiers each\nzone: Europe/London\ncircuits:\n");
        for (var circuit = 1; (circuit - 1) * RacksToACircuit < racks; circuit++)
        {
            text.AppendLine(CircuitText(circuit));
        }

        text.AppendLine("racks:");
        for (var rack = 0; rack < racks; rack++)
        {
            text.AppendLine(RackText(rack));
        }

        return text.ToString();
    }

    private static string CircuitText(int number) =>
        $$"""
          - { name: circuit {{number}}, voltage: 230 V, breaker: 16 A, sensors: { supply-sense: yes, current: yes } }
        """;

    private static string RackText(int index)
    {
        var turn = index % RacksToACircuit * FloodIntervalMin / RacksToACircuit;
        return $$"""
          - name: rack {{index + 1}}
            circuit: circuit {{index / RacksToACircuit + 1}}
            reservoir: { volume: 290 L, depth: 480 mm, normal-volume: 265 L }
            pump: { rated: { flow: 45 L/min, head: 3 m }, power: 60 W, power-factor: 0.7 }
            aerator: { power: 8 W }
            fans:
              - { name: canopy fan, power: 18 W }
              - { name: exhaust fan, power: 22 W, run: { on-above: 65 %, off-below: 58 % } }
            sensors:
              low-float: 70 mm
              full-float: 470 mm
              reservoir-level: yes
              leak-rope: yes
              pump-flow: yes
              water-temperature: yes
              air-temperature: yes
              air-humidity: yes
            tray: { length: 1120 mm, width: 640 mm, rim: 85 mm, standpipe: 44.5 mm, weep: 9.5 mm, insert-trays: 4, media: coir }
            tiers:
        {{string.Join('\n', Enumerable.Range(0, Tiers).Select(_ => TierText))}}
            schedule:
              lights: { on: 06:00, for: 16 h, stagger: 1 min }
              floods: { every: {{FloodIntervalMin}} min, from: 00:{{turn % 60:00}}, for: 24 h, fill: 5 min, soak: 5 min, drain: 20 min }
        """;
    }

    private const string TierText =
        """
              - light: { power: 80 W, ppfd: 170 umol/m2/s }
                valve: { power: 6 W }
                sensors: { high-float: 65 mm, full-float: 40 mm, tray-level: yes, air-temperature: yes, air-humidity: yes }
        """;
}
