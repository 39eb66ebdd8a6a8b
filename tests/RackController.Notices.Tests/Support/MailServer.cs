using System.Buffers;
using MimeKit;
using SmtpServer;
using SmtpServer.ComponentModel;
using SmtpServer.Mail;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace RackController.Notices.Tests;

/// <summary>A mail server on this machine, which is not ours (the package SmtpServer), with what it was given.</summary>
internal sealed class MailServer : IMailboxFilter, IMessageStore, IAsyncDisposable
{
    private readonly CancellationTokenSource end = new();
    private readonly TaskCompletionSource<MimeMessage> came = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public MailServer()
    {
        Port = Loopback.FreePort();
        var options = new SmtpServerOptionsBuilder().ServerName("localhost")
            .Endpoint(endpoint => endpoint.Endpoint(new System.Net.IPEndPoint(System.Net.IPAddress.Loopback, Port))).Build();
        var provider = new ServiceProvider();
        provider.Add((IMessageStore)this);
        provider.Add((IMailboxFilter)this);
        _ = new SmtpServer.SmtpServer(options, provider).StartAsync(end.Token);
    }

    public int Port { get; }

    /// <summary>What it says to a message.</summary>
    public SmtpResponse Answer { get; init; } = SmtpResponse.Ok;

    /// <summary>The first message that came.</summary>
    public Task<MimeMessage> Came => came.Task.WaitAsync(TimeSpan.FromSeconds(20));

    public async Task<SmtpResponse> SaveAsync(
        ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
    {
        came.TrySetResult(await MimeMessage.LoadAsync(new MemoryStream(buffer.ToArray()), cancellationToken));
        return Answer;
    }

    public Task<bool> CanAcceptFromAsync(ISessionContext context, IMailbox from, int size, CancellationToken cancellationToken) =>
        Task.FromResult(true);

    public Task<bool> CanDeliverToAsync(ISessionContext context, IMailbox to, IMailbox from, CancellationToken cancellationToken) =>
        to.User == "nobody" ? throw new SmtpResponseException(new SmtpResponse(SmtpReplyCode.MailboxUnavailable, "no such mailbox"))
            : Task.FromResult(true);

    public async ValueTask DisposeAsync()
    {
        await end.CancelAsync();
        end.Dispose();
    }
}
