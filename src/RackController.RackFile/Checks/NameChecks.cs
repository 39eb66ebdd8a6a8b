using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>Names are unique where they must be, and whoever is named is there.</summary>
internal static class NameChecks
{
    public static void Run(SitePart site, Complaints complaints)
    {
        RefuseRepeated(site.Circuits.Select(circuit => (circuit.Name, circuit.NamePlace)), "circuit", complaints);
        RefuseRepeated(site.Racks.Select(rack => (rack.Name, rack.NamePlace)), "rack", complaints);
        foreach (var rack in site.Racks)
        {
            RefuseRepeated(rack.Loads.Select(load => ((string?)load.ShortName, load.Place)), "load of this rack", complaints);
            RefuseUnknownCircuits(rack, site, complaints);
        }
    }

    private static void RefuseRepeated(IEnumerable<(string? Name, Place Place)> names, string noun, Complaints complaints)
    {
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var (name, place) in names)
        {
            if (name is not null && !seen.Add(name))
            {
                complaints.Refuse(place, $"a second {noun} called {Quote.Text(name)}", "give each a name of its own");
            }
        }
    }

    private static void RefuseUnknownCircuits(RackPart rack, SitePart site, Complaints complaints)
    {
        var names = site.Circuits.Select(circuit => circuit.Name).OfType<string>().ToArray();
        if (names.Length != site.Circuits.Length || names.Length == 0)
        {
            return;
        }

        if (!rack.NamesCircuit && names.Length > 1 && rack.Loads.Any(load => load.Circuit is null))
        {
            complaints.Refuse(
                rack.Place, "a rack that does not say which circuit it draws from",
                $"write `circuit:` with one of {string.Join(", ", names)}");
        }

        var asked = rack.Loads.Select(load => (load.Circuit, load.CircuitPlace)).Append((rack.Circuit, rack.CircuitPlace));
        foreach (var (name, place) in asked.Where(pair => pair.Item1 is not null && !names.Contains(pair.Item1)))
        {
            complaints.Refuse(place, $"there is no circuit {Quote.Text(name!)}", NearestName.Advice(name!, names));
        }
    }
}
