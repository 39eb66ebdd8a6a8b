using System.Text;
using RackController.Model;

namespace RackController.Verbs;

/// <summary>The safe states of a site in words, for whoever left it in them.</summary>
internal static class SafeStateWords
{
    private const int NamesOnALine = 4;

    /// <summary>Which loads are off and which on.</summary>
    /// <param name="site">The site.</param>
    public static string Of(Site site) =>
        "Every load is in its safe state.\n" + Names(site, SwitchState.Off, "off")
        + Names(site, SwitchState.On, "on ").TrimEnd() + Contactors(site);

    private static string Contactors(Site site) => string.Concat(
        site.Circuits.Where(circuit => circuit.HasUpstreamContactor).Select(circuit => $"\n  closed  {circuit.ContactorName}"));

    private static string Names(Site site, SwitchState state, string word)
    {
        var lines = new StringBuilder();
        var names = site.Loads.Where(load => load.SafeState == state).Select(load => load.Name);
        foreach (var line in names.Chunk(NamesOnALine))
        {
            lines.Append("  ").Append(word).Append("  ").AppendJoin(", ", line).Append('\n');
        }

        return lines.ToString();
    }
}
