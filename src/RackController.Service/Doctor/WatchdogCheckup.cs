namespace RackController.Service;

/// <summary>Looks at who restarts a program, a kernel or a board that hangs.</summary>
/// <param name="machine">The files of the machine.</param>
internal sealed class WatchdogCheckup(Machine machine)
{
    // Where systemd looks for units, the first before the later ones (systemd.unit(5)).
    private static readonly string[] unitFolders =
        ["etc/systemd/system", "run/systemd/system", "usr/local/lib/systemd/system", "usr/lib/systemd/system", "lib/systemd/system"];

    private const string Unit = "rackcontroller.service";

    /// <summary>The board's own watchdog, and the unit.</summary>
    public IEnumerable<Finding> Look() => [Board(), Service(), Start()];

    private Finding Board()
    {
        const string Subject = "hardware watchdog";
        const string Feed = "set RuntimeWatchdogSec=10s in /etc/systemd/system.conf.d/, as systemd-system.conf(5) says, and boot";
        if (machine.Folders("sys/class/watchdog") is not [var first, ..])
        {
            return Finding.Doubtful(
                Subject,
                $"none, so a kernel that hangs leaves relays as they are: enable the board's in its firmware settings, and {Feed}");
        }

        var name = machine.Line($"{first}/identity") is { Length: > 0 } identity
            ? $"{Path.GetFileName(first)} ({identity})"
            : Path.GetFileName(first);
        return machine.Line($"{first}/state") switch
        {
            "active" => Finding.Sound(Subject, $"{name} is fed, and resets the board after {machine.Line($"{first}/timeout")} s"),
            "inactive" => Finding.Doubtful(Subject, $"nobody feeds {name}: {Feed}"),
            _ => Finding.Doubtful(Subject, $"{name} does not say whether it is fed: if it is not, {Feed}"),
        };
    }

    private Finding Service()
    {
        if (UnitFile() is not { } file)
        {
            return Finding.Doubtful(
                "service", $"no {Unit}, so nobody restarts a controller that dies: install the package, or deploy/{Unit}");
        }

        var lines = machine.Lines(file);
        return lines.Any(line => line.StartsWith("WatchdogSec=", StringComparison.Ordinal))
            && lines.Any(line => line.StartsWith("Restart=", StringComparison.Ordinal))
            ? Finding.Sound("service", $"/{file} restarts a controller that dies or hangs")
            : Finding.Doubtful("service", $"/{file} lacks WatchdogSec= or Restart=: take those of the package's own");
    }

    private Finding Start() => machine.Has($"etc/systemd/system/multi-user.target.wants/{Unit}")
        ? Finding.Sound("start", "the controller starts with the board")
        : Finding.Doubtful("start", $"the controller does not start with the board: systemctl enable --now {Unit}");

    private string? UnitFile() => unitFolders.Select(folder => $"{folder}/{Unit}").FirstOrDefault(machine.Has);
}
