using System.Collections.Immutable;
using NodaTime;

namespace RackController.Model;

/// <summary>Whom to tell of alarms while nobody looks, by which ways, and when to leave people in peace. The controller itself reads
/// nothing of it: whoever sends notices is a process of its own.</summary>
public sealed record NoticePlan
{
    /// <summary>When only the more urgent gets through; null for never.</summary>
    public QuietHours? Quiet { get; init; }

    /// <summary>How long an urgent alarm may stand unacknowledged before it is told once more: 1 min to 24 h.</summary>
    public required Duration RemindAfter { get; init; }

    /// <summary>Whom to write to by mail.</summary>
    public ImmutableArray<MailPlan> Mail { get; init; } = [];

    /// <summary>Which programs to tell.</summary>
    public ImmutableArray<WebhookPlan> Webhooks { get; init; } = [];

    /// <summary>Whom to give signs of life, so that silence is noticed elsewhere; null for nobody.</summary>
    public AlivePlan? Alive { get; init; }
}

/// <summary>A part of every day in which only the more urgent is told at once; the rest waits for its end and goes as one
/// message.</summary>
/// <param name="From">Local time at which it begins.</param>
/// <param name="Until">Local time at which it ends; before <paramref name="From"/> when midnight lies in between.</param>
/// <param name="AtLeast">The least priority that gets through.</param>
public sealed record QuietHours(LocalTime From, LocalTime Until, AlarmPriority AtLeast)
{
    /// <summary>Whether a local time lies within.</summary>
    /// <param name="time">A local time of day.</param>
    public bool Holds(LocalTime time) => From < Until ? time >= From && time < Until : time >= From || time < Until;
}

/// <summary>How a connection to a mail server is kept from being read and changed on its way.</summary>
public enum MailSecurity
{
    /// <summary>By TLS from the first byte.</summary>
    Tls,

    /// <summary>By TLS that is begun within the connection, and insisted on.</summary>
    StartTls,

    /// <summary>Not at all: only within this machine or the house.</summary>
    None,
}

/// <summary>Mail to one address.</summary>
/// <param name="To">Whom: <c>name@domain</c>.</param>
/// <param name="From">Who writes: <c>name@domain</c>.</param>
/// <param name="Server">The name or IP address of the server that takes the mail.</param>
/// <param name="Port">Its TCP port.</param>
/// <param name="Security">How the connection is secured.</param>
/// <param name="AtLeast">The least priority that is told this way.</param>
public sealed record MailPlan(string To, string From, string Server, int Port, MailSecurity Security, AlarmPriority AtLeast)
{
    /// <summary>What this way of telling is called.</summary>
    public string Name => $"mail to {To}";

    /// <summary>Who signs in at the server, and the file with their password; null where nobody does.</summary>
    public MailSignIn? SignIn { get; init; }
}

/// <summary>Who signs in at a mail server.</summary>
/// <param name="User">The name.</param>
/// <param name="PasswordFile">The path of the file that holds the password on its first line.</param>
public sealed record MailSignIn(string User, string PasswordFile);

/// <summary>A program that is told by a signed request.</summary>
/// <param name="Address">Where it listens; HTTPS, or HTTP within this machine or the house.</param>
/// <param name="SecretFile">The path of the file that holds the secret to sign with on its first line.</param>
/// <param name="AtLeast">The least priority that is told this way.</param>
public sealed record WebhookPlan(Uri Address, string SecretFile, AlarmPriority AtLeast)
{
    /// <summary>What this way of telling is called: without what follows a question mark, which may be nobody's business.</summary>
    public string Name => $"webhook {Address.Authority}{Address.AbsolutePath}";
}

/// <summary>An address that is asked for while the racks are driven and scans are good, so that whoever is behind it misses the signs
/// of life of a board, a network or a controller that is dead.</summary>
/// <param name="Address">The address; HTTPS, or HTTP within this machine or the house.</param>
/// <param name="Every">How often: 1 min to 24 h.</param>
public sealed record AlivePlan(Uri Address, Duration Every)
{
    /// <summary>What it is called; its path often tells the account, and is nobody's business.</summary>
    public string Name => $"signs of life to {Address.Authority}";
}
