using System.Globalization;
using System.Text;
using System.Xml;

namespace RackController.Bench;

/// <summary>The outcome of a run as JUnit XML, which build servers read: one test case for each expectation, one for the
/// hazards.</summary>
public static class JUnitReport
{
    /// <summary>Writes the XML.</summary>
    /// <param name="result">The run.</param>
    public static string Of(RunResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var text = new StringBuilder();
        using (var xml = XmlWriter.Create(text, new XmlWriterSettings { Indent = true, OmitXmlDeclaration = true, NewLineChars = "\n" }))
        {
            xml.WriteStartElement("testsuites");
            xml.WriteStartElement("testsuite");
            var kinds = Enum.GetValues<HazardKind>();
            var failed = result.Verdicts.Count(verdict => !verdict.IsMet) + kinds.Count(kind => HazardsOf(result, kind).Length > 0);
            xml.WriteAttributeString("name", result.Scenario.Name);
            xml.WriteAttributeString("tests", Number(result.Verdicts.Length + kinds.Length));
            xml.WriteAttributeString("failures", Number(failed));
            foreach (var verdict in result.Verdicts)
            {
                Case(xml, result, verdict.Expectation.Name, verdict.Failure is { } failure ? FailureText(result, verdict, failure) : "");
            }

            foreach (var kind in kinds)
            {
                Case(xml, result, $"no hazard: {HazardWords.Title(kind)}", string.Join('\n', HazardsOf(result, kind)));
            }

            xml.WriteEndElement();
            xml.WriteEndElement();
        }

        return text.Append('\n').ToString();
    }

    private static string[] HazardsOf(RunResult result, HazardKind kind) =>
    [
        .. result.Hazards.Where(hazard => hazard.Kind == kind && result.Acceptance(hazard) is null)
            .Select(hazard => $"{LogText.LocalTime(result.Scenario.Site, hazard.At)}: {hazard.Seen}"),
    ];

    private static void Case(XmlWriter xml, RunResult result, string name, string failure)
    {
        xml.WriteStartElement("testcase");
        xml.WriteAttributeString("classname", result.Scenario.Name);
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

    private static string FailureText(RunResult result, Verdict verdict, Failure failure)
    {
        var site = result.Scenario.Site;
        var lines = new List<string>
        {
            $"{LogText.LocalTime(site, failure.At)}: {failure.Seen}",
            $"expected {verdict.Words} ({result.Scenario.File}:{verdict.Expectation.Line})",
        };
        lines.AddRange(failure.Causes.Select(cause => LogText.Line(site, cause)));
        return string.Join('\n', lines);
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
