using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Notices;

/// <summary>The ways of telling that a rack file asks for.</summary>
internal sealed class Ways : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly WebClient client;

    /// <summary>Makes them.</summary>
    /// <param name="plan">What the rack file asks for.</param>
    /// <param name="time">The clock of signatures.</param>
    public Ways(NoticePlan plan, TimeProvider time)
    {
        client = new WebClient(time, Patience);
        All =
        [
            .. plan.Mail.Select(mail => new MailWay(mail, Patience)),
            .. plan.Webhooks.Select(webhook => new WebhookWay(webhook, client, time)),
        ];
        Alive = plan.Alive is { } alive ? new AlivePing(alive, client) : null;
    }

    /// <summary>Every way, in the order of the rack file.</summary>
    public ImmutableArray<IWay> All { get; }

    /// <summary>Who is given signs of life; null for nobody.</summary>
    public AlivePing? Alive { get; }

    /// <summary>Lets go of connections.</summary>
    public void Dispose() => client.Dispose();
}
