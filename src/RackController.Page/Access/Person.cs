using System.Collections.Immutable;
using NodaTime;

namespace RackController.Page;

/// <summary>Somebody who may sign in.</summary>
/// <param name="Name">By what name; no two differ in upper and lower case only.</param>
/// <param name="Role">What they may do.</param>
/// <param name="Password">What their password is checked by.</param>
/// <param name="PasswordKey">Drawn anew with every password that is set: a session that began under another one is over, and so is one
/// of a person who was removed and came again.</param>
/// <param name="Tokens">The tokens of the programs that ask in their name.</param>
public sealed record Person(string Name, Role Role, PasswordHash Password, string PasswordKey, ImmutableArray<ProgramToken> Tokens)
{
    /// <summary>Whether a name is theirs.</summary>
    /// <param name="name">The name.</param>
    public bool IsCalled(string name) => string.Equals(Name, name, StringComparison.OrdinalIgnoreCase);
}

/// <summary>What a program signs in by. It may do no more than whoever made it may at the time.</summary>
/// <param name="Name">What it is for.</param>
/// <param name="Role">What it may do at most.</param>
/// <param name="Digest">The SHA-256 of the token; the token itself is kept nowhere.</param>
/// <param name="MadeAt">When it was made.</param>
public sealed record ProgramToken(string Name, Role Role, string Digest, Instant MadeAt);
