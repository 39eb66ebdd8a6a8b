using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace RackController.Page;

/// <summary>Who is signed in where. It outlasts a restart: beginnings and ends are written at once, the last use once an hour at most, to
/// spare the card. From any thread.</summary>
/// <param name="path">The path of its file.</param>
/// <param name="clock">The time of day.</param>
/// <param name="complain">Told when the file cannot be read or written; then it all holds until the service ends.</param>
internal sealed class Sessions(string path, IClock clock, Action<string, Exception> complain)
{
    /// <summary>More browsers than one person has; a new one takes the place of the one that was used longest ago.</summary>
    public const int MostOfOnePerson = 20;

    /// <summary>How long a session lasts that nobody uses.</summary>
    public static readonly Duration Idle = Duration.FromDays(30);

    /// <summary>How long a session lasts at most.</summary>
    public static readonly Duration Longest = Duration.FromDays(180);

    private static readonly Duration writeUseEvery = Duration.FromHours(1);

    private readonly Lock gate = new();
    private Dictionary<string, Session>? open;
    private Dictionary<string, Instant> tokens = [];
    private Instant useWrittenAt;

    /// <summary>Begins a session.</summary>
    /// <param name="person">Who signed in.</param>
    /// <param name="device">With what.</param>
    /// <param name="from">From where.</param>
    /// <returns>What the cookie is to say.</returns>
    public string Begin(Person person, string device, string from)
    {
        var secret = Secret.New();
        var now = clock.GetCurrentInstant();
        lock (gate)
        {
            var ofThem = Read().Values.Where(session => IsOf(session, person)).OrderByDescending(session => session.UsedAt);
            foreach (var old in ofThem.Skip(MostOfOnePerson - 1).ToList())
            {
                Read().Remove(old.Digest);
            }

            var fresh = new Session(Secret.Digest(secret), person.Name, person.PasswordKey, now, now, device, from);
            Read()[fresh.Digest] = fresh;
            Write(now);
        }

        return secret;
    }

    /// <summary>The session of a cookie, which is used by that; null where none holds.</summary>
    /// <param name="secret">What the cookie says.</param>
    public Session? Use(string secret)
    {
        var digest = Secret.Digest(secret);
        var now = clock.GetCurrentInstant();
        lock (gate)
        {
            if (!Read().TryGetValue(digest, out var session) || IsOver(session, now))
            {
                return null;
            }

            var used = session with { UsedAt = now };
            Read()[digest] = used;
            WriteUse(now);
            return used;
        }
    }

    /// <summary>The sessions of somebody, the one that was used last first.</summary>
    public ImmutableArray<Session> Of(Person person)
    {
        var now = clock.GetCurrentInstant();
        lock (gate)
        {
            return [.. Read().Values.Where(session => IsOf(session, person) && !IsOver(session, now)).OrderByDescending(at => at.UsedAt)];
        }
    }

    /// <summary>Ends sessions: what their cookies say is worth nothing from now on.</summary>
    /// <param name="which">Which.</param>
    public void End(Func<Session, bool> which)
    {
        lock (gate)
        {
            foreach (var session in Read().Values.Where(which).ToList())
            {
                Read().Remove(session.Digest);
            }

            Write(clock.GetCurrentInstant());
        }
    }

    /// <summary>A program has used its token.</summary>
    public void Used(ProgramToken token)
    {
        var now = clock.GetCurrentInstant();
        lock (gate)
        {
            _ = Read();
            tokens[token.Digest] = now;
            WriteUse(now);
        }
    }

    /// <summary>When a token was last used; null for never.</summary>
    public Instant? LastUseOf(ProgramToken token)
    {
        lock (gate)
        {
            _ = Read();
            return tokens.TryGetValue(token.Digest, out var used) ? used : null;
        }
    }

    /// <summary>Forgets when tokens were used that are there no more.</summary>
    /// <param name="digest">The digest of the token.</param>
    public void Forget(string digest)
    {
        lock (gate)
        {
            _ = Read();
            tokens.Remove(digest);
            Write(clock.GetCurrentInstant());
        }
    }

    private static bool IsOf(Session session, Person person) =>
        person.IsCalled(session.Person) && session.PasswordKey == person.PasswordKey;

    // A wall clock that steps back makes no session older, and one that was wrong ends it at worst.
    private static bool IsOver(Session session, Instant now) => now - session.UsedAt > Idle || now - session.BeganAt > Longest;

    private Dictionary<string, Session> Read()
    {
        if (open is not null)
        {
            return open;
        }

        open = [];
        try
        {
            if (File.Exists(path)
                && JsonSerializer.Deserialize(File.ReadAllText(path), SessionsJson.Default.SessionsContent) is { } content)
            {
                open = (content.Sessions.IsDefault ? [] : content.Sessions).ToDictionary(session => session.Digest);
                tokens = content.Tokens.ToDictionary();
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException or ArgumentException)
        {
            complain("the file of sessions cannot be read: everybody signs in anew", e);
        }

        return open;
    }

    private void WriteUse(Instant now)
    {
        if (now - useWrittenAt > writeUseEvery || now < useWrittenAt)
        {
            Write(now);
        }
    }

    private void Write(Instant now)
    {
        useWrittenAt = now;
        var kept = Read().Values.Where(session => !IsOver(session, now));
        var content = new SessionsContent([.. kept], tokens.ToImmutableSortedDictionary(StringComparer.Ordinal));
        try
        {
            PrivateFile.Write(path, JsonSerializer.Serialize(content, SessionsJson.Default.SessionsContent) + "\n");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            complain("the file of sessions cannot be written: who signs in or out now does so until the service ends", e);
        }
    }
}
