using System.Collections.Immutable;
using System.Text.Json;
using RackController.Service;

namespace RackController.Page;

/// <summary>Who may sign in. A change by another process counts within a second; a file that cannot be read lets nobody new in, and
/// changes nothing for whoever is known already. From any thread.</summary>
/// <param name="folder">The state folder that the file is in.</param>
public sealed class People(StateFolder folder)
{
    private const long LookEveryMs = 1000;

    private readonly PeopleFile file = new(Path.Combine((folder ?? throw new ArgumentNullException(nameof(folder))).Path, "people.json"));
    private readonly Lock gate = new();
    private ImmutableArray<Person> all = [];
    private (long Time, long Length)? stamp;
    private long lookedMs = -LookEveryMs;
    private string? fault;

    /// <summary>Everybody, by name.</summary>
    public ImmutableArray<Person> All
    {
        get
        {
            lock (gate)
            {
                LookAgain();
                return all;
            }
        }
    }

    /// <summary>Why the file cannot be read; null when it can.</summary>
    public string? Fault
    {
        get
        {
            lock (gate)
            {
                LookAgain();
                return fault;
            }
        }
    }

    /// <summary>Whether nobody has been set up yet. A file that cannot be read is not the same as none.</summary>
    public bool AreNone
    {
        get
        {
            lock (gate)
            {
                LookAgain();
                return all.IsEmpty && fault is null;
            }
        }
    }

    /// <summary>Who is called so; null for nobody.</summary>
    /// <param name="name">The name.</param>
    public Person? Find(string name) => All.FirstOrDefault(person => person.IsCalled(name));

    /// <summary>Adds somebody.</summary>
    /// <param name="name">The name, which holds to <see cref="PasswordRules"/>.</param>
    /// <param name="role">What they may do.</param>
    /// <param name="password">What their password is checked by.</param>
    /// <param name="mustBeFirst">Whether nobody else may be known yet.</param>
    /// <returns>Why not; null when it was done.</returns>
    public string? Add(string name, Role role, PasswordHash password, bool mustBeFirst = false)
    {
        var fresh = new Person(name, role, password, Secret.New(), []);
        return Change(before =>
            mustBeFirst && !before.IsEmpty ? ("Somebody was set up meanwhile: sign in.", before)
            : before.Any(person => person.IsCalled(name)) ? ($"{name} is there already: take another name.", before)
            : before.IsEmpty && role != Role.Configure ? ("The first one has to be somebody who may configure.", before)
            : (null, [.. before.Append(fresh).OrderBy(person => person.Name, StringComparer.OrdinalIgnoreCase)]));
    }

    /// <summary>Removes somebody, with their tokens. Their sessions are over at once.</summary>
    /// <param name="name">Who.</param>
    /// <param name="mayBeLast">Whether nobody may be left.</param>
    /// <returns>Why not; null when it was done.</returns>
    public string? Remove(string name, bool mayBeLast) => ChangeOne(name, _ => null, mayBeLast);

    /// <summary>Changes what somebody may do, at once.</summary>
    /// <param name="name">Who.</param>
    /// <param name="role">What they may do from now on.</param>
    /// <returns>Why not; null when it was done.</returns>
    public string? SetRole(string name, Role role) => ChangeOne(name, person => person with { Role = role });

    /// <summary>Sets a password. Every session that began under the old one is over.</summary>
    /// <param name="name">Whose.</param>
    /// <param name="password">What it is checked by.</param>
    /// <returns>Why not; null when it was done.</returns>
    public string? SetPassword(string name, PasswordHash password) =>
        ChangeOne(name, person => person with { Password = password, PasswordKey = Secret.New() });

    /// <summary>Keeps the same password under a newer hash.</summary>
    /// <param name="known">Whose, as it was when the password was right.</param>
    /// <param name="password">What it is checked by from now on.</param>
    internal string? Renew(Person known, PasswordHash password) =>
        ChangeOne(known.Name, person => person.PasswordKey == known.PasswordKey ? person with { Password = password } : person);

    /// <summary>Gives somebody a token for a program.</summary>
    internal string? AddToken(string name, ProgramToken token) =>
        ChangeOne(name, person => person with { Tokens = person.Tokens.Add(token) });

    /// <summary>Takes back a token, whoever made it.</summary>
    internal string? RemoveToken(string digest) => Change(before => before.All(person => person.Tokens.All(token => token.Digest != digest))
        ? ("There is no such token any more.", before)
        : (null, [.. before.Select(person => person with { Tokens = person.Tokens.RemoveAll(token => token.Digest == digest) })]));

    private string? ChangeOne(string name, Func<Person, Person?> change, bool mayBeLast = false) => Change(before =>
    {
        if (before.FirstOrDefault(person => person.IsCalled(name)) is not { } person)
        {
            return ($"There is nobody called {name}.", before);
        }

        var after = before.Select(each => each == person ? change(each) : each).OfType<Person>().ToImmutableArray();
        var isLost = !after.Any(each => each.Role == Role.Configure) && !(mayBeLast && after.IsEmpty);
        return isLost ? ($"{person.Name} is the only one who may configure: let somebody else do so first.", before) : (null, after);
    });

    private string? Change(Func<ImmutableArray<Person>, (string? Complaint, ImmutableArray<Person> After)> change)
    {
        lock (gate)
        {
            string? complaint = null;
            try
            {
                all = file.Change(before =>
                {
                    (complaint, var after) = change(before);
                    return complaint is null ? after : null;
                });
                (stamp, fault) = (file.Stamp(), null);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
            {
                return $"The file of people cannot be changed: {e.Message}";
            }

            return complaint;
        }
    }

    private void LookAgain()
    {
        if (Environment.TickCount64 - lookedMs < LookEveryMs)
        {
            return;
        }

        lookedMs = Environment.TickCount64;
        try
        {
            var now = file.Stamp();
            if (now == stamp && fault is null)
            {
                return;
            }

            all = file.Read();
            (stamp, fault) = (now, null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            fault = $"people.json cannot be read: {e.Message}";
        }
    }
}
