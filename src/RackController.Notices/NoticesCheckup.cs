using System.Net;
using System.Net.Sockets;
using RackController.Model;
using RackController.Service;

namespace RackController.Notices;

/// <summary>Looks at all that notices need before somebody relies on them: secrets, names of servers, and a process that sends them. It
/// sends nothing. The rack is driven all the same, so nothing it finds weighs more than a doubt.</summary>
public static class NoticesCheckup
{
    private const string Unit = "rackcontroller-notices.service";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    /// <summary>Looks at this machine; finds nothing where the rack file asks for no notices.</summary>
    /// <param name="site">The site.</param>
    /// <param name="folder">The folders of the service.</param>
    public static IEnumerable<Finding> Look(Site site, StateFolder folder) => Look(site, folder, "/");

    /// <summary>Looks at a machine.</summary>
    /// <param name="site">The site.</param>
    /// <param name="folder">The folders of the service.</param>
    /// <param name="root">The folder that holds the machine's file system.</param>
    internal static IEnumerable<Finding> Look(Site site, StateFolder folder, string root)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(folder);
        if (site.Notices is not { } plan)
        {
            return [];
        }

        var secrets = plan.Mail.Select(mail => mail.SignIn?.PasswordFile).OfType<string>()
            .Concat(plan.Webhooks.Select(webhook => webhook.SecretFile)).Distinct();
        var hosts = plan.Mail.Select(mail => mail.Server).Concat(plan.Webhooks.Select(webhook => webhook.Address.Host))
            .Concat(plan.Alive is { } alive ? [alive.Address.Host] : []).Distinct();
        return [.. secrets.Select(Secret), .. hosts.Select(Host), Process(folder, root)];
    }

    private static Finding Secret(string path)
    {
        SecretFile.Read(path, out var complaint);
        return complaint is null
            ? new Finding(FindingWeight.Sound, "secret of notices", path)
            : new Finding(FindingWeight.Doubtful, "secret of notices", complaint);
    }

    private static Finding Host(string host)
    {
        var subject = $"server {host}";
        try
        {
            using var limit = new CancellationTokenSource(Patience);
            var addresses = Dns.GetHostAddressesAsync(host, limit.Token).GetAwaiter().GetResult();
            return new Finding(FindingWeight.Sound, subject, $"found at {addresses[0]}");
        }
        catch (Exception e) when (e is SocketException or OperationCanceledException or ArgumentException)
        {
            return new Finding(
                FindingWeight.Doubtful, subject, "its name cannot be resolved from here: look at how it is spelt, and at the network");
        }
    }

    private static Finding Process(StateFolder folder, string root)
    {
        const string Subject = "notices";
        return SignOfLife.At(folder.NoticesAlive).IsFresh ? new Finding(FindingWeight.Sound, Subject, "a process sends them")
            : Path.Exists(Path.Combine(root, "etc/systemd/system/multi-user.target.wants", Unit))
                ? new Finding(FindingWeight.Doubtful, Subject, $"their unit is enabled and gives no sign of life: systemctl status {Unit}")
            : new Finding(
                FindingWeight.Doubtful, Subject,
                $"the rack file asks for them and nothing sends them: sudo systemctl enable --now {Unit[..^".service".Length]}");
    }
}
