using System.Globalization;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Page;

/// <summary>Says in words how notices fare, from the rack file and from what the process that sends them keeps.</summary>
/// <param name="site">The site.</param>
/// <param name="folder">The folders of the service.</param>
internal sealed class NoticesView(Site site, StateFolder folder)
{
    private readonly SignOfLife sign = SignOfLife.At(folder.NoticesAlive);

    /// <summary>Whether a process is there that sends them.</summary>
    public bool IsRunning => sign.IsFresh;

    /// <summary>Whether notices are asked for and do not all get through.</summary>
    public bool AreInTrouble => site.Notices is not null
        && (!IsRunning || Status is not { Trouble: null } status || status.Ways.Any(way => way.Fault is not null));

    /// <summary>What it keeps; null where there is nothing.</summary>
    public NoticesStatus? Status => NoticesStatus.Read(folder.Notices);

    /// <summary>The page.</summary>
    /// <param name="frame">What stands around it.</param>
    /// <param name="mayAct">Whether whoever reads it may ask for a test.</param>
    /// <param name="wasTestAsked">Whether they just have.</param>
    public NoticesPage Page(FrameView frame, bool mayAct, bool wasTestAsked)
    {
        var (status, isRunning) = (Status, IsRunning);
        return new NoticesPage(
            frame, site.Notices is not null, site.Notices is null ? [] : [.. Wrong(status, isRunning)],
            site.Notices?.Quiet is { } quiet ? Words(quiet) : null, site.Notices is { } plan ? [.. WaysOf(plan, status)] : [],
            mayAct && isRunning && site.Notices is not null, wasTestAsked);
    }

    /// <summary>What keeps notices from being sent, and what to do.</summary>
    /// <param name="status">What the process keeps.</param>
    /// <param name="isRunning">Whether it is there.</param>
    public static IEnumerable<string> Wrong(NoticesStatus? status, bool isRunning)
    {
        if (!isRunning)
        {
            yield return "No process sends notices now, so nobody is told: on the board, sudo systemctl enable --now "
                + "rackcontroller-notices; elsewhere, rackcontroller notices with this rack file.";
        }

        if (status?.Trouble is { } trouble)
        {
            yield return $"{char.ToUpperInvariant(trouble[0])}{trouble[1..]}.";
        }
    }

    private IEnumerable<WayView> WaysOf(NoticePlan plan, NoticesStatus? status)
    {
        foreach (var mail in plan.Mail)
        {
            yield return View(mail.Name, Told(mail.AtLeast), status);
        }

        foreach (var webhook in plan.Webhooks)
        {
            yield return View(webhook.Name, Told(webhook.AtLeast), status);
        }

        if (plan.Alive is { } alive)
        {
            var every = alive.Every.TotalMinutes.ToString("0.#", CultureInfo.InvariantCulture);
            yield return View(alive.Name, $"every {every} min while scans are good", status);
        }
    }

    private WayView View(string name, string what, NoticesStatus? status)
    {
        var way = status?.Ways.FirstOrDefault(known => known.Name == name);
        return new WayView(
            name, what, way?.LastSuccess is { } success ? $"last got through {Time(success)}" : "nothing got through yet",
            way is { Fault: { } fault, FaultAt: { } at } ? $"{Time(at)}: {fault}" : null,
            way?.Waiting is > 0 and var waiting ? waiting == 1 ? "1 message waits" : $"{waiting} messages wait" : null);
    }

    private static string Told(AlarmPriority atLeast) =>
        atLeast == AlarmPriority.Low ? "every alarm" : $"alarms that are {OrMore(atLeast)}";

    private static string OrMore(AlarmPriority atLeast) =>
        atLeast.InWords() + (atLeast < AlarmPriority.Critical ? " or more urgent" : "");

    private static string Words(QuietHours quiet)
    {
        var until = Clock(quiet.Until);
        return $"From {Clock(quiet.From)} to {until} only what is {OrMore(quiet.AtLeast)} is told at once; the rest waits for {until} and "
            + "goes as one message.";
    }

    private static string Clock(LocalTime time) => time.ToString("HH':'mm", CultureInfo.InvariantCulture);

    private string Time(Instant at) => at.InZone(site.Zone).ToString("ddd d MMM HH:mm:ss", CultureInfo.InvariantCulture);
}
