using System.Globalization;
using System.Text;
using System.Xml;

namespace RackController.Bench;

/// <summary>What a campaign found as JUnit XML, which build servers read: one test case for each mode that struck, one for each group
/// of failures, one for the false trips.</summary>
public static class CampaignJUnit
{
    private const double MostFalseTripsPerRackYear = 1;

    /// <summary>Writes the XML.</summary>
    /// <param name="findings">The findings.</param>
    public static string Of(CampaignFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        var isCalm = findings.Quiet.TripsPerRackYear < MostFalseTripsPerRackYear;
        var failing = findings.Failures.SelectMany(group => group.Smallest.Case.Faults).Select(fault => fault.Instance.Mode.Id).ToHashSet();
        var sound = findings.Plan.Modes.Where(mode => !failing.Contains(mode.Mode.Id)).ToList();
        var text = new StringBuilder();
        using (var xml = XmlWriter.Create(text, new XmlWriterSettings { Indent = true, OmitXmlDeclaration = true, NewLineChars = "\n" }))
        {
            xml.WriteStartElement("testsuites");
            xml.WriteStartElement("testsuite");
            xml.WriteAttributeString("name", $"campaign {findings.Plan.Site.Name}");
            xml.WriteAttributeString("tests", Number(sound.Count + findings.Failures.Length + 1));
            xml.WriteAttributeString("failures", Number(findings.Failures.Length + (isCalm ? 0 : 1)));
            foreach (var (mode, _) in sound)
            {
                Case(xml, mode.Words, "");
            }

            foreach (var (group, index) in findings.Failures.Select((group, index) => (group, index)))
            {
                Case(xml, group.Words, $"{group.Count} cases; {group.Smallest.Seen}\nfailure-{index + 1:00}.yaml\n{findings.Command}");
            }

            Case(xml, "fewer than one false trip in a rack-year", isCalm ? "" : CampaignWords.FalseTrips(findings.Quiet));
            xml.WriteEndElement();
            xml.WriteEndElement();
        }

        return text.Append('\n').ToString();
    }

    private static void Case(XmlWriter xml, string name, string failure)
    {
        xml.WriteStartElement("testcase");
        xml.WriteAttributeString("classname", "campaign");
        xml.WriteAttributeString("name", name);
        if (failure.Length > 0)
        {
            xml.WriteStartElement("failure");
            xml.WriteAttributeString("message", failure.Split('\n')[0]);
            xml.WriteString(failure);
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
