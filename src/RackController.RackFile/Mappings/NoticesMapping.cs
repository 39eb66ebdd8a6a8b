using System.Collections.Immutable;
using NodaTime;
using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Binding.Kinds;

namespace RackController.RackFile.Mappings;

/// <summary>Reads whom to tell of alarms.</summary>
internal sealed class NoticesMapping : Mapping<NoticePlan>
{
    /// <summary>More than a household and its programs need; every one is asked anew for whatever happens.</summary>
    private const int MostWays = 10;

    /// <summary>How urgent something is, in words.</summary>
    public static ChoiceKind<AlarmPriority> Priority { get; } =
        new([.. Enum.GetValues<AlarmPriority>().Select(priority => (priority.InWords(), priority))]);

    private static readonly Key<QuietHours> quietKey = Key.Optional(
        "quiet-hours", new QuietHoursMapping(),
        "When only the more urgent is told at once; the rest goes as one message afterwards. Without it: never.");

    private static readonly Key<Duration> remindKey = Key.Defaulted(
        "remind-after", Values.Duration("1 min", "24 h"), "30 min",
        "How long a high or critical alarm may stand unacknowledged before it is told once more.");

    private static readonly Key<ImmutableArray<WayPart<MailPlan>>> mailKey = Key.Optional(
        "mail", Values.List(new MailMapping(), "mail", MostWays), "Whom to write to by mail.");

    private static readonly Key<ImmutableArray<WayPart<WebhookPlan>>> webhooksKey = Key.Optional(
        "webhooks", Values.List(new WebhookMapping(), "webhook", MostWays), "Which programs to tell by a signed request.");

    private static readonly Key<AlivePlan> aliveKey = Key.Optional(
        "alive", new AliveMapping(), "An address that is asked for while all is well, so that silence is noticed elsewhere.");

    /// <inheritdoc/>
    public override string Name => "notices";

    /// <inheritdoc/>
    public override string Doc => "Whom to tell of alarms while nobody looks, and by which ways.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [quietKey, remindKey, mailKey, webhooksKey, aliveKey];

    /// <inheritdoc/>
    protected override NoticePlan? Build(MappingReader keys)
    {
        if (!keys.Has(mailKey) && !keys.Has(webhooksKey) && !keys.Has(aliveKey))
        {
            keys.Complaints.Refuse(keys.Place, "notices that go nowhere", "write `mail`, `webhooks` or `alive`, or leave `notices` out");
            return null;
        }

        var mail = keys.Has(mailKey) ? keys.Get(mailKey) : [];
        var webhooks = keys.Has(webhooksKey) ? keys.Get(webhooksKey) : [];

        // Domains know no capitals, and no server that people use tells two of its mailboxes apart by them (common practice, no source).
        RefuseTwice(mail, one => one.To, StringComparer.OrdinalIgnoreCase, keys.Complaints);
        RefuseTwice(webhooks, one => one.Address.AbsoluteUri, StringComparer.Ordinal, keys.Complaints);
        return new NoticePlan
        {
            Quiet = keys.Find(quietKey),
            RemindAfter = keys.Get(remindKey),
            Mail = [.. mail.Select(way => way.Plan)],
            Webhooks = [.. webhooks.Select(way => way.Plan)],
            Alive = keys.Find(aliveKey),
        };
    }

    // Whoever is told everything twice soon reads none of it.
    private static void RefuseTwice<T>(
        ImmutableArray<WayPart<T>> ways, Func<T, string> whom, StringComparer comparer, Complaints complaints)
    {
        var seen = new HashSet<string>(comparer);
        foreach (var way in ways.Where(way => !seen.Add(whom(way.Plan))))
        {
            complaints.Refuse(way.Place, $"{whom(way.Plan)} stands here a second time", "keep one of them");
        }
    }
}

/// <summary>A way of telling, as written.</summary>
/// <typeparam name="T">What kind of way.</typeparam>
/// <param name="Place">Where it says whom.</param>
/// <param name="Plan">The way.</param>
internal sealed record WayPart<T>(Place Place, T Plan);

/// <summary>Reads when to leave people in peace.</summary>
internal sealed class QuietHoursMapping : Mapping<QuietHours>
{
    private static readonly Key<LocalTime> fromKey = Key.Required("from", Values.TimeOfDay, "Local time at which they begin.");

    private static readonly Key<LocalTime> untilKey = Key.Required(
        "until", Values.TimeOfDay, "Local time at which they end, on the next day where it is earlier.");

    private static readonly Key<AlarmPriority> atLeastKey = Key.Defaulted(
        "at-least", NoticesMapping.Priority, "critical", "The least priority that is told all the same.");

    /// <inheritdoc/>
    public override string Name => "quiet hours";

    /// <inheritdoc/>
    public override string Doc => "A part of every day in which only the more urgent is told at once.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [fromKey, untilKey, atLeastKey];

    /// <inheritdoc/>
    protected override QuietHours? Build(MappingReader keys)
    {
        var quiet = new QuietHours(keys.Get(fromKey), keys.Get(untilKey), keys.Get(atLeastKey));
        if (quiet.From == quiet.Until)
        {
            keys.Refuse(untilKey, "quiet hours end when they begin", "write another time, or leave `quiet-hours` out");
            return null;
        }

        return quiet;
    }
}

/// <summary>Reads whom to write to by mail.</summary>
internal sealed class MailMapping : Mapping<WayPart<MailPlan>>
{
    private static readonly Key<string> toKey = Key.Required("to", new MailboxKind(), "Whom.");

    private static readonly Key<string> fromKey = Key.Required(
        "from", new MailboxKind(), "Who writes: an address that the server lets this controller use.");

    private static readonly Key<string> serverKey = Key.Required("server", new HostKind(), "The server that takes the mail.");

    private static readonly Key<int> portKey = Key.Optional(
        "port", new WholeNumberKind("a port", 1, 65_535), "Its port. Without it: 465 for `tls`, 587 for `starttls`, 25 for `none`.");

    private static readonly Key<MailSecurity> securityKey = Key.Defaulted(
        "security",
        new ChoiceKind<MailSecurity>([("tls", MailSecurity.Tls), ("starttls", MailSecurity.StartTls), ("none", MailSecurity.None)]), "tls",
        "TLS from the first byte, TLS begun within the connection, or none within this machine or the house.");

    private static readonly Key<string> userKey = Key.Optional(
        "user", new TextKind("a name", ""), "Who signs in at the server. Without it: nobody does.");

    private static readonly Key<string> passwordFileKey = Key.Optional(
        "password-file", new PathKind(), "With `user`: the file that holds the password, which others may not read.");

    private static readonly Key<AlarmPriority> atLeastKey = Key.Defaulted(
        "at-least", NoticesMapping.Priority, "low", "The least priority that is told this way.");

    /// <inheritdoc/>
    public override string Name => "mail";

    /// <inheritdoc/>
    public override string Doc => "Mail to one address.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys =>
        [toKey, fromKey, serverKey, portKey, securityKey, userKey, passwordFileKey, atLeastKey];

    /// <inheritdoc/>
    protected override WayPart<MailPlan>? Build(MappingReader keys)
    {
        if (keys.Has(userKey) != keys.Has(passwordFileKey))
        {
            keys.Complaints.Refuse(
                keys.Place, "`user` and `password-file` belong together", "write both, or neither where the server asks nobody to sign in");
            return null;
        }

        var (server, security) = (keys.Get(serverKey), keys.Get(securityKey));
        if (security == MailSecurity.None && !NearHost.Is(server))
        {
            keys.Refuse(
                securityKey, "mail that anybody on the way could read and change",
                "write `tls` or `starttls`; `none` will do for an IP address of this machine or the house only");
            return null;
        }

        var (to, from, port) = (keys.Get(toKey), keys.Get(fromKey), keys.FindValue(portKey) ?? UsualPort(security));
        return new WayPart<MailPlan>(keys.At(toKey), new MailPlan(to, from, server, port, security, keys.Get(atLeastKey))
        {
            SignIn = keys.Has(userKey) ? new MailSignIn(keys.Get(userKey), keys.Get(passwordFileKey)) : null,
        });
    }

    // RFC 8314 (implicit TLS), RFC 6409 (submission) and RFC 5321.
    private static int UsualPort(MailSecurity security) => security switch
    {
        MailSecurity.Tls => 465,
        MailSecurity.StartTls => 587,
        _ => 25,
    };
}

/// <summary>Reads which program to tell.</summary>
internal sealed class WebhookMapping : Mapping<WayPart<WebhookPlan>>
{
    private static readonly Key<Uri> addressKey = Key.Required("address", new WebAddressKind(), "Where the program listens.");

    private static readonly Key<string> secretFileKey = Key.Required(
        "secret-file", new PathKind(), "The file that holds the secret to sign with (`whsec_` and base64), which others may not read.");

    private static readonly Key<AlarmPriority> atLeastKey = Key.Defaulted(
        "at-least", NoticesMapping.Priority, "low", "The least priority that is told this way.");

    /// <inheritdoc/>
    public override string Name => "webhook";

    /// <inheritdoc/>
    public override string Doc => "A program that is told by a request that is signed as Standard Webhooks has it.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [addressKey, secretFileKey, atLeastKey];

    /// <inheritdoc/>
    protected override WayPart<WebhookPlan>? Build(MappingReader keys) => new(
        keys.At(addressKey), new WebhookPlan(keys.Get(addressKey), keys.Get(secretFileKey), keys.Get(atLeastKey)));
}

/// <summary>Reads who is given signs of life.</summary>
internal sealed class AliveMapping : Mapping<AlivePlan>
{
    private static readonly Key<Uri> addressKey = Key.Required(
        "address", new WebAddressKind(), "The address that is asked for; whoever is behind it tells you when that stops.");

    private static readonly Key<Duration> everyKey = Key.Defaulted(
        "every", Values.Duration("1 min", "24 h", "more often is rude, and less often tells nobody in time"), "5 min", "How often.");

    /// <inheritdoc/>
    public override string Name => "alive";

    /// <inheritdoc/>
    public override string Doc => "An address that is asked for while the racks are driven and scans are good.";

    /// <inheritdoc/>
    public override ImmutableArray<Key> Keys => [addressKey, everyKey];

    /// <inheritdoc/>
    protected override AlivePlan? Build(MappingReader keys) => new(keys.Get(addressKey), keys.Get(everyKey));
}
