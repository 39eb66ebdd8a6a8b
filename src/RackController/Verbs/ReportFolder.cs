using RackController.Bench;
using RackController.Growing;
using RackController.PlanFiles;
using RackController.Service;

namespace RackController.Verbs;

/// <summary>The folder that a bench run leaves its reports in. Each file is written under a temporary name first, so that a
/// reader never meets half a report.</summary>
internal sealed class ReportFolder
{
    private readonly string path;

    private ReportFolder(string path) => this.path = path;

    /// <summary>Where the report for people is.</summary>
    public string Html => Path.Combine(path, "report.html");

    /// <summary>Makes sure that the folder is there, before a long run and not after it.</summary>
    /// <param name="path">Its path.</param>
    /// <exception cref="CouldNotRunException">It cannot be made.</exception>
    public static ReportFolder Open(string path) => Try(path, () =>
    {
        Directory.CreateDirectory(path);
        return new ReportFolder(path);
    });

    /// <summary>Writes all reports of a run.</summary>
    /// <param name="result">The run.</param>
    /// <exception cref="CouldNotRunException">They cannot be written.</exception>
    public void Write(RunResult result) => Try(path, () =>
    {
        WriteFile("report.html", HtmlReport.Of(result));
        WriteFile("result.json", JsonReport.Of(result));
        WriteFile("junit.xml", JUnitReport.Of(result));
        WriteFile("events.log", LogText.Of(result));
        return true;
    });

    /// <summary>Where the scenario of a failed case is.</summary>
    /// <param name="number">The number of the failure, from 1.</param>
    public string Of(int number) => Path.Combine(path, $"failure-{number:00}.yaml");

    /// <summary>Writes all reports of a campaign, and a scenario for each of its failures.</summary>
    /// <param name="findings">What it found.</param>
    /// <exception cref="CouldNotRunException">They cannot be written.</exception>
    public void Write(CampaignFindings findings) => Try(path, () =>
    {
        foreach (var old in Directory.EnumerateFiles(path, "failure-*.yaml"))
        {
            File.Delete(old);
        }

        WriteFile("report.html", CampaignHtml.Of(findings));
        WriteFile("result.json", CampaignJson.Of(findings));
        WriteFile("junit.xml", CampaignJUnit.Of(findings));
        var rackFile = Path.GetRelativePath(path, findings.RackFile);
        for (var number = 1; number <= findings.Failures.Length; number++)
        {
            WriteFile(Path.GetFileName(Of(number)), ScenarioWriter.Write(findings.ScenarioOf(number, rackFile)));
        }

        return true;
    });

    /// <summary>Writes everything that a plan is handed over by.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="forecast">What it takes.</param>
    /// <exception cref="CouldNotRunException">It cannot be written.</exception>
    public void Write(Plan plan, Forecast forecast) => Try(path, () =>
    {
        WriteFile("report.html", PlanHtml.Of(plan, forecast));
        WriteFile("labels.html", LabelsHtml.Of(plan));
        WriteFile("plan.ics", PlanCalendar.Of(plan, forecast));
        WriteFile("plan.json", PlanJson.Of(plan, forecast));
        WriteFile("forecast.csv", ForecastCsv.Of(forecast));
        return true;
    });

    private static T Try<T>(string path, Func<T> act)
    {
        try
        {
            return act();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new CouldNotRunException(
                $"{path}: the reports cannot be written there ({fault.Message.TrimEnd('.')}): choose another folder with --out");
        }
    }

    private void WriteFile(string name, string text)
    {
        var temporary = Path.Combine(path, $".{name}.new");
        File.WriteAllText(temporary, text);
        File.Move(temporary, Path.Combine(path, name), overwrite: true);
    }
}
