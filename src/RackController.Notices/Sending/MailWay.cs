using System.Net.Sockets;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;
using RackController.Model;

namespace RackController.Notices;

/// <summary>Mail by SMTP: plain text, threaded by Message-ID and References, over TLS whose certificate is right or not at all.</summary>
/// <param name="plan">To whom and by which server.</param>
/// <param name="patience">How long one message may take.</param>
internal sealed class MailWay(MailPlan plan, TimeSpan patience) : IWay
{
    /// <inheritdoc/>
    public string Name => plan.Name;

    /// <inheritdoc/>
    public AlarmPriority AtLeast => plan.AtLeast;

    /// <inheritdoc/>
    public bool IsForPrograms => false;

    /// <inheritdoc/>
    public async Task<SendResult> SendAsync(Letter letter, CancellationToken cancellation)
    {
        var password = "";
        if (plan.SignIn is { } signIn)
        {
            password = SecretFile.Read(signIn.PasswordFile, out var complaint);
            if (complaint is not null)
            {
                return SendResult.Failed(complaint);
            }
        }

        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(patience);
        try
        {
            await SendAsync(Message(letter), password, limit.Token).ConfigureAwait(false);
            return SendResult.Sent;
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            return SendResult.Failed($"{Server} did not answer within {patience.TotalSeconds:0} s");
        }
        catch (Exception e) when (ResultOf(e) is { } result)
        {
            return result;
        }
    }

    private string Server => $"{plan.Server}:{plan.Port}";

    private async Task SendAsync(MimeMessage message, string password, CancellationToken limit)
    {
        using var client = new SmtpClient();

        // Asking the issuer about every certificate would need one more server that answers, and say nothing when none does.
        client.CheckCertificateRevocation = false;
        await client.ConnectAsync(plan.Server, plan.Port, Security, limit).ConfigureAwait(false);
        if (plan.SignIn is { } signIn)
        {
            await client.AuthenticateAsync(signIn.User, password, limit).ConfigureAwait(false);
        }

        await client.SendAsync(message, limit).ConfigureAwait(false);
        try
        {
            await client.DisconnectAsync(quit: true, limit).ConfigureAwait(false);
        }
        catch (Exception e) when (e is IOException or SocketException or ProtocolException or OperationCanceledException)
        {
            // The server has the message and said so; how it says goodbye changes nothing.
            client.Dispose();
        }
    }

    // The words are MailKit's; what they mean is for us to say.
    private SecureSocketOptions Security => plan.Security switch
    {
        MailSecurity.Tls => SecureSocketOptions.SslOnConnect,
        MailSecurity.StartTls => SecureSocketOptions.StartTls,
        MailSecurity.None => SecureSocketOptions.None,
        _ => throw new InvariantBrokenException($"every way to secure mail has its option, {plan.Security} too"),
    };

    private MimeMessage Message(Letter letter)
    {
        var message = new MimeMessage
        {
            Subject = letter.Subject,
            Body = new TextPart("plain") { Text = letter.Body },
            Date = letter.MadeAt.ToDateTimeOffset(),
            MessageId = IdOf(letter.Id),
        };
        message.From.Add(new MailboxAddress("RackController", plan.From));
        message.To.Add(new MailboxAddress("", plan.To));
        foreach (var reference in letter.References)
        {
            message.References.Add(IdOf(reference));
        }

        if (letter.References is [.., var last])
        {
            message.InReplyTo = IdOf(last);
        }

        // RFC 3834: so that no holiday notice answers.
        message.Headers.Add("Auto-Submitted", "auto-generated");
        return message;
    }

    private string IdOf(string letter) => $"{letter}@{plan.From[(plan.From.LastIndexOf('@') + 1)..]}";

    private SendResult? ResultOf(Exception e) => e switch
    {
        SmtpCommandException refused => Refusal((int)refused.StatusCode, refused.Message),
        // A 5yz too, but of the server and not of the letter: with the right password in its file it goes out as it is.
        AuthenticationException => SendResult.Failed(
            $"{Server} does not take the name or password of {plan.SignIn!.User}: look at `user` and at {plan.SignIn.PasswordFile}"),
        SslHandshakeException => SendResult.Failed(
            $"{Server} shows no certificate that can be trusted, or no TLS at all: check `server`, `port` and `security`"),
        NotSupportedException => SendResult.Failed($"{Server} cannot do what is asked of it: {OneLine(e)}"),
        SocketException { SocketErrorCode: SocketError.HostNotFound or SocketError.TryAgain or SocketError.NoData } =>
            SendResult.Failed($"the name {plan.Server} cannot be resolved"),
        SocketException socket => SendResult.Failed($"{Server} cannot be reached: {OneLine(socket)}"),
        ProtocolException or FormatException => SendResult.Failed($"{Server} does not speak as a mail server does: {OneLine(e)}"),
        IOException => SendResult.Failed($"{Server} broke the connection off: {OneLine(e)}"),
        _ => null,
    };

    // RFC 5321, 4.2.1: 5yz is a permanent refusal, 4yz may go better the next time.
    private SendResult Refusal(int code, string said)
    {
        var fault = $"{Server} refuses it: {code} {said.ReplaceLineEndings(" ").Trim().TrimEnd('.')}";
        return code is >= 500 and <= 599 ? SendResult.Refused(fault) : SendResult.Failed(fault);
    }

    private static string OneLine(Exception e) => e.Message.ReplaceLineEndings(" ").Trim().TrimEnd('.');
}
