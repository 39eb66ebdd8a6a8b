using RackController.Model;
using RackController.RackFile;

namespace RackController.Bench.Tests.Support;

/// <summary>Sites with one rack of so many tiers, written as a grower would, with one thing or another that differs.</summary>
internal static class SurveyedRacks
{
    /// <summary>A site as the reader of rack files makes it, with all defaults.</summary>
    /// <param name="tiers">How many tiers.</param>
    /// <param name="pump">The rated point.</param>
    /// <param name="more">Further keys of the rack, each a line.</param>
    /// <param name="volumeL">Volume of the reservoir, L; 60 L a tier without it.</param>
    public static Site Site(int tiers, string pump, string more = "", int? volumeL = null)
    {
        var folder = Directory.CreateTempSubdirectory("bench-rack-");
        try
        {
            var file = Path.Combine(folder.FullName, "rack.yaml");
            File.WriteAllText(file, Text(tiers, pump, more, volumeL ?? 60 * tiers));
            var read = RackFileReader.Read(file);
            Assert.True(read.Site is not null, string.Join('\n', read.Complaints));
            return read.Site;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string Text(int tiers, string pump, string more, int volumeL) => $$"""
        site: test cellar
        zone: Europe/London
        circuits:
          - { name: sockets, voltage: 230 V, breaker: 16 A }
        racks:
          - name: north
            reservoir: { volume: {{volumeL}} L, depth: 480 mm }
            pump: { rated: {{pump}}, power: 60 W }
            sensors: { low-float: 60 mm, leak-rope: yes }
            tiers: [{{string.Join(", ", Enumerable.Repeat("{ sensors: { high-float: 65 mm } }", tiers))}}]
            {{more}}
            schedule:
              floods: { at: [08:00, 18:00], fill: 5 min, soak: 5 min }

        """;
}
