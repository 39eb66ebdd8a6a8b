using Microsoft.AspNetCore.Builder;

namespace RackController.Page;

/// <summary>What an endpoint asks of whoever calls it. Every endpoint says so; one that does not serves nobody.</summary>
/// <param name="Role">The role; null where anyone is served who can reach the page.</param>
/// <param name="IsForPeople">Whether programs are turned away: what changes who may do what is no program's business.</param>
internal sealed record Needs(Role? Role, bool IsForPeople = false);

/// <summary>Says it of an endpoint.</summary>
internal static class NeedsOfEndpoint
{
    public static T For<T>(this T endpoint, Role role)
        where T : IEndpointConventionBuilder => endpoint.WithMetadata(new Needs(role));

    public static T ForPeople<T>(this T endpoint, Role role)
        where T : IEndpointConventionBuilder => endpoint.WithMetadata(new Needs(role, IsForPeople: true));

    public static T ForAnyone<T>(this T endpoint)
        where T : IEndpointConventionBuilder => endpoint.WithMetadata(new Needs((Role?)null));
}
