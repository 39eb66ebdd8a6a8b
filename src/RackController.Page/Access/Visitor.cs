using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;

namespace RackController.Page;

/// <summary>Who asks.</summary>
/// <param name="Name">By what name the record knows them.</param>
/// <param name="Role">What they may do; null for somebody who has not signed in.</param>
internal sealed record Visitor(string Name, Role? Role)
{
    /// <summary>Who it is; null for a program, for whoever has not signed in, and for everybody while nobody is set up.</summary>
    public Person? Person { get; init; }

    /// <summary>In which session; null for the same.</summary>
    public Session? Session { get; init; }

    /// <summary>Whether it is a program with a token.</summary>
    public bool IsProgram { get; init; }

    /// <summary>What their forms carry; null for whoever has none.</summary>
    public string? FormToken { get; init; }

    /// <summary>Whether they may do what asks for a role.</summary>
    /// <param name="role">The role; null for what anyone may do who can reach the page.</param>
    public bool May(Role? role) => role is null || Role >= role;

    /// <summary>Who sent a request, as the doorman found.</summary>
    /// <param name="context">The request.</param>
    public static Visitor Of(HttpContext context) => context.Features.GetRequiredFeature<Visitor>();
}
