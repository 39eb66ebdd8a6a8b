namespace RackController.RackFile.Tests;

/// <summary>Rack files to change one thing in.</summary>
internal static class RackFiles
{
    /// <summary>One rack of two tiers with most things written out, and without any complaint.</summary>
    public const string Small = """
        site: test cellar
        zone: America/New_York
        circuits:
          - name: sockets
            voltage: 120 V
            breaker: 15 A
            sensors: { supply-sense: yes }
        racks:
          - name: north
            circuit: sockets
            reservoir: { volume: 160 L, depth: 400 mm, normal-volume: 140 L }
            pump:
              rated: { flow: 30 L/min, head: 2.5 m }
              power: 45 W
            aerator: { power: 5 W }
            fans:
              - power: 12 W
            sensors:
              low-float: 60 mm
              leak-rope: yes
              air-temperature: yes
            tiers:
              - light: { power: 80 W, ppfd: 180 umol/m2/s }
                valve: { power: 6 W }
                sensors: { high-float: 65 mm }
              - light: { power: 80 W, ppfd: 180 umol/m2/s }
                valve: { power: 6 W }
                tray: { standpipe: 40 mm }
            schedule:
              lights: { on: 06:00, for: 16 h }
              floods:
                at: [07:00, 13:00, 19:00]
                fill: 5 min
                soak: 5 min
                drain: 20 min
            drip-tray: { capacity: 60 L, depth: 100 mm }
            wired: { float-cutout: 25 mm }
        io: simulated
        """;

    /// <summary>The small file with one piece of text replaced, which must be there.</summary>
    public static string SmallWith(string old, string replacement)
    {
        Assert.Contains(old, Small, StringComparison.Ordinal);
        return Small.Replace(old, replacement, StringComparison.Ordinal);
    }
}
