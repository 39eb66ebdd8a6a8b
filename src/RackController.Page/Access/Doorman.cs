using System.Net;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace RackController.Page;

/// <summary>Finds out who asks, and turns away whoever may not.</summary>
internal sealed class Doorman(AccessParts access)
{
    /// <summary>The field of a form that shows that a page of ours sent it.</summary>
    public const string FormField = "form-token";

    /// <summary>The same for what a script of ours sends.</summary>
    public const string FormHeader = "X-Form-Token";

    private const string BearerScheme = "Bearer ";

    /// <summary>Lets a request through, or answers it.</summary>
    /// <param name="context">The request; its endpoint is known.</param>
    /// <param name="next">Whoever serves it.</param>
    public async Task AdmitAsync(HttpContext context, RequestDelegate next)
    {
        if (!context.Request.IsHttps && !SameSite.NamesThisMachine(context.Request))
        {
            await Answer.SayAsync(
                context, StatusCodes.Status421MisdirectedRequest, "This page is for this machine only: open it as localhost.")
                .ConfigureAwait(false);
            return;
        }

        var visitor = Recognise(context);
        context.Features.Set(visitor);
        // What is no route of ours is the router's own answer: that an address is not asked so.
        if (context.GetEndpoint() is RouteEndpoint endpoint)
        {
            var needs = endpoint.Metadata.GetMetadata<Needs>();
            if (needs is null || !visitor.May(needs.Role) || (needs.IsForPeople && visitor.IsProgram))
            {
                await TurnAwayAsync(context, visitor).ConfigureAwait(false);
                return;
            }

            if (IsChange(context.Request) && !await IsOwnAsync(context, visitor, needs).ConfigureAwait(false))
            {
                return;
            }
        }

        await next(context).ConfigureAwait(false);
    }

    /// <summary>Who asks.</summary>
    /// <param name="context">The request.</param>
    public Visitor Recognise(HttpContext context)
    {
        var request = context.Request;
        var from = AddressWords.Of(context);
        if (request.Headers.Authorization.ToString() is { Length: > 0 } authorization)
        {
            return OfToken(authorization) ?? new Visitor($"a program at {from}", null) { IsProgram = true };
        }

        if (SessionCookie.Read(request) is { } secret && OfSession(secret) is { } visitor)
        {
            return visitor;
        }

        var isHere = context.Connection.RemoteIpAddress is { } address && IPAddress.IsLoopback(address) && !SameSite.IsPassedOn(request);
        return isHere && access.People.AreNone
            ? new Visitor("somebody at this machine", Role.Configure) { FormToken = access.OpenFormToken }
            : new Visitor($"somebody at {from}", null);
    }

    private Visitor? OfSession(string secret) =>
        access.Sessions.Use(secret) is { } session
        && access.People.Find(session.Person) is { } person && person.PasswordKey == session.PasswordKey
            ? new Visitor(person.Name, person.Role) { Person = person, Session = session, FormToken = Secret.FormToken(secret) }
            : null;

    private Visitor? OfToken(string authorization)
    {
        if (!authorization.StartsWith(BearerScheme, StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        var digest = Secret.Digest(authorization[BearerScheme.Length..].Trim());
        foreach (var person in access.People.All)
        {
            if (person.Tokens.FirstOrDefault(token => token.Digest == digest) is { } token)
            {
                access.Sessions.Used(token);
                var role = token.Role < person.Role ? token.Role : person.Role;
                return new Visitor($"{token.Name}, a program of {person.Name}", role) { IsProgram = true };
            }
        }

        return null;
    }

    private static bool IsChange(HttpRequest request) => !HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method);

    private static Task TurnAwayAsync(HttpContext context, Visitor visitor)
    {
        if (visitor.Role is not null)
        {
            return Answer.SayAsync(context, StatusCodes.Status403Forbidden, $"{visitor.Name} may not do this: ask whoever may configure.");
        }

        if (!visitor.IsProgram && context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.Ordinal))
        {
            return Answer.SeeOther(context, "/sign-in");
        }

        context.Response.Headers.WWWAuthenticate = BearerScheme.TrimEnd();
        return Answer.SayAsync(context, StatusCodes.Status401Unauthorized, "Sign in, or send a token.");
    }

    // A stop asks for no form of ours: it must not fail because a page is old.
    private static async Task<bool> IsOwnAsync(HttpContext context, Visitor visitor, Needs needs)
    {
        if (SameSite.IsForeign(context.Request))
        {
            await Answer.SayAsync(context, StatusCodes.Status403Forbidden, "This came from a page of another site.").ConfigureAwait(false);
            return false;
        }

        if (needs.Role is null || visitor.IsProgram)
        {
            return true;
        }

        // While nobody is set up, what is no browser needs no token: it has no cookie that another page could misuse.
        if (visitor.Session is null && context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal))
        {
            return true;
        }

        if (await SentTokenAsync(context).ConfigureAwait(false) is not { } sent)
        {
            return false;
        }

        if (visitor.FormToken is { } token && Secret.AreSame(sent, token))
        {
            return true;
        }

        await Answer.SayAsync(context, StatusCodes.Status403Forbidden, "This form is old: open its page anew and send it again.")
            .ConfigureAwait(false);
        return false;
    }

    // Null once the request was answered, because its form cannot be read.
    private static async Task<string?> SentTokenAsync(HttpContext context)
    {
        if (context.Request.Headers[FormHeader].ToString() is { Length: > 0 } header)
        {
            return header;
        }

        return context.Request.HasFormContentType
            ? (await FormReading.ReadAsync(context).ConfigureAwait(false))?[FormField].ToString()
            : "";
    }
}
